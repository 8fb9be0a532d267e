package leeway;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleSupplier;

/**
 * One figure from print, the digit it is printed to, its source, and what we make of it.
 * <p>A test class named {@code …PublishedTest} holds a {@code static final List<Check> ROWS}; {@link ChecksPage} finds
 * the lists and writes docs/checks.md from them. The tolerance is half of the last printed digit, or the spread that
 * was published; a wider one needs its reason in {@code source}.
 *
 * @param what       the case with its inputs, as a reader would look it up
 * @param printed    the published value
 * @param tolerance  largest difference that still agrees, in {@code unit}
 * @param unit       of the printed value, our value and the tolerance
 * @param source     who printed it, with page, table or equation where known
 * @param confidence how well the source is known
 * @param missed     empty, or why the model is known to miss this figure; the row then fails once it agrees
 * @param ours       what the program makes of the same case
 */
public record Check(String what, double printed, double tolerance, String unit, String source, Confidence confidence,
        String missed, DoubleSupplier ours) {

    /** How well a source is known. */
    public enum Confidence {
        /** The source or a copy of it was read. */
        LOOKED_UP("looked up"),
        /** Follows by calculation from a formula whose source was read. */
        COMPUTED("computed from the formula"),
        /** Remembered, not read. */
        FROM_MEMORY("from memory");

        private final String words;

        Confidence(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Check {
        if (!Double.isFinite(printed) || !(tolerance >= 0)) throw new IllegalArgumentException(what + ": printed " + printed + ", tolerance " + tolerance);
        if (source.isBlank()) throw new IllegalArgumentException(what + " has no source");
    }

    public static Check lookedUp(String what, double printed, double tolerance, String unit, String source, DoubleSupplier ours) {
        return new Check(what, printed, tolerance, unit, source, Confidence.LOOKED_UP, "", ours);
    }

    public static Check computed(String what, double printed, double tolerance, String unit, String source, DoubleSupplier ours) {
        return new Check(what, printed, tolerance, unit, source, Confidence.COMPUTED, "", ours);
    }

    public static Check fromMemory(String what, double printed, double tolerance, String unit, String source, DoubleSupplier ours) {
        return new Check(what, printed, tolerance, unit, source, Confidence.FROM_MEMORY, "", ours);
    }

    /** The same row as one that the model is known to miss, and why. It goes red once the model agrees. */
    public Check missedBecause(String why) {
        return new Check(what, printed, tolerance, unit, source, confidence, why, ours);
    }

    /** Asserts that ours agrees with print, or still misses where that is stated. */
    public void holds() {
        double value = ours.getAsDouble();
        if (missed.isEmpty()) {
            assertThat(value).as("%s [%s], after %s", what, unit, source).isCloseTo(printed, within(tolerance * (1 + 1e-9)));
        } else {
            assertThat(value).as("%s is finite", what).isFinite();
            assertThat(Math.abs(value - printed)).as("%s was known to miss (%s); it agrees now, so take the note away", what, missed).isGreaterThan(tolerance);
        }
    }

    @Override
    public String toString() {
        return what;
    }
}
