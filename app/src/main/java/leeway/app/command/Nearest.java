package leeway.app.command;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** The known names that lie nearest to what was typed; none where all are far off. */
final class Nearest {
    private static final int ECHOED = 40;

    private Nearest() { }

    /** At most {@code most} names within a distance of a third of the name's length, nearest first. */
    static List<String> of(String typed, Collection<String> known, int most) {
        String t = typed.length() > ECHOED ? typed.substring(0, ECHOED) : typed;
        return known.stream().filter(k -> distance(t, k) <= Math.max(1, Math.max(k.length(), t.length()) / 3))
                .sorted(Comparator.<String>comparingInt(k -> distance(t, k)).thenComparing(Comparator.naturalOrder())).limit(most).toList();
    }

    /** What was typed, at most 40 characters of it, without line breaks. */
    static String shortened(String typed) {
        String flat = typed.replaceAll("\\p{Cntrl}", "?");
        return flat.length() <= ECHOED ? flat : flat.substring(0, ECHOED - 1) + "…";
    }

    /** {@code "a", "b" or "c"}. */
    static String inWords(List<String> names) {
        List<String> quoted = names.stream().map(n -> "\"" + n + "\"").toList();
        if (quoted.size() < 2) return String.join("", quoted);
        return String.join(", ", quoted.subList(0, quoted.size() - 1)) + " or " + quoted.get(quoted.size() - 1);
    }

    /** Insertions, deletions, replacements and swaps of neighbours, case apart (optimal string alignment). */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) d[i][0] = i;
        for (int j = 0; j <= b.length(); j++) d[0][j] = j;
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                char x = Character.toLowerCase(a.charAt(i - 1));
                char y = Character.toLowerCase(b.charAt(j - 1));
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + (x == y ? 0 : 1));
                if (i > 1 && j > 1 && x == Character.toLowerCase(b.charAt(j - 2)) && y == Character.toLowerCase(a.charAt(i - 2))) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
