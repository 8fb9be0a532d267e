package leeway.e2e;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static leeway.e2e.WaysTest.press;
import static leeway.e2e.WaysTest.type;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import leeway.e2e.Browser.Look;
import leeway.e2e.Browser.Visit;
import org.junit.jupiter.api.Test;

/** What people do with a browser besides filling in a form: reload, go back, open a second tab, another file on top of the first. */
class BackAndForthTest {
    private static final String OTHER = """
            transport: Another journey
            patient: {sex: male, height: 180 cm}
            ventilator: example turbine
            oxygen:
              - {name: portable, cylinder: 5 L, pressure: 150 bar}
            legs:
              - {leg: road, takes: 40 min, oxygen: portable}
            """;

    private static void openFile(Page page, String text) {
        page.locator("#open-file").setInputFiles(new FilePayload("other.yaml", "text/yaml", text.getBytes(StandardCharsets.UTF_8)));
        page.waitForNavigation(() -> page.locator("button[form=open]").click());
    }

    @Test
    void aReloadKeepsWhatWasTyped() throws Exception {
        try (Visit v = Browser.get().visit(Look.WIDE)) {
            Page page = v.open("/").page;
            type(page, "settings/fio2", "75");
            page.waitForURL(Pattern.compile(".*\\?s=.*"));
            page.reload();
            assertThat(page.locator("[name='f:settings/fio2']")).hasValue("75");
            assertThat(page.locator("#word")).isVisible();
        }
    }

    @Test
    void awayToTheRehearsalsAndBackFindsTheSameJourney() throws Exception {
        try (Visit v = Browser.get().visit(Look.WIDE)) {
            Page page = v.open("/").page;
            type(page, "settings/fio2", "75");
            page.waitForURL(Pattern.compile(".*\\?s=.*"));
            page.locator("nav a[href*='/rehearse']").first().click();
            page.locator("a", new Page.LocatorOptions().setHasText("tube kinked")).first().click();
            assertThat(page.locator("h1")).hasText("tube kinked");
            page.goBack();
            page.goBack();
            assertThat(page.locator("[name='f:settings/fio2']")).hasValue("75");
            type(page, "settings/fio2", "85");
            assertThat(page.locator("#text")).hasValue(Pattern.compile("fio2: 85 %"));
        }
    }

    @Test
    void twoTabsDoNotDisturbEachOther() throws Exception {
        try (Visit v = Browser.get().visit(Look.WIDE)) {
            Page one = v.open("/").page, two = one.context().newPage();
            two.navigate(one.url());
            type(one, "settings/fio2", "70");
            type(two, "settings/rate", "19");
            type(one, "settings/fio2", "72");
            assertThat(one.locator("#text")).hasValue(Pattern.compile("fio2: 72 %"));
            assertThat(one.locator("#text")).not().hasValue(Pattern.compile("rate: 19 /min"));
            assertThat(two.locator("#text")).hasValue(Pattern.compile("rate: 19 /min"));
            assertThat(two.locator("#text")).hasValue(Pattern.compile("fio2: 60 %"));
        }
    }

    @Test
    void anotherFileStandsBesideThePinnedOneAndIsUndoneInItsOwnSteps() throws Exception {
        try (Visit v = Browser.get().visit(Look.WIDE)) {
            Page page = v.open("/").page;
            press(page, "pin");
            openFile(page, OTHER);
            assertThat(page.locator("#text")).hasValue(OTHER);
            type(page, "oxygen/0/pressure", "60");
            press(page, "undo");
            assertThat(page.locator("#text")).hasValue(OTHER);
            openFile(page, OTHER.replace("\n", "\r\n"));
            type(page, "legs/0/takes", "20");
            assertThat(page.locator("#text")).hasValue(Pattern.compile("takes: 20 min"));
            openFile(page, OTHER.replace("legs:", "legz:"));
            assertThat(page.locator(".answer.waiting")).isVisible();
            assertThat(page.locator("body")).containsText("legz");
            v.complaints();         // the browser notes that a wrong file was answered by 422
        }
    }
}
