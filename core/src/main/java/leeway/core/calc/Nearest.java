package leeway.core.calc;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The known name that a misspelt one probably meant: fewest edits, at most a third of its letters. */
final class Nearest {
    private Nearest() { }

    static Optional<String> of(String text, Collection<String> known) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        String best = null;
        int least = Math.max(1, wanted.length() / 3) + 1;
        if (wanted.length() > 60) return Optional.empty();
        for (String name : known) {
            String low = name.toLowerCase(Locale.ROOT);
            int edits = wanted.length() >= 3 && (low.startsWith(wanted) || low.replace("-", "").equals(wanted)) ? 1 : edits(wanted, low);
            if (edits < least) {
                least = edits;
                best = name;
            }
        }
        return Optional.ofNullable(best);
    }

    private static int edits(String a, String b) {
        int[] above = new int[b.length() + 1], row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) above[j] = j;
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, 1 + Math.min(above[j], row[j - 1]));
            }
            int[] t = above;
            above = row;
            row = t;
        }
        return above[b.length()];
    }
}
