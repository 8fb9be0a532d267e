package leeway.e2e;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.app.web.Server;
import org.junit.jupiter.api.Assumptions;

/** One browser and one server for all tests of this module; both end with the test run. */
final class Browser {
    private static final List<String> PLACES = List.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");
    private static Browser one;

    final Server server;
    private final com.microsoft.playwright.Browser browser;

    private Browser(Path program) throws Exception {
        server = Server.start(Server.Options.local());
        Playwright playwright = Playwright.create(new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright.chromium().launch(new BrowserType.LaunchOptions().setExecutablePath(program).setArgs(List.of("--no-sandbox", "--disable-gpu", "--disable-quic",
                "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--font-render-hinting=none")));
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            playwright.close();
            server.close();
        }));
    }

    /** Skips the test with a message where there is no browser, unless this is CI, which must have one. */
    static synchronized Browser get() throws Exception {
        if (one == null) {
            Optional<Path> program = PLACES.stream().map(Path::of).filter(Files::isExecutable).findFirst();
            if (program.isEmpty() && System.getenv("CI") == null) Assumptions.abort("no Chromium here, so the pages are not opened: install one (Debian: apt-get install chromium)");
            one = new Browser(program.orElseThrow(() -> new AssertionError("CI needs Chromium for the tests of the pages (Debian: apt-get install chromium)")));
        }
        return one;
    }

    String at(String path) { return server.address() + path.substring(1); }

    /** A fresh visitor. */
    Visit visit(Look look) {
        com.microsoft.playwright.Browser.NewContextOptions options = new com.microsoft.playwright.Browser.NewContextOptions().setViewportSize(look.width, look.height).setColorScheme(look.dark ? ColorScheme.DARK : ColorScheme.LIGHT)
                .setLocale(look.language).setJavaScriptEnabled(look.script).setAcceptDownloads(true).setReducedMotion(ReducedMotion.REDUCE);
        return new Visit(this, browser.newContext(options));
    }

    /** How the visitor looks at the pages. */
    record Look(int width, int height, boolean dark, String language, boolean script) {
        static final Look WIDE = new Look(1440, 1000, false, "en", true);
        static final Look PHONE = new Look(360, 740, false, "en", true);

        Look inTheDark() { return new Look(width, height, true, language, script); }

        Look in(String other) { return new Look(width, height, dark, other, script); }

        Look without() { return new Look(width, height, dark, language, false); }

        Look of(int w) { return new Look(w, height, dark, language, script); }
    }

    /** One visitor with a page; errors of the page's script and console fail the test at the end. */
    static final class Visit implements AutoCloseable {
        final Page page;
        private final Browser browser;
        private final BrowserContext context;
        private final List<String> errors = new ArrayList<>();

        Visit(Browser browser, BrowserContext context) {
            this.browser = browser;
            this.context = context;
            page = context.newPage();
            page.setDefaultTimeout(30_000);
            com.microsoft.playwright.assertions.PlaywrightAssertions.setDefaultAssertionTimeout(30_000);
            page.onConsoleMessage(m -> {
                // a request that a newer one replaced is no error; htmx logs it with the element
                if (m.type().equals("error") && !m.text().contains("htmx:sendAbort") && !m.text().contains("htmx:afterRequest") && !m.text().contains("[object HTML")) errors.add(m.text());
            });
            page.onPageError(errors::add);
        }

        Visit open(String path) {
            page.navigate(browser.at(path));
            return this;
        }

        /** What the page complained of since it was asked last. */
        List<String> complaints() {
            List<String> all = List.copyOf(errors);
            errors.clear();
            return all;
        }

        @Override public void close() {
            context.close();
            if (!errors.isEmpty()) throw new AssertionError("the page complained: " + errors);
        }
    }
}
