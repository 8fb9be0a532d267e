package leeway.app.web.entry;

import java.util.List;

/**
 * One value that can be typed or chosen.
 *
 * @param path     where it stands in the text
 * @param key      its name in the file
 * @param look     how it is entered
 * @param value    as written; of a quantity the number
 * @param unit     of a quantity, as written; empty where none was written
 * @param units    units to choose from
 * @param choices  words to choose from, or to be offered
 * @param hint     what holds where nothing is entered, or an example
 * @param meaning  a sentence
 * @param wrong    what is wrong with it
 * @param needed   whether nothing follows without it
 */
public record Field(String path, String key, Look look, String value, String unit, List<String> units, List<String> choices, String hint, String meaning,
                    List<String> wrong, boolean needed) {
    /** How a value is entered. */
    public enum Look { TEXT, QUANTITY, CHOICE, NAMES }

    public Field {
        units = List.copyOf(units);
        choices = List.copyOf(choices);
        wrong = List.copyOf(wrong);
    }

    /** For the attributes that join label, field and message. */
    public String id() { return id("f-", path); }

    /** A path as an identifier: every stretch of other signs than letters and digits becomes a hyphen. */
    static String id(String kind, String path) {
        StringBuilder out = new StringBuilder(kind);
        boolean gap = false;
        for (int i = 0; i < path.length(); i++) {
            char c = path.charAt(i);
            boolean plain = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9';
            if (plain) out.append(c); else if (!gap) out.append('-');
            gap = !plain;
        }
        return out.toString();
    }

    /** Whether the text has a value here. */
    public boolean filled() { return !value.isEmpty(); }

    public boolean bad() { return !wrong.isEmpty(); }

    /** Whether the value is none of the choices, so that it has to be offered beside them. */
    public boolean odd() { return filled() && !choices.contains(value); }

    /** The whole value as it stands in the text. */
    String written() { return Posted.joined(value, unit); }
}
