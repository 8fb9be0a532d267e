package leeway.core.run;

import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * The one loop: steps all parts of a run from switch to switch.
 * <p>Deterministic: no clock, no thread, ties go to the earlier part. A run that makes no progress in {@value #PATIENCE}
 * steps stops with the time and the part, instead of hanging.
 */
public final class Loop {
    private static final int PATIENCE = 64;
    private static final double LEAST_S = 1e-9;
    /** Steps between two looks at whether anybody still waits; some ten microseconds each. */
    private static final int STEPS_BETWEEN_LOOKS = 256;
    private final Part[] parts;
    private final Claims claims;
    private final BooleanSupplier unwanted;

    /** In the order in which they pass: breath, gas, supply, power, sensors, alarms, crew. */
    public Loop(List<? extends Part> parts) {
        this.parts = parts.toArray(new Part[0]);
        this.claims = new Claims();
        this.unwanted = () -> false;
        for (Part part : this.parts) part.claim(claims);
    }

    private Loop(Loop same, BooleanSupplier unwanted) {
        this.parts = same.parts;
        this.claims = same.claims;
        this.unwanted = unwanted;
    }

    /** The same loop over the same parts; it stops with {@link Stopped} soon after the answer is told to be unwanted, and computes the same until then. */
    public Loop until(BooleanSupplier unwanted) { return new Loop(this, unwanted); }

    public Loop(Part... parts) {
        this(List.of(parts));
    }

    /** The first moment, t = 0, of a run under this script. */
    public Now begin(Script script) {
        script.require(claims.knobs());
        Now n = new Now(claims.size());
        script.copy().fold(0, n.p);
        for (Part part : parts) part.retune(n);
        for (Part part : parts) part.begin(n);
        return n;
    }

    /** Runs {@code n} to the end time, or until the sink has enough. May be called again to go on; in pieces or at once, the answer is the same where no part's step depends on the end. */
    public void to(double endS, Now n, Script script, Sink out) {
        script.foldAfresh();
        int still = 0;
        int steps = 0;
        double lastS = Double.NEGATIVE_INFINITY;
        while (n.tS < endS && !out.enough()) {
            if (++steps % STEPS_BETWEEN_LOOKS == 0 && unwanted.getAsBoolean()) throw new Stopped(n.tS);
            if (script.fold(n.tS, n.p)) for (Part part : parts) part.retune(n);
            double toS = Math.min(endS, script.nextS(n.tS));
            int who = -1;
            for (int i = 0; i < parts.length; i++) {
                double nextS = parts[i].nextS(n, toS);
                if (nextS < toS) {
                    toS = Math.max(n.tS, nextS);
                    who = i;
                }
            }
            if (toS > lastS + LEAST_S) {
                still = 0;
                lastS = toS;
            } else if (++still > PATIENCE) {
                throw new IllegalStateException("no progress at " + n.tS + " s in " + (who < 0 ? "the script" : parts[who].who()));
            }
            double dtS = toS - n.tS;
            out.stretch(n, toS);
            for (Part part : parts) part.pass(n, dtS);
            n.tS = toS;
            Arrays.fill(n.flux, 0);
            if (who >= 0) {
                parts[who].hit(n, script, out);
                if (n.rowEnds) {
                    n.rowEnds = false;
                    for (Part part : parts) part.row(n, script, out);
                    out.row(n);
                }
            }
        }
    }
}
