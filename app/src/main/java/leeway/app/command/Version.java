package leeway.app.command;

/** Which Leeway this is. */
public final class Version {
    /** As CHANGES.md heads it. */
    public static final String TEXT = "0.1";

    private Version() { }
}
