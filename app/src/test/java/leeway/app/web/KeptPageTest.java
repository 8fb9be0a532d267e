package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;

class KeptPageTest {
    private static String unzipped(byte[] zipped) throws IOException {
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(zipped))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void everyReaderGetsTheSamePageWithAnOwnFill() throws IOException {
        String text = "<p>" + "Sauerstoff für 40 min. ".repeat(5_000) + "~gap~</p>" + "x".repeat(70_000) + "~gap~";
        KeptPage page = new KeptPage(text, "~gap~");
        for (String fill : new String[] {"a", "token.with-0123456789_", "", "ü".repeat(100)}) {
            assertThat(new String(page.plain(fill), StandardCharsets.UTF_8)).isEqualTo(text.replace("~gap~", fill));
            assertThat(unzipped(page.zipped(fill))).isEqualTo(text.replace("~gap~", fill));
        }
        assertThat(page.zipped("a").length).isLessThan(2_000);
    }

    @Test
    void aPageWithoutGapsIsKeptToo() throws IOException {
        assertThat(unzipped(new KeptPage("plain", "~gap~").zipped("a"))).isEqualTo("plain");
        assertThat(unzipped(new KeptPage("", "~gap~").zipped("a"))).isEmpty();
    }
}
