package leeway.core.rehearsal;

import java.util.function.DoubleFunction;

/**
 * The latest moment at which a remedy still prevents harm: between one that was tried and did and one, at most {@value #FINE_S} s
 * later, that was tried and did not (or harm itself). The earlier of the two is the answer.
 * <p>Where to try is guessed: after a remedy in time the measure that brings harm still falls for a while before it turns, as far as
 * it does without help in a time that the course of that branch tells. Guesses that do not close in are followed by halving, so a
 * wrong one costs time and nothing else. Leaves out: a remedy that helps late and not early.
 */
final class Rescue {
    static final double FINE_S = 0.5;
    /** After so many guesses the middle is tried. */
    private static final int GUESSES = 6;
    /** Tries in all: a day is halved to the fineness in 18. */
    private static final int TRIES = 30;
    /** A try that should be in time lies so much before the guess; s. */
    private static final double BEFORE_S = FINE_S / 4;

    private final Course without;
    private final int measure;
    private final double harmS;

    /**
     * @param without the branch without help, up to its harm
     * @param measure that brings harm there, its place in the course
     * @param harmS   when
     */
    Rescue(Course without, int measure, double harmS) {
        this.without = without;
        this.measure = measure;
        this.harmS = harmS;
    }

    /**
     * What came of a remedy.
     *
     * @param harm      whether harm came in spite of it
     * @param leastRoom of the measure that brings harm without help, in its unit
     */
    record Tried(boolean harm, double leastRoom) { }

    /**
     * @param atS      when the fault strikes
     * @param remedied what comes of the remedy at a time
     * @return latest moment after the fault, s; 0 where even at once is too late
     */
    double byS(double atS, DoubleFunction<Tried> remedied) {
        Tried tried = remedied.apply(atS);
        if (tried.harm()) return 0;
        double goodS = atS, badS = harmS, guessS = guessS(goodS, tried), backS = 0;
        for (int i = 0; i < TRIES && badS - goodS > FINE_S; i++) {
            double tryS = (goodS + badS) / 2;
            if (i < GUESSES) {
                // back from the last that was too late, or a little before the guess
                double wanted = backS > 0 ? badS - backS : Math.max(guessS - BEFORE_S, goodS + FINE_S);
                if (wanted > goodS && wanted < badS) tryS = wanted;
            }
            tried = remedied.apply(tryS);
            if (tried.harm()) {
                badS = tryS;
                backS = backS > 0 ? 3 * backS : FINE_S;
            } else {
                goodS = tryS;
                guessS = guessS(tryS, tried);
                backS = 0;
            }
        }
        return goodS - atS;
    }

    /** The last remedy that helps, if one always takes as long to turn the measure as this one did; {@code NaN} where that cannot be told. */
    private double guessS(double remedyS, Tried tried) { return harmS - (without.fallsToS(measure, tried.leastRoom()) - remedyS); }
}
