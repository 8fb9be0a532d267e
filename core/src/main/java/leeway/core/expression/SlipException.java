package leeway.core.expression;

/** Carries a slip out of the recursion; never leaves this room except as a {@link Slip} or from {@link Formula#value}. */
public final class SlipException extends RuntimeException {
    private static final long serialVersionUID = 1;
    private final transient Slip slip;

    SlipException(int offset, String what, String right) {
        super(what + ". " + right, null, false, false);
        this.slip = new Slip(offset, what, right);
    }

    public Slip slip() { return slip; }
}
