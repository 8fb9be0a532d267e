package leeway.files;

import leeway.ChecksPage;
import org.junit.jupiter.api.Test;

/** The page of published checks shows the rows of the sheets, too. */
class ChecksPageOfFilesTest {
    @Test
    void thePageShowsTheRowsOfFiles() { ChecksPage.holds("files", ChecksPageOfFilesTest.class); }
}
