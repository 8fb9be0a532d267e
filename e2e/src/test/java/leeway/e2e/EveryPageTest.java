package leeway.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.List;
import leeway.e2e.Browser.Look;
import leeway.e2e.Browser.Visit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every page: no violation of WCAG 2.2 AA that a machine can find, no sideways scrolling, pictures to look at. */
class EveryPageTest {
    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

    static List<Pages> pages() { return Pages.ALL; }

    private static boolean missing(Visit v) { return v.page.title().startsWith("This did not work") || v.page.title().startsWith("Das ging nicht"); }

    private static void look(Pages p, Look look, String suffix) throws Exception {
        Visit v = Browser.get().visit(look);
        v.open(p.path());
        assertThat(missing(v)).as("%s is there", p.path()).isEqualTo(p.name().equals("error"));
        v.page.evaluate("document.fonts.ready");
        v.page.screenshot(new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "screens", p.name() + suffix + ".png")));
        List<Rule> violations = new AxeBuilder(v.page).withTags(RULES).analyze().getViolations();
        assertThat(violations.stream().map(r -> r.getId() + ": " + r.getHelp() + " at " + r.getNodes().stream().limit(4).map(n -> n.getTarget() + " " + n.getFailureSummary()).toList()).toList())
                .as("%s%s", p.name(), suffix).isEmpty();
        assertThat((Boolean) v.page.evaluate("document.documentElement.scrollWidth <= document.documentElement.clientWidth")).as("%s%s does not scroll sideways", p.name(), suffix).isTrue();
        if (!p.name().equals("error")) v.close();
    }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void wideAndLight(Pages p) throws Exception { look(p, Look.WIDE, "-1440-light"); }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void wideAndDark(Pages p) throws Exception { look(p, Look.WIDE.inTheDark(), "-1440-dark"); }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void narrowAndLight(Pages p) throws Exception { look(p, Look.PHONE, "-360-light"); }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void narrowAndDark(Pages p) throws Exception { look(p, Look.PHONE.inTheDark(), "-360-dark"); }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void fromTheNarrowestToTheWidest(Pages p) throws Exception {
        try (Visit v = Browser.get().visit(Look.PHONE.of(320))) {
            if (p.name().equals("error")) return;
            for (int width : new int[] {320, 480, 620, 800, 960, 1100, 1250, 1920, 2560}) {
                v.page.setViewportSize(width, 900);
                v.open(p.path());
                Object wide = v.page.evaluate("[...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !e.closest('.scroll, svg, textarea, .unseen, .skip')).map(e => e.tagName + '.' + e.className).slice(0, 5).join(' ')");
                assertThat(wide).as("%s at %d px: what stands out", p.name(), width).isEqualTo("");
            }
        }
    }

    @ParameterizedTest(name = "{0}") @MethodSource("pages")
    void inGerman(Pages p) throws Exception {
        if (p.name().equals("error")) return;
        try (Visit v = Browser.get().visit(Look.WIDE.in("de-AT"))) {
            v.open(p.path());
            assertThat(v.page.locator("html").getAttribute("lang")).isEqualTo("de");
            v.page.screenshot(new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "screens", p.name() + "-1440-german.png")));
        }
    }
}
