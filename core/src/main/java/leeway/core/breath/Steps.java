package leeway.core.breath;

import java.util.Arrays;

/**
 * The way of a state from time 0, as steps that are kept so that any moment between start and end can be asked for afterwards.
 * Allocates nothing once its arrays have grown.
 */
abstract class Steps {
    static final int MOST_STEPS = 20_000;
    private double[] from = new double[64], length = new double[64];
    private int steps;
    /** How far it has come, s. */
    double t;

    /** One more step. The last may go beyond what anybody asks for. */
    abstract void step();

    /** The state at a time within a step. */
    abstract void at(int step, double time, double[] into);

    void beginSteps() {
        steps = 0;
        t = 0;
    }

    double reachedS() {
        return t;
    }

    int steps() {
        return steps;
    }

    double endOf(int step) {
        return from[step] + length[step];
    }

    double startOf(int step) {
        return from[step];
    }

    /** Notes a step of this length and goes to its end. */
    void stepped(double lengthS) {
        if (steps == MOST_STEPS) throw new IllegalStateException("the integrator took " + MOST_STEPS + " steps to " + t + " s");
        if (steps == from.length) {
            from = Arrays.copyOf(from, 2 * steps);
            length = Arrays.copyOf(length, 2 * steps);
        }
        from[steps] = t;
        length[steps] = lengthS;
        steps++;
        t += lengthS;
    }

    /** The kept step that holds this time. */
    int stepAt(double time) {
        int low = 0, high = steps - 1;
        while (low < high) {
            int mid = low + high + 1 >>> 1;
            if (from[mid] <= time) low = mid;
            else high = mid - 1;
        }
        return low;
    }
}
