package leeway.app.web;

/** A request that is not answered, and why: a status and a text of the bundle. */
final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int status;
    private final String key;
    private final String with;

    Refused(int status, String key, String with) {
        super(key, null, false, false);
        this.status = status;
        this.key = key;
        this.with = with;
    }

    int status() { return status; }

    String in(Words words) { return words.say(key, with); }
}
