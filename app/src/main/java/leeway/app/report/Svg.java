package leeway.app.report;

/** One SVG picture as a string: shapes in, a closed element out. Coordinates keep one decimal; texts are escaped. */
public final class Svg {
    private final StringBuilder s = new StringBuilder();

    /** A picture that grows with its place, with a sentence that says what it shows. */
    public Svg(String cssClass, int width, int height, String says) {
        s.append("<svg class=\"").append(cssClass).append("\" viewBox=\"0 0 ").append(width).append(' ').append(height)
                .append("\" role=\"img\" aria-label=\"").append(escape(says)).append("\">");
    }

    /** For HTML and XML alike. */
    public static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
        return out.toString();
    }

    /** A coordinate behind what is there. */
    static StringBuilder n(StringBuilder out, double v) {
        if (!Double.isFinite(v)) throw new IllegalStateException("a picture has no place for " + v);
        return Decimals.tenths(out, v);
    }

    public Svg line(String cssClass, double x1, double y1, double x2, double y2) { return open("line", cssClass).number("x1", x1).number("y1", y1).number("x2", x2).number("y2", y2).end(); }

    public Svg rect(String cssClass, double x, double y, double width, double height) {
        return open("rect", cssClass).number("x", x).number("y", y).number("width", Math.max(0, width)).number("height", Math.max(0, height)).end();
    }

    public Svg polyline(String cssClass, double[] x, double[] y) { return points("polyline", cssClass, x, y); }

    public Svg polygon(String cssClass, double[] x, double[] y) { return points("polygon", cssClass, x, y); }

    private Svg points(String shape, String cssClass, double[] x, double[] y) {
        open(shape, cssClass);
        s.append(" points=\"");
        String before = "";
        String here = x.length == 0 ? "" : n(y[0]);
        for (int i = 0; i < x.length; i++) {
            String after = i + 1 < x.length ? n(y[i + 1]) : "";
            // a point on a level stretch tells nothing
            if (!here.equals(before) || !here.equals(after)) n(s.append(i == 0 ? "" : " "), x[i]).append(',').append(here);
            before = here;
            here = after;
        }
        s.append('"');
        return end();
    }

    private static String n(double v) { return n(new StringBuilder(8), v).toString(); }

    public Svg circle(String cssClass, double x, double y, double radius) { return open("circle", cssClass).number("cx", x).number("cy", y).number("r", radius).end(); }

    private Svg open(String shape, String cssClass) {
        s.append('<').append(shape).append(" class=\"").append(cssClass).append('"');
        return this;
    }

    private Svg number(String name, double v) {
        n(s.append(' ').append(name).append("=\""), v).append('"');
        return this;
    }

    private Svg end() {
        s.append("/>");
        return this;
    }

    /** A path of straight strokes; even-odd where the style says so. */
    public Svg path(String cssClass, String d) {
        s.append("<path class=\"").append(cssClass).append("\" d=\"").append(d).append("\"/>");
        return this;
    }

    /** Markup of our own making, definitions and the like; never text of a user's. */
    Svg raw(String markup) {
        s.append(markup);
        return this;
    }

    /** Where a text is held. */
    public enum At { START, MIDDLE, END }

    public Svg text(String cssClass, double x, double y, At at, String text) {
        open("text", cssClass).number("x", x).number("y", y);
        if (at != At.START) s.append(" text-anchor=\"").append(at == At.MIDDLE ? "middle" : "end").append('"');
        s.append('>').append(escape(text)).append("</text>");
        return this;
    }

    /** How wide a text will be at most, in the sans of the page; on the wide side. */
    public static double width(String text, double fontPx) { return text.length() * fontPx * 0.56; }

    public String done() { return s.append("</svg>").toString(); }
}
