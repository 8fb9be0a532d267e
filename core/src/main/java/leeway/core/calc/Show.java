package leeway.core.calc;

import java.util.Locale;

/** Numbers in working steps, rounded for reading. */
public final class Show {
    private Show() { }

    /** Four significant digits, without needless zeros. */
    public static String number(double value) { return digits(value, 4); }

    /** This many significant digits; whole numbers keep all of theirs. */
    public static String digits(double value, int digits) {
        if (value == 0) return "0";
        int before = (int) Math.floor(Math.log10(Math.abs(value))) + 1;
        int decimals = Math.max(0, digits - before);
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        if (decimals > 0) {
            int end = text.length();
            while (text.charAt(end - 1) == '0') end--;
            if (text.charAt(end - 1) == '.') end--;
            text = text.substring(0, end);
        }
        return text.equals("-0") ? "0" : text;
    }

    /** A share as a percentage. */
    public static String percent(double share) { return number(100 * share) + " %"; }
}
