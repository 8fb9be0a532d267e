package leeway.core.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import leeway.core.gas.Barometer;
import leeway.core.gas.Blend;
import leeway.core.gas.GasVolume;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Setting;
import leeway.core.kit.Ventilator;
import leeway.core.transport.Store;

/**
 * The oxygen that a ventilator takes from a store, L/min of free gas, and the FiO2 that comes of it.
 * <p>Mass balance of the mixture: Q = V (F − 0.21)/(F<sub>source</sub> − 0.21), V everything that leaves as mixed gas (breaths,
 * leak, bias flow), plus drive gas and the loss of the mixing valve, which are pure oxygen. A flowmeter gives its setting,
 * used or not. Leaves out: the rise of an entrained FiO2 with back pressure, and the nitrogen and argon in medical oxygen.
 *
 * @param oxygenLPerMin from the store, free gas
 * @param fio2          what the patient gets
 * @param mixedLPerMin  all mixed gas, free
 * @param driveLPerMin  oxygen that never reaches the patient, free
 * @param byFlow        whether a set flow gives it, used or not
 * @param working       how it was worked out, a line each
 */
public record OxygenDraw(double oxygenLPerMin, double fio2, double mixedLPerMin, double driveLPerMin, boolean byFlow, List<String> working) {
    /** Oxygen in a concentrator's gas: 93 ± 3 %: European Pharmacopoeia, oxygen (93 per cent), monograph 2455, 90.0 to 96.0 % by volume. */
    public static final double CONCENTRATOR = 0.93;
    /** Oxygen to a hand bag with reservoir, L/min: common practice, no source. */
    public static final double HAND_BAG_L_PER_MIN = 15;
    /** Around a device whose volumes are ambient ones, °C: assumed. */
    private static final double AMBIENT_CEL = 22;
    private static final GasVolume.State FREE = new GasVolume.State(RealOxygen.FREE_GAS_CEL, Barometer.mmHg(Barometer.SEA_LEVEL_HPA), 0);

    public OxygenDraw { working = working == null ? List.of() : List.copyOf(working); }

    /** The same as {@link #oxygenLPerMin} of the draw from this store, or at the device's inlet where there is none, without its working: for grids. */
    public static double litresPerMin(Ventilator ventilator, LegNeed need, Optional<Store> store) {
        if (store.isPresent() && store.get().type() == Store.Type.CONCENTRATOR) return store.get().flowLPerMin().orElse(0);
        if (store.isPresent() && !store.get().inlet().highPressure()) return store.get().inlet().flowmeterLPerMin().orElse(HAND_BAG_L_PER_MIN);
        if (ventilator.drive() == Ventilator.Drive.HAND) return handBagLPerMin(ventilator);
        if (ventilator.alone()) return freeFlowLPerMin(ventilator, need.biasFlowLPerMin(), Optional.empty());
        double mixed = mixedLPerMin(ventilator.gas(), need), fio2 = deliveredFio2(ventilator, need.fio2());
        return Blend.oxygenFlow(mixed, fio2, 1) + lostLPerMin(ventilator.gas(), mixed, fio2);
    }

    /** From a cylinder, wall or liquid store at the inlet that the store's line of the file names. */
    public static OxygenDraw of(Ventilator ventilator, LegNeed need, Store store) { return of(ventilator, need, store, new ArrayList<>()); }

    /** The figures alone, without their working. */
    static OxygenDraw figures(Ventilator ventilator, LegNeed need, Store store) { return of(ventilator, need, store, null); }

    /** With the working written to a list, or to nowhere. */
    private static OxygenDraw of(Ventilator ventilator, LegNeed need, Store store, List<String> working) {
        if (ventilator.alone()) return free(ventilator, need, Optional.of(store), working);
        if (store.type() == Store.Type.CONCENTRATOR) {
            return byFlow(ventilator, need, store.flowLPerMin().orElse(0), CONCENTRATOR, "the concentrator gives", working);
        }
        if (!store.inlet().highPressure()) {
            return byFlow(ventilator, need, store.inlet().flowmeterLPerMin().orElse(HAND_BAG_L_PER_MIN), 1, "the flowmeter is set to", working);
        }
        return atPressure(ventilator, need, working);
    }

    /** At the device's high pressure inlet; a hand bag takes what its sheet names. */
    public static OxygenDraw of(Ventilator ventilator, LegNeed need) { return atPressure(ventilator, need, new ArrayList<>()); }

    private static OxygenDraw atPressure(Ventilator ventilator, LegNeed need, List<String> working) {
        Ventilator.Gas gas = ventilator.gas();
        if (ventilator.alone()) return free(ventilator, need, Optional.empty(), working);
        if (ventilator.drive() == Ventilator.Drive.HAND) return byFlow(ventilator, need, handBagLPerMin(ventilator), 1, "the bag's reservoir is fed with", working);
        double mixed = mixedLPerMin(gas, need, working);
        double fio2 = deliveredFio2(ventilator, need.fio2());
        if (Math.abs(fio2 - need.fio2()) > 1e-9) say(working, "it has no FiO2 of %.2f; it gives %.2f", need.fio2(), fio2);
        double drive = lostLPerMin(gas, mixed, fio2);
        double blended = Blend.oxygenFlow(mixed, fio2, 1);
        say(working, "oxygen in the mixture: %.3f × (%.3f − 0.21)/(1 − 0.21) = %.3f L/min", mixed, fio2, blended);
        if (drive > 0) say(working, "drive gas and loss of the mixing valve: %.3f L/min of oxygen that never reaches the patient", drive);
        return new OxygenDraw(blended + drive, fio2, mixed, drive, false, working);
    }

