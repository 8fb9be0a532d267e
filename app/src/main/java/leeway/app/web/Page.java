package leeway.app.web;

/**
 * What every page has around its own content.
 *
 * @param words the language
 * @param here  the part of the site: journey, rehearse, compare, figures, sheets, api
 * @param title of the window
 * @param token for forms that post
 * @param state the transport file packed for an address; empty where it is the one that comes along
 * @param self  this page's address without its language, to offer the other
 * @param assets style, script, type
 */
public record Page(Words words, String here, String title, String token, String state, String self, Assets assets) {
    public String say(String key, Object... with) { return words.say(key, with); }

    public String lang() { return words.language(); }

    public String asset(String name) { return assets.at(name); }

    /** An address of ours that carries the journey along. */
    public String with(String path) { return state.isEmpty() ? path : path + (path.indexOf('?') < 0 ? "?s=" : "&s=") + state; }

    /** This page in another language. */
    public String in(String language) { return self + (self.indexOf('?') < 0 ? "?" : "&") + "lang=" + language; }
}
