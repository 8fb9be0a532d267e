package leeway;

import org.junit.jupiter.api.Test;

/** The page of published checks is what core's rows give today. */
class ChecksPageTest {
    @Test
    void thePageShowsTheRowsOfCore() {
        ChecksPage.holds("core", ChecksPageTest.class);
    }
}
