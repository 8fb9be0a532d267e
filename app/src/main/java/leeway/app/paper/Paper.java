package leeway.app.paper;

import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leeway.app.report.Language;
import leeway.core.run.Stopped;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jsoup.Jsoup;
import org.jsoup.helper.W3CDom;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/**
 * A page of HTML as PDF: tagged for those who have it read to them, fonts inside, pictures as lines, the same bytes for the
 * same page but for the moment that the format's metadata hold.
 * <p>Leaves out what paper has no use for: pictures for other widths, folds, links to skip.
 */
final class Paper {
    /** Pixels between the margins of an A4 page, at 96 an inch. */
    static final int WIDTH = 688;

    /** A line never ends between a figure and its unit. */
    private static final Pattern BEFORE_UNIT = Pattern.compile("(?<=\\d) (?=(?:%|s|min|h|mL|L|bar|psi|cmH2O|mmHg|kPa|hPa|kg|Wh?|J|ft|m|°C|/min)(?![\\p{L}\\d]))");
    private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)}");
    /** Light behind letters that cross lines. The renderer paints it over them, so a text of its own goes under each. */
    private static final Pattern HALO = Pattern.compile("stroke:var\\(--sheet\\);stroke-width:[0-9.]+px;paint-order:stroke;stroke-linejoin:round");
    private static final Pattern MARGIN = Pattern.compile("\"([^\"]*[A-Za-z][^\"]*)\"");
    private static final Pattern VARIABLE = Pattern.compile("var\\((--[a-z0-9]+)\\)");
    /** Ink and paper as in the light report; what is a colour alone there has its shape and words here too. */
    private static final Map<String, String> COLOURS = Map.ofEntries(Map.entry("--paper", "#ffffff"), Map.entry("--sheet", "#ffffff"), Map.entry("--ink", "#14263d"),
            Map.entry("--soft", "#45535f"), Map.entry("--line", "#b5b0a2"), Map.entry("--shoal", "#f3c969"), Map.entry("--shoal2", "#fae6b4"), Map.entry("--deep", "#dcebf2"),
            Map.entry("--deep2", "#a9cfe3"), Map.entry("--land", "#e5dcc3"), Map.entry("--harm", "#a3123a"), Map.entry("--go", "#00634a"), Map.entry("--crew", "#7a5b00"));
    /** Signs that the font lacks, in words. */
    private static final Map<String, String> SAID = Map.of("≥", "at least ", "≤", "at most ", "→", "to", "▲", "alarm", "◇", "harm", "₂", "2");

    private Paper() { }

    /**
     * Writes a page as PDF.
     *
     * @param pictureRules styles of the pictures, with variables for colours
     * @param language     in which its texts are said
     * @param unwanted     asked between the steps, at each picture and at each stretch of the file; once it says so, {@link Stopped} is thrown
     */
    static void write(String html, String pictureRules, Language language, OutputStream out, BooleanSupplier unwanted) throws IOException {
        XRLog.setLoggingEnabled(false);
        Document page = Jsoup.parse(html);
        language.into(page);
        go(unwanted);
        page.select("script, link, style, .skip, .wide, .narrow, summary").remove();
        page.select("caption").forEach(c -> { if (c.text().isBlank()) c.remove(); });
        page.select("details").forEach(Element::unwrap);
        page.head().appendElement("style").appendText(coloured(margins(new String(resource("paper.css"), StandardCharsets.UTF_8), language)));
        String rules = pictures(pictureRules);
        for (Element svg : page.select("svg")) picture(svg, rules);
        said(page.body(), language);
        Path fonts = Files.createTempDirectory("leeway-fonts");   // pictures take their letters only by the rule of a style sheet, and that only from a file
        try {
            page.head().appendElement("style").appendText(font(fonts, "text.ttf", 400) + font(fonts, "text-bold.ttf", 700));
            go(unwanted);
            render(page, out, unwanted);
        } finally {
            for (String name : List.of("text.ttf", "text-bold.ttf")) Files.deleteIfExists(fonts.resolve(name));
            Files.deleteIfExists(fonts);
        }
    }

    private static String font(Path folder, String name, int weight) throws IOException {
        return "@font-face{font-family:Body;font-weight:" + weight + ";src:url(" + Files.write(folder.resolve(name), resource(name)).toUri() + ");-fs-pdf-font-embed:embed;-fs-pdf-font-encoding:Identity-H}";
    }

    private static void go(BooleanSupplier unwanted) {
        if (unwanted.getAsBoolean()) throw new Stopped(0);
    }

    /** Pictures take most of the time of a page. */
    private static final class Drawer extends BatikSVGDrawer {
        private final BooleanSupplier unwanted;

        Drawer(BooleanSupplier unwanted) { this.unwanted = unwanted; }

        @Override public SVGImage buildSVGImage(org.w3c.dom.Element svg, Box box, CssContext css, double width, double height, double dotsPerPixel) {
            go(unwanted);
            return super.buildSVGImage(svg, box, css, width, height, dotsPerPixel);
        }
    }

    /** A file that is unwanted is not written on. */
    private static final class Out extends FilterOutputStream {
        private final BooleanSupplier unwanted;

        Out(OutputStream out, BooleanSupplier unwanted) {
            super(out);
            this.unwanted = unwanted;
        }

        @Override public void write(byte[] bytes, int from, int length) throws IOException {
            go(unwanted);
            out.write(bytes, from, length);
        }
    }

    private static void render(Document page, OutputStream out, BooleanSupplier unwanted) throws IOException {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFastMode();
        builder.useSVGDrawer(new Drawer(unwanted));
        builder.usePdfUaAccessibility(true);
        builder.withW3cDocument(new W3CDom().fromJsoup(page), null);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            try (PDDocument document = renderer.getPdfDocument()) {
                Calendar always = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
                always.setTimeInMillis(0);
                document.setDocumentId(1L);
                document.getDocumentInformation().setCreationDate(always);
                document.getDocumentInformation().setModificationDate(always);
                go(unwanted);
                document.save(new Out(out, unwanted));
            }
        }
    }

    /** A picture needs whole widths, its words for who does not see it, and its own styles. */
    private static void picture(Element svg, String rules) {
        String[] box = svg.attr("viewBox").split(" ");
        svg.attr("width", box[2]).attr("height", box[3]).attr("alt", svg.attr("aria-label")).removeAttr("role").removeAttr("aria-label");
        svg.select("text.named, text.behind-name, text.iso-name, text.drawn").forEach(t -> t.before(t.clone().addClass("under")));
        svg.prependElement("style").attr("type", "text/css").appendText(rules);
    }

    /** The rules that speak of pictures, with plain colours. */
    static String pictures(String css) {
        StringBuilder out = new StringBuilder("text{font-family:Body;font-size:12px}");
        String rules = css.replaceAll("@[a-z-]+[^{]*\\{([^{}]*\\{[^{}]*})*[^{}]*}", "");
        for (Matcher m = RULE.matcher(rules); m.find();) {
            StringBuilder selectors = new StringBuilder();
            for (String selector : m.group(1).split(",")) {
                String s = selector.strip();
                if (s.startsWith("svg ") || s.startsWith("svg.")) selectors.append(selectors.isEmpty() ? "" : ",").append(s.startsWith("svg ") ? s.substring(4) : s);
            }
            if (!selectors.isEmpty()) out.append(selectors).append('{').append(HALO.matcher(m.group(2)).replaceAll("")).append('}');
        }
        return coloured(out.append(".under{fill:none;stroke:var(--sheet);stroke-width:3.5px;stroke-linejoin:round}").toString());
    }

    private static String coloured(String css) { return VARIABLE.matcher(css).replaceAll(m -> COLOURS.getOrDefault(m.group(1), "#14263d")); }

    /** What stands in the margins of each page. */
    private static String margins(String css, Language language) {
        return MARGIN.matcher(css).replaceAll(m -> Matcher.quoteReplacement("\"" + (m.group(1).startsWith(" ") ? " " + language.tell(m.group(1).strip()) + " " : language.tell(m.group(1))) + "\""));
    }

    private static void said(Element element, Language language) {
        element.textNodes().forEach(t -> {
            String text = t.getWholeText();
            for (Map.Entry<String, String> e : SAID.entrySet()) {
                if (text.contains(e.getKey())) text = text.replace(e.getKey(), language.tell(e.getValue().strip()) + (e.getValue().endsWith(" ") ? " " : ""));
            }
            t.text(element.closest("svg") == null ? BEFORE_UNIT.matcher(text).replaceAll("\u00A0") : text);
        });
        element.children().forEach(child -> said(child, language));
    }

    private static byte[] resource(String name) {
        try (InputStream in = Paper.class.getResourceAsStream(name)) {
            if (in == null) throw new IllegalStateException("the program lacks its file " + name);
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
