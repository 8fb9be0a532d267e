package leeway.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ForcedColors;
import com.microsoft.playwright.options.Media;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import leeway.e2e.Browser.Look;
import leeway.e2e.Browser.Visit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What holds of every page: no violation of WCAG 2.2 AA that a machine can find, no sideways scrolling, nothing that hides
 * behind the reader's own colours; pictures to look at in {@code target/screens}: light and dark, wide and narrow, forced
 * colours, paper.
 */
class EveryPageTest {
    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");
    private static final int[] WIDTHS = {320, 360, 480, 620, 800, 960, 1100, 1250, 1440, 1920, 2560};
    private static final int MOST_PX = 9_000;
    private static final boolean LONG = System.getProperty("long") != null;
    private static final String STANDS_OUT = "[...document.querySelectorAll('body *')].filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && r.right > document.documentElement.clientWidth + 1 "
            + "&& !e.closest('.scroll, svg, textarea, pre, .unseen, .skip'); }).map(e => e.tagName + '.' + e.className + '#' + e.id).slice(0, 5).join(' ')";
    /** Pairs of shapes that lie on each other in a picture; both in one colour, one of them is lost. */
    private static final String LOST = "[['.band', 'fill', '.mid', 'stroke'], ['.shoal', 'fill', '.depth', 'stroke'], ['.inland', 'fill', '.wall', 'stroke'], ['.deepest', 'fill', '.iso', 'stroke'], ['.sheet', 'fill', '.mark', 'stroke'], ['.room', 'stroke', '.bell', 'fill']]"
            + ".filter(([a, x, b, y]) => { const on = document.querySelector('svg ' + a), line = document.querySelector('svg ' + b); return on && line && getComputedStyle(on)[x] === getComputedStyle(line)[y]; }).map(p => p[0] + ' under ' + p[2]).join(', ')";
    /** One visitor for all pages, who changes the way of looking: every page is loaded once at each size that it can tell apart. */
    private static Visit visit;

    static List<Pages> pages() { return Pages.ALL; }

    @BeforeAll
    static void come() throws Exception { visit = Browser.get().visit(Look.WIDE); }

    @AfterAll
    static void leave() { if (visit != null) visit.close(); }

    /** What the page fetches after its answer is there. */
    private static void settle(Visit v) throws InterruptedException {
        // asked from outside: the pages' policy lets nobody evaluate a text inside
        String ready = "!document.querySelector('.htmx-request') && (!window.htmx || [...document.querySelectorAll('.later')].every(e => e.querySelector('figure')))";
        for (int i = 0; i < 600 && !Boolean.TRUE.equals(v.page.evaluate(ready)); i++) Thread.sleep(50);
        v.page.evaluate("document.fonts.ready");
    }

    private static void open(Visit v, Pages p, int width) throws InterruptedException {
        v.page.setViewportSize(width, 1000);
        v.open(p.path());
        assertThat(v.page.title().startsWith("This did not work")).as("%s is an error", p.path()).isEqualTo(p.name().equals("error"));
        settle(v);
    }

    /** The whole page; of a very long one its first stretch, for the rest is more of the same. */
    private static void picture(Visit v, String name) {
        Page.ScreenshotOptions whole = new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "screens", name + ".png"));
        int height = ((Number) v.page.evaluate("document.documentElement.scrollHeight")).intValue();
        v.page.screenshot(height <= MOST_PX ? whole : whole.setClip(0, 0, v.page.viewportSize().width, MOST_PX));
    }

    private static AxeBuilder axe(Visit v) {
        AxeBuilder all = new AxeBuilder(v.page).withTags(RULES);
        // rows of a table come from one template: a dozen of each tell what thousands would
        return LONG ? all : all.exclude(List.of("tbody tr:nth-child(n+13)"));
    }

    private static Page.EmulateMediaOptions look() { return new Page.EmulateMediaOptions(); }

    private static void inEachTheme(Visit v, Pages p, String axeIn, List<String> found) {
        int width = v.page.viewportSize().width;
        for (ColorScheme theme : List.of(ColorScheme.DARK, ColorScheme.LIGHT)) {
            v.page.emulateMedia(look().setColorScheme(theme));
            String name = p.name() + "-" + width + "-" + theme.name().toLowerCase(java.util.Locale.ROOT);
            picture(v, name);
            // each theme and each width once; all four looks in the long check
            if (LONG || name.endsWith(axeIn)) {
                for (Rule r : axe(v).analyze().getViolations()) {
                    found.add(name + " " + r.getId() + ": " + r.getHelp() + " at " + r.getNodes().stream().limit(4).map(n -> n.getTarget() + " " + n.getHtml()).toList());
                }
            }
        }
    }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void isReadableInEveryLook(Pages p) throws Exception {
        List<String> found = new ArrayList<>();
        open(visit, p, Look.PHONE.width());
        inEachTheme(visit, p, "360-dark", found);
        open(visit, p, Look.WIDE.width());
        inEachTheme(visit, p, "1440-light", found);
        visit.page.emulateMedia(look().setForcedColors(ForcedColors.ACTIVE));
        picture(visit, p.name() + "-1440-forced");
        Object lost = visit.page.evaluate(LOST);
        if (!"".equals(lost)) found.add("in the reader's own colours: " + lost);
        visit.page.emulateMedia(look().setForcedColors(ForcedColors.NONE).setMedia(Media.PRINT));
        visit.page.setViewportSize(688, 1000);
        picture(visit, p.name() + "-paper");
        visit.page.emulateMedia(look().setMedia(Media.SCREEN));
        visit.page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
        for (int width : WIDTHS) {
            visit.page.setViewportSize(width, 900);
            Object out = visit.page.evaluate(STANDS_OUT);
            if (!"".equals(out)) found.add(width + " px: " + out);
            if (LONG && (width == 320 || width == 2560)) picture(visit, p.name() + "-" + width);
        }
        List<String> complaints = visit.complaints();
        if (!p.name().equals("error")) found.addAll(complaints);
        assertThat(found).isEmpty();
    }

    @Test
    void everyPageSpeaksGerman() throws Exception {
        List<String> found = new ArrayList<>();
        try (Visit v = Browser.get().visit(Look.WIDE.in("de-AT"))) {
            for (Pages p : Pages.ALL) {
                if (p.name().equals("error")) continue;
                v.open(p.path());
                assertThat(v.page.locator("html").getAttribute("lang")).isEqualTo("de");
                picture(v, p.name() + "-1440-german");
                if (v.page.locator("nav").innerText().contains("Journey")) found.add(p.name());
            }
        }
        assertThat(found).isEmpty();
    }
}
