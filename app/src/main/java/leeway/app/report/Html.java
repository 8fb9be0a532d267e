package leeway.app.report;

import java.util.List;

/** HTML of a page, piece by piece; every text is escaped. */
public final class Html {
    /** A table of so few rows stays on one page of paper. */
    private static final int SHORT = 8;
    private final StringBuilder s = new StringBuilder();

    /** Markup of our own. */
    public Html raw(String markup) {
        s.append(markup);
        return this;
    }

    public Html text(String text) {
        s.append(Svg.escape(text));
        return this;
    }

    public Html element(String name, String text) { return raw("<" + name + ">").text(text).raw("</" + name + ">\n"); }

    /** A heading on a rule with what belongs to it at the right. */
    public Html heading(String id, String text, String right) {
        raw("<h2 id=\"" + id + "\">").text(text);
        if (!right.isEmpty()) raw(" <span>").text(right).raw("</span>");
        return raw("</h2>\n");
    }

    public Html list(String cssClass, List<String> texts) {
        raw(cssClass.isEmpty() ? "<ul>" : "<ul class=\"" + cssClass + "\">");
        for (String t : texts) raw("<li>").text(t).raw("</li>\n");
        return raw("</ul>\n");
    }

    /** A table; {@code kinds} gives a letter a column: t text, k key figure, n number, w why. The first column heads its row. */
    public Html table(String caption, List<String> head, String kinds, List<List<String>> rows) {
        if (rows.isEmpty()) return this;
        raw("<div class=\"scroll" + (rows.size() <= SHORT ? " short" : "") + "\" tabindex=\"0\" role=\"region\" aria-label=\"").text(caption).raw("\"><table><caption>").text(caption).raw("</caption>");
        if (!head.isEmpty()) {
            raw("<thead><tr>");
            for (int i = 0; i < head.size(); i++) raw("<th scope=\"col\"" + (kinds.charAt(i) == 'n' ? " class=\"n\"" : "") + ">").text(head.get(i)).raw("</th>");
            raw("</tr></thead>");
        }
        raw("<tbody>");
        for (List<String> row : rows) {
            raw("<tr>");
            for (int i = 0; i < row.size(); i++) {
                String cell = i == 0 ? "th scope=\"row\"" : "td" + switch (kinds.charAt(i)) {
                    case 'n' -> " class=\"n\"";
                    case 'k' -> " class=\"key\"";
                    case 'w' -> " class=\"why\"";
                    default -> "";
                };
                raw("<" + cell + ">").text(row.get(i)).raw(i == 0 ? "</th>" : "</td>");
            }
            raw("</tr>\n");
        }
        return raw("</tbody></table></div>\n");
    }

    /** Folded until asked for. */
    Html folded(String summary, Runnable body) {
        raw("<details><summary>").text(summary).raw("</summary>");
        body.run();
        return raw("</details>\n");
    }

    @Override public String toString() { return s.toString(); }
}
