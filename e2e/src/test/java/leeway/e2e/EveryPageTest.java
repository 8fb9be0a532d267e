package leeway.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import leeway.e2e.Browser.Look;
import leeway.e2e.Browser.Visit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every page: no violation of WCAG 2.2 AA that a machine can find, no sideways scrolling, pictures to look at in {@code target/screens}. */
class EveryPageTest {
    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");
    private static final int[] WIDTHS = {320, 360, 480, 620, 800, 960, 1100, 1250, 1440, 1920, 2560};
    private static final String STANDS_OUT = "[...document.querySelectorAll('body *')].filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && r.right > document.documentElement.clientWidth + 1 "
            + "&& !e.closest('.scroll, svg, textarea, pre, .unseen, .skip'); }).map(e => e.tagName + '.' + e.className + '#' + e.id).slice(0, 5).join(' ')";

    static List<Pages> pages() { return Pages.ALL; }

    /** What the page fetches after its answer is there. */
    private static void settle(Visit v) throws InterruptedException {
        // asked from outside: the pages' policy lets nobody evaluate a text inside
        String ready = "!document.querySelector('.htmx-request') && (!window.htmx || [...document.querySelectorAll('.later')].every(e => e.querySelector('figure')))";
        for (int i = 0; i < 600 && !Boolean.TRUE.equals(v.page.evaluate(ready)); i++) Thread.sleep(100);
        v.page.evaluate("document.fonts.ready");
    }

    private static void look(Visit v, Pages p, String suffix, List<String> found) throws InterruptedException {
        v.open(p.path());
        assertThat(v.page.title().startsWith("This did not work")).as("%s is an error", p.path()).isEqualTo(p.name().equals("error"));
        settle(v);
        v.page.screenshot(new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "screens", p.name() + suffix + ".png")));
        // each theme and each width once; all four looks in the long check
        if (System.getProperty("long") == null && (suffix.equals("-1440-dark") || suffix.equals("-360-light"))) return;
        for (Rule r : new AxeBuilder(v.page).withTags(RULES).analyze().getViolations()) {
            found.add(p.name() + suffix + " " + r.getId() + ": " + r.getHelp() + " at " + r.getNodes().stream().limit(4).map(n -> n.getTarget() + " " + n.getHtml()).toList());
        }
    }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void isReadableInLightAndDarkWideAndNarrow(Pages p) throws Exception {
        List<String> found = new ArrayList<>();
        for (Look look : new Look[] {Look.WIDE, Look.WIDE.inTheDark(), Look.PHONE, Look.PHONE.inTheDark()}) {
            Visit v = Browser.get().visit(look);
            look(v, p, "-" + look.width() + (look.dark() ? "-dark" : "-light"), found);
            if (p.name().equals("error")) v.forgive();
            v.close();
        }
        assertThat(found).isEmpty();
    }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void fitsFromTheNarrowestToTheWidest(Pages p) throws Exception {
        Visit v = Browser.get().visit(Look.PHONE.of(320));
        v.open(p.path());
        settle(v);
        List<String> found = new ArrayList<>();
        v.page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
        for (int width : WIDTHS) {
            v.page.setViewportSize(width, 900);
            Object out = v.page.evaluate(STANDS_OUT);
            if (!"".equals(out)) found.add(width + " px: " + out);
        }
        if (p.name().equals("error")) v.forgive();
        v.close();
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
                v.page.screenshot(new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "screens", p.name() + "-1440-german.png")));
                if (v.page.locator("nav").innerText().contains("Journey")) found.add(p.name());
            }
        }
        assertThat(found).isEmpty();
    }
}
