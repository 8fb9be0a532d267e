package leeway.speed;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Locale;

/**
 * The bodies of the breath benchmarks by the thread's own CPU time, best of many batches: what to quote from a machine that
 * others use at the same time, where wall time scatters. Run beside the C twin, which counts the same way.
 * <p>{@code java -cp speed/target/speed.jar:speed/target/lib/* leeway.speed.CpuTime}
 */
public final class CpuTime {
    private static final int BATCHES = 25;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static double kept;

    private CpuTime() { }

    private interface Body {
        double run();
    }

    public static void main(String[] args) {
        MandatoryBreathBenchmark mandatory = new MandatoryBreathBenchmark();
        mandatory.prepare();
        SupportedBreathBenchmark supported = new SupportedBreathBenchmark();
        supported.prepare();
        double one = time("one compartment, volume control, exact", 400_000, mandatory::oneCompartmentExact);
        time("one compartment, pressure control, exact", 400_000, mandatory::oneCompartmentPressureExact);
        beside(one, time("one compartment, integrated 1e-8", 1_000, mandatory::oneCompartmentIntegrated));
        double two = time("two compartments and circuit, exact", 300_000, () -> {
            mandatory.twoCompartmentsExact();
            return 0;
        });
        beside(two, time("two compartments and circuit, integrated 1e-8", 60, mandatory::twoCompartmentsIntegrated));
        double engine = time("engine of the journey, linear", 20_000, mandatory::engineLinear);
        double tube = time("engine of the journey, with tube", 20_000, mandatory::engineWithTube);
        System.out.printf(Locale.ROOT, "   the tube costs a factor of %.2f%n", tube / engine);
        double support = time("supported breath, engine", 250, SupportedBreathBenchmark.BREATHS, supported::engine);
        beside(support, time("supported breath, integrated with events 1e-8", 100, supported::integrated));
        NonlinearBreathBenchmark curved = new NonlinearBreathBenchmark();
        curved.prepare();
        double bent = time("pressure-controlled breath into a curved lung, engine", 125, NonlinearBreathBenchmark.BREATHS, curved::engine);
        beside(bent, time("the same, integrated at equal error", 200, curved::integrated));
        System.out.printf(Locale.ROOT, "   errors %.1e and %.1e mL, the peer's at a tolerance of %.0e%n", curved.ourErrorMl, curved.peerErrorMl, curved.tolerance);
        for (int breaths : new int[] {1000, 7200, 100_000}) {
            JourneyGrowthBenchmark journey = new JourneyGrowthBenchmark();
            journey.breaths = breaths;
            double all = time("journey of " + breaths + " breaths", Math.max(1, 20_000 / breaths), journey::journey);
            System.out.printf(Locale.ROOT, "   %.0f ns a breath%n", all / breaths);
        }
        if (kept == 42) System.out.println();
    }

    private static void beside(double ours, double peer) {
        System.out.printf(Locale.ROOT, "   %.0f times as long%n", peer / ours);
    }

    private static double time(String what, int times, Body body) {
        return time(what, times, 1, body);
    }

    /** Of one of the breaths that a call makes. */
    private static double time(String what, int times, int each, Body body) {
        double best = Double.POSITIVE_INFINITY;
        for (int batch = 0; batch < BATCHES; batch++) {
            long from = THREADS.getCurrentThreadCpuTime();
            for (int i = 0; i < times; i++) kept += body.run();
            best = Math.min(best, (double) (THREADS.getCurrentThreadCpuTime() - from) / times / each);
        }
        System.out.printf(Locale.ROOT, "%-50s %12.1f ns%n", what, best);
        return best;
    }
}
