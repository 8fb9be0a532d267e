package leeway.app.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Text of at most 80 columns: headings on a rule, paragraphs, lists, tables whose last column wraps. Colour never carries meaning alone. */
public final class TextPage {
    private static final String BOLD = "\u001b[1m";
    private static final String GREEN = "\u001b[32m";
    private static final String RED = "\u001b[31m";
    private static final String PLAIN = "\u001b[0m";

    private final StringBuilder s = new StringBuilder();
    private final int width;
    private final boolean colour;

    public TextPage(int width, boolean colour) {
        this.width = width;
        this.colour = colour;
    }

    /** How a line speaks. */
    public enum Tone { GOOD, BAD, STRONG }

    /** A line that stands out. */
    public TextPage strong(Tone tone, String text) {
        for (String line : wrap(text, width)) s.append(colour ? BOLD + (tone == Tone.GOOD ? GREEN : tone == Tone.BAD ? RED : "") : "").append(line).append(colour ? PLAIN : "").append('\n');
        return this;
    }

    /** A heading with what belongs to it at the right, and a rule below. */
    public TextPage heading(String left, String right) {
        s.append('\n').append(colour ? BOLD : "").append(left).append(colour ? PLAIN : "");
        if (!right.isEmpty() && left.length() + right.length() + 2 <= width) s.append(" ".repeat(width - left.length() - right.length())).append(right);
        s.append('\n').append("-".repeat(width)).append('\n');
        return this;
    }

    public TextPage paragraph(String text) {
        for (String line : wrap(text, width)) s.append(line).append('\n');
        return this;
    }

    public TextPage items(List<String> texts) {
        for (String text : texts) {
            boolean first = true;
            for (String line : wrap(text, width - 2)) {
                s.append(first ? "- " : "  ").append(line).append('\n');
                first = false;
            }
        }
        return this;
    }

    /** A line as it is: a drawing of characters. */
    public TextPage verbatim(String line) {
        s.append(line).append('\n');
        return this;
    }

    /** Lines that are laid out already. */
    TextPage asItStands(String lines) {
        s.append(lines);
        return this;
    }

    public TextPage blank() {
        s.append('\n');
        return this;
    }

    /** Rows of cells; columns whose every cell is a number stand to the right; the last column takes what is left and wraps. */
    public TextPage table(List<String> head, List<List<String>> rows) {
        if (rows.isEmpty()) return this;
        int columns = rows.get(0).size();
        int[] widths = new int[columns];
        boolean[] right = new boolean[columns];
        Arrays.fill(right, true);
        List<List<String>> all = new ArrayList<>();
        if (!head.isEmpty()) all.add(head);
        all.addAll(rows);
        for (List<String> row : all) for (int i = 0; i < columns; i++) widths[i] = Math.max(widths[i], row.get(i).length());
        for (List<String> row : rows) for (int i = 0; i < columns; i++) right[i] &= row.get(i).isEmpty() || row.get(i).matches("[-−]?[0-9][0-9.,:]*( %)?");
        int gaps = 2 * (columns - 1);
        int before = 0;
        for (int i = 0; i < columns - 1; i++) before += widths[i];
        int most = width - gaps - 12;
        while (before > most) {
            int widest = 0;
            for (int i = 1; i < columns - 1; i++) if (widths[i] > widths[widest]) widest = i;
            widths[widest]--;
            before--;
        }
        widths[columns - 1] = Math.min(widths[columns - 1], width - gaps - before);
        for (int r = 0; r < all.size(); r++) {
            boolean bold = colour && r == 0 && !head.isEmpty();
            row(all.get(r), widths, right, bold);
        }
        return this;
    }

    private void row(List<String> cells, int[] widths, boolean[] right, boolean bold) {
        List<List<String>> lines = new ArrayList<>();
        int tall = 1;
        for (int i = 0; i < widths.length; i++) {
            List<String> wrapped = wrap(cells.get(i), Math.max(1, widths[i]));
            lines.add(wrapped);
            tall = Math.max(tall, wrapped.size());
        }
        for (int k = 0; k < tall; k++) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String cell = k < lines.get(i).size() ? lines.get(i).get(k) : "";
                String pad = " ".repeat(Math.max(0, widths[i] - cell.length()));
                line.append(right[i] ? pad + cell : cell + pad);
                if (i < widths.length - 1) line.append("  ");
            }
            String text = line.toString().stripTrailing();
            s.append(bold ? BOLD : "").append(text).append(bold ? PLAIN : "").append('\n');
        }
    }

    /** Lines of at most this width, broken between words, in a word only where it is too long. */
    static List<String> wrap(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            String rest = word;
            while (rest.length() > width) {
                if (line.length() > 0) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                lines.add(rest.substring(0, width));
                rest = rest.substring(width);
            }
            if (line.length() > 0 && line.length() + 1 + rest.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            if (line.length() > 0) line.append(' ');
            line.append(rest);
        }
        if (line.length() > 0 || lines.isEmpty()) lines.add(line.toString());
        return lines;
    }

    @Override public String toString() { return s.toString(); }
}
