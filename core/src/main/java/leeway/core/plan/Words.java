package leeway.core.plan;

import java.util.List;
import java.util.Locale;

/** Figures as sentences show them. */
final class Words {
    private Words() { }

    /** Rounded to this many decimals, without a minus before zero. */
    static String n(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.matches("-0(\\.0*)?") ? text.substring(1) : text;
    }

    /** "4.2 %"; a small chance keeps a digit, none is said to be none. */
    static String percent(double share) {
        double p = share * 100;
        if (p == 0) return "0 %";
        return p < 0.1 ? "under 0.1 %" : n(p, p < 10 ? 1 : 0) + " %";
    }

    /** "a, b and c". */
    static String list(List<String> names) {
        if (names.size() < 2) return String.join("", names);
        return String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }

    /** "6500 ft (1981 m)". */
    static String altitude(double m) { return n(Math.rint(m / 0.3048 / 50) * 50, 0) + " ft (" + n(m, 0) + " m)"; }
}
