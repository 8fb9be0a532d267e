package leeway.core.kit;

/** What a device lets one set: from, to, in steps of; in the setting's own unit. A step of 0 means continuous. */
public record Range(double min, double max, double step) {
    public Range {
        if (!(min <= max) || step < 0) throw new IllegalArgumentException("range %s to %s by %s".formatted(min, max, step));
    }

    public boolean holds(double value) { return value >= min - 1e-9 && value <= max + 1e-9; }

    /** The nearest value that the device has. */
    public double nearest(double value) {
        double clamped = Math.max(min, Math.min(max, value));
        if (step == 0) return clamped;
        double snapped = min + Math.rint((clamped - min) / step) * step;
        return Math.max(min, Math.min(max, tidy(snapped)));
    }

    /** The nearest value that the device has and that does not exceed the wish; the least where none does. */
    public double nearestBelow(double value) {
        double clamped = Math.max(min, Math.min(max, value));
        if (step == 0) return clamped;
        return Math.max(min, tidy(min + Math.floor((clamped - min) / step + 1e-9) * step));
    }

    private static double tidy(double value) { return Math.rint(value * 1e9) / 1e9; }
}
