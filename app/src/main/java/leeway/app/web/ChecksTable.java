package leeway.app.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One table of the page of published checks.
 *
 * @param room  whose figures
 * @param title the test that holds them
 * @param rows  each with as many cells as the head
 */
public record ChecksTable(String room, String title, List<String> head, List<List<String>> rows) {
    /** From the page that the tests write: headings of two depths, tables in between. */
    static List<ChecksTable> read(String page) {
        List<ChecksTable> out = new ArrayList<>();
        String room = "";
        String title = "";
        List<String> head = List.of();
        List<List<String>> rows = new ArrayList<>();
        for (String line : (page + "\n").split("\n", -1)) {
            if (line.startsWith("| ---")) continue;
            if (line.startsWith("|")) {
                List<String> cells = Arrays.stream(line.substring(1, line.lastIndexOf('|')).split("(?<!\\\\)\\|", -1)).map(c -> c.strip().replace("\\|", "|")).toList();
                if (head.isEmpty()) head = cells; else rows.add(cells);
                continue;
            }
            if (!rows.isEmpty()) out.add(new ChecksTable(room, title, head, List.copyOf(rows)));
            if (!line.startsWith("|")) {
                head = List.of();
                rows = new ArrayList<>();
            }
            if (line.startsWith("## ")) room = line.substring(3).replace("leeway.", "");
            if (line.startsWith("### ")) title = line.substring(4).replaceAll("(Published)?Test$", "").replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(java.util.Locale.ROOT);
        }
        return out;
    }

    /** Letters for the columns of a table: numbers to the right. */
    public String kinds() {
        StringBuilder k = new StringBuilder();
        for (String h : head) k.append(List.of("published", "ours", "off", "tolerance").contains(h) ? 'n' : h.equals("source") || h.equals("confidence") ? 'w' : 't');
        return k.toString();
    }
}