    /**
     * What it takes at the high side of the ventilator's FiO2 error, L/min: a device that mixes gives up to so much more oxygen
     * than is set. Pure oxygen, air alone and a flow that is set have no such error.
     */
    public double highLPerMin(Ventilator ventilator) {
        boolean mixes = !byFlow && fio2 > Blend.AIR + 1e-9;
        double high = mixes ? Math.min(1, fio2 + ventilator.gas().fio2Error()) : fio2;
        return oxygenLPerMin + mixedLPerMin * Math.max(0, high - fio2) / (1 - Blend.AIR);
    }

    /** A widespread rule that counts the oxygen of entrained air as if it were drawn: minute volume × FiO2, plus drive gas. Cautious, never the answer. */
    public static double byRuleLPerMin(double mixedLPerMin, double fio2, double driveLPerMin) {
        return mixedLPerMin * fio2 + driveLPerMin;
    }

    /** A volume on one of the trade's bases as free gas: the factor. */
    public static double freePer(Ventilator.VolumeBasis basis, double ambientHPa) {
        if (basis == Ventilator.VolumeBasis.FREE) return 1;
        return GasVolume.factor(GasVolume.state(GasVolume.Condition.valueOf(basis.name()), AMBIENT_CEL, Barometer.mmHg(ambientHPa)), FREE);
    }

    /** What flows past the airway, L/min: of a flowmeter or a concentrator its own flow, else what is set, else what the sheet stands at. */
    public static double freeFlowLPerMin(Ventilator device, double setLPerMin, Optional<Store> store) {
        if (store.isPresent() && store.get().type() == Store.Type.CONCENTRATOR) return store.get().flowLPerMin().orElse(0);
        if (store.isPresent() && !store.get().inlet().highPressure()) return store.get().inlet().flowmeterLPerMin().orElse(HAND_BAG_L_PER_MIN);
        return setLPerMin > 0 ? setLPerMin : device.defaults().get(Setting.BIAS_FLOW, 0);
    }

    private static OxygenDraw free(Ventilator device, LegNeed need, Optional<Store> store, List<String> working) {
        double flow = freeFlowLPerMin(device, need.biasFlowLPerMin(), store);
        say(working, "free flow: %.1f L/min, breathed or not", flow);
        return new OxygenDraw(flow, need.fio2(), flow, 0, true, working);
    }

    /** What the bag of this sheet is fed with, L/min. */
    static double handBagLPerMin(Ventilator bag) {
        return bag.gas().driveLPerMin() > 0 ? bag.gas().driveLPerMin() : HAND_BAG_L_PER_MIN;
    }

    private static OxygenDraw byFlow(Ventilator ventilator, LegNeed need, double flowLPerMin, double source, String who, List<String> working) {
        double mixed = mixedLPerMin(ventilator.gas(), need, working);
        double fio2 = Blend.fractionFromFlow(flowLPerMin, mixed, source);
        say(working, "%s %.1f L/min, used or not: FiO2 %.3f", who, flowLPerMin, fio2);
        return new OxygenDraw(flowLPerMin, fio2, mixed, 0, true, working);
    }

    /** Drive gas and the loss of the mixing valve, which loses oxygen only where there is some to mix. */
    private static double lostLPerMin(Ventilator.Gas gas, double mixed, double fio2) {
        double purge = fio2 > Blend.AIR + 1e-9 ? gas.purgeLPerMin() : 0;
        return gas.driveLPerMin() + gas.driveShare() * mixed + purge;
    }

    private static double mixedLPerMin(Ventilator.Gas gas, LegNeed need) {
        return (need.minuteVolumeLPerMin() + need.leakLPerMin()) * freePer(gas.volumeBasis(), need.ambientHPa()) + need.biasFlowLPerMin();
    }

    private static double mixedLPerMin(Ventilator.Gas gas, LegNeed need, List<String> working) {
        double ambientHPa = need.ambientHPa();
        double factor = freePer(gas.volumeBasis(), ambientHPa);
        double volume = need.minuteVolumeLPerMin() + need.leakLPerMin();
        say(working, "breaths and leak: %.2f L/min %s at %.1f hPa × %.4f = %.3f L/min of free gas", volume,
                gas.volumeBasis() == Ventilator.VolumeBasis.FREE ? "free" : gas.volumeBasis().name(), ambientHPa, factor, volume * factor);
        if (need.biasFlowLPerMin() > 0) say(working, "bias flow: %.2f L/min more", need.biasFlowLPerMin());
        return mixedLPerMin(gas, need);
    }

    /** What the device makes of the wish: a mixture by entrainment has a least FiO2, without a blender only that and pure oxygen. */
    public static double deliveredFio2(Ventilator ventilator, double wish) {
        Ventilator.Gas gas = ventilator.gas();
        if (ventilator.drive() != Ventilator.Drive.PNEUMATIC) return Math.max(Blend.AIR, wish);
        if (gas.entrainedFio2().isEmpty()) return 1;
        double mixture = gas.entrainedFio2().getAsDouble();
        return gas.blender() ? Math.max(mixture, wish) : wish <= mixture + 1e-9 ? mixture : 1;
    }

    private static void say(List<String> working, String text, Object... values) {
        if (working != null) working.add(String.format(Locale.ROOT, text, values));
    }
}
