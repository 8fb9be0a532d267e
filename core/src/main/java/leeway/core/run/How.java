package leeway.core.run;

/** How a change acts on what the layers below it left. */
public enum How { SET, TIMES, PLUS;

    /** The value after this change, {@code grown} of it (0 to 1) in force. */
    double on(double below, double value, double grown) {
        return switch (this) {
            case SET -> grown >= 1 ? value : below + (value - below) * grown;
            case TIMES -> below * (1 + (value - 1) * grown);
            case PLUS -> below + value * grown;
        };
    }
}
