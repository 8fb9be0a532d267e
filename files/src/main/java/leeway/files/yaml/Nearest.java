package leeway.files.yaml;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Names close to what somebody wrote: by edit distance (insert, delete, replace, swap of neighbours; optimal string
 * alignment), by the same letters in other spelling, because all its words occur in the name, or because the name begins with it.
 */
public final class Nearest {
    private static final int MOST = 3;

    private Nearest() { }

    private record Near(String name, int distance) { }

    /** At most three, the closest first; empty when all are far off. */
    public static List<String> of(String written, Collection<String> known) {
        String plain = plain(written);
        if (plain.isEmpty() || plain.length() > 80) return List.of();
        List<Near> near = new ArrayList<>();
        for (String name : known) {
            int d = distance(plain, plain(name));
            if (d >= 0) near.add(new Near(name, d));
        }
        near.sort(Comparator.comparingInt(Near::distance));
        int best = near.isEmpty() ? 0 : near.get(0).distance;
        return near.stream().filter(n -> n.distance <= best + 1).limit(MOST).map(Near::name).distinct().toList();
    }

    /** Lower case, words apart by one space; {@code tidalVolume}, {@code tidal_volume} and {@code tidal-volume} are the same. */
    static String plain(String s) {
        return s.strip().replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT).replaceAll("[\\s_\\-]+", " ");
    }

    /** -1 when far off. */
    private static int distance(String a, String b) {
        if (a.equals(b) || a.replace(" ", "").equals(b.replace(" ", ""))) return 0;
        int limit = Math.max(1, Math.min(4, Math.max(a.length(), b.length()) / 3));
        int edit = edits(a, b, limit);
        if (edit <= limit && edit < Math.max(a.length(), b.length())) return edit;
        return a.length() >= 3 && wordsIn(a, b) || a.length() >= 5 && b.startsWith(a) ? limit + 1 : -1;
    }

    private static boolean wordsIn(String a, String b) {
        List<String> words = List.of(b.split(" "));
        return List.of(a.split(" ")).stream().allMatch(words::contains);
    }

    static int edits(String a, String b, int limit) {
        if (Math.abs(a.length() - b.length()) > limit) return limit + 1;
        int[] before = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] now = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) last[j] = j;
        for (int i = 1; i <= a.length(); i++) {
            now[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replace = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                now[j] = Math.min(replace, Math.min(last[j], now[j - 1]) + 1);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) now[j] = Math.min(now[j], before[j - 2] + 1);
            }
            int[] free = before;
            before = last;
            last = now;
            now = free;
        }
        return last[b.length()];
    }
}
