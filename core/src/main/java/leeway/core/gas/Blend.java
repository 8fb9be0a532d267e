package leeway.core.gas;

/** Mixing oxygen with air, by mass balance. Leaves out argon and the 0.05 % by which dry air holds less than 21 %. */
public final class Blend {
    /** Oxygen in air as ventilation practice counts it; dry air has 0.2095 (ISO 2533:1975 composition). */
    public static final double AIR = 0.21;

    private Blend() {
    }

    /** Flow of source gas in a total flow of mixture: V·(F−0.21)/(Fsource−0.21). Same unit as the flow. */
    public static double oxygenFlow(double totalFlow, double fio2, double sourceFraction) {
        require(fio2, sourceFraction);
        return totalFlow * (fio2 - AIR) / (sourceFraction - AIR);
    }

    /** Parts of air to one part of source gas; infinite at 21 %. */
    public static double airToOxygen(double fio2, double sourceFraction) {
        require(fio2, sourceFraction);
        return (sourceFraction - fio2) / (fio2 - AIR);
    }

    /** The mixture that a fixed flow of source gas makes in a total flow, as a flowmeter into an air turbine does; at most the source itself. */
    public static double fractionFromFlow(double sourceFlow, double totalFlow, double sourceFraction) {
        return sourceFlow >= totalFlow ? sourceFraction : AIR + (sourceFraction - AIR) * sourceFlow / totalFlow;
    }

    private static void require(double fio2, double sourceFraction) {
        if (!(fio2 >= AIR - 1e-12 && fio2 <= sourceFraction + 1e-12 && sourceFraction <= 1 && sourceFraction > AIR))
            throw new IllegalArgumentException("oxygen fraction (" + fio2 + ") must lie between 0.21 and that of the source (" + sourceFraction + ")");
    }
}
