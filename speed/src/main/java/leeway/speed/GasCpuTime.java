package leeway.speed;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Locale;
import java.util.function.DoubleSupplier;

/**
 * The bodies of the gas benchmarks by the thread's own CPU time, best of many batches: what to quote from a machine that
 * others use at the same time.
 * <p>{@code java -cp speed/target/speed.jar:speed/target/lib/* leeway.speed.GasCpuTime}
 */
public final class GasCpuTime {
    private static final int BATCHES = 25;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static double kept;

    private GasCpuTime() { }

    public static void main(String[] args) {
        ContentInversionBenchmark inversion = new ContentInversionBenchmark();
        inversion.drift();
        double newton = time("tensions from contents, warm Newton", 200_000, inversion::warmNewton);
        beside(newton, time("tensions from contents, nested bisection", 200, inversion::nestedBisection));
        GasJourneyBenchmark journey = new GasJourneyBenchmark();
        journey.agree();
        double loop = time("gases of 10 min, in the loop", 200, journey::loop10Min);
        beside(loop, time("gases of 10 min, general-purpose integrator", 5, journey::integrator10Min));
        time("gases of 8 h, in the loop", 10, journey::loop8Hours);
        if (Double.isNaN(kept)) throw new IllegalStateException("not a number");
    }

    /** Nanoseconds of a call, the least of the batches. */
    private static double time(String what, int calls, DoubleSupplier body) {
        double best = Double.POSITIVE_INFINITY;
        for (int b = 0; b < BATCHES; b++) {
            long from = THREADS.getCurrentThreadCpuTime();
            for (int i = 0; i < calls; i++) kept += body.getAsDouble();
            best = Math.min(best, (THREADS.getCurrentThreadCpuTime() - from) / (double) calls);
        }
        System.out.println(String.format(Locale.ROOT, "%-50s %14.1f ns", what, best));
        return best;
    }

    private static void beside(double ours, double theirs) {
        System.out.println(String.format(Locale.ROOT, "%-50s %14.1f times", "", theirs / ours));
    }
}
