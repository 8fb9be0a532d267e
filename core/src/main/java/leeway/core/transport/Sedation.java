package leeway.core.transport;

import java.util.OptionalDouble;

/**
 * How much of the patient's own effort sedation takes from a moment on, and in what time half of that has worn off. Leaves out
 * which drug it is, how fast it comes, and that opioids slow a breath more than they flatten it.
 *
 * @param share   of the effort, 0 to 1
 * @param halfMin after which half of it is left; absent: it stays
 */
public record Sedation(double share, OptionalDouble halfMin) {
    public static final Sedation NONE = new Sedation(0, OptionalDouble.empty());

    public Sedation {
        if (!(share >= 0 && share <= 1)) throw new IllegalArgumentException("sedation (" + share + ") lies outside 0 to 1");
        if (halfMin.isPresent() && !(halfMin.getAsDouble() > 0)) throw new IllegalArgumentException("half-time " + halfMin.getAsDouble() + " min");
    }

    /** What is left of it after a time. */
    public double after(double min) { return halfMin.isEmpty() ? share : share * StrictMath.pow(2, -min / halfMin.getAsDouble()); }
}
