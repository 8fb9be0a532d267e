package leeway.app.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import leeway.app.command.Run;
import leeway.app.report.Language;
import leeway.core.run.Stopped;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report and the card on paper, read back by the library's own reader. */
class PaperTest {
    private static final String NIGHT = "../examples/night-transfer.yaml";

    @TempDir
    Path folder;

    private static String text(PDDocument pdf) throws IOException { return new PDFTextStripper().getText(pdf).replaceAll("[\\s\u00A0]+", " "); }

    @Test
    void aReportIsWrittenAsAPageOnPaperAndAsACard() throws IOException {
        Run run = Run.of("plan", NIGHT, "--report", folder.toString(), "--format", "json");
        assertThat(run.exit()).as(run.err()).isZero();
        assertThat(folder).isDirectoryContaining("glob:**/plan.html").isDirectoryContaining("glob:**/plan.pdf").isDirectoryContaining("glob:**/card.pdf");
        try (var files = Files.list(folder)) {
            assertThat(files).as("nothing half-written").hasSize(3);
        }
        JsonNode plan = new ObjectMapper().readTree(run.out());
        try (PDDocument pdf = Loader.loadPDF(folder.resolve("plan.pdf").toFile())) {
            String text = text(pdf);
            assertThat(text).contains(plan.get("transport").asText(), "Who speaks first", "Room to every limit", "Oxygen", "not a medical device").doesNotContain("\uFFFD");
            for (JsonNode remark : plan.get("verdict").get("remarks")) assertThat(text).contains(remark.asText().replaceAll("\\s+", " "));
            // a name of two lines may go on below the head of the next page
            for (JsonNode r : plan.get("rehearsals")) assertThat(text).containsSubsequence(r.get("fault").asText().split(" "));
            everyFontIsInside(pdf);
            isTagged(pdf);
        }
    }

    /** At each step, and at each picture and stretch of the file: a paper that nobody waits for is left lying. */
    @Test
    void aPaperThatIsUnwantedIsNotWrittenOn() throws IOException {
        String page = "<html><head><title>x</title></head><body>" + ("<p>" + "words ".repeat(40) + "</p><svg viewBox=\"0 0 10 10\"><line x1=\"0\" y1=\"0\" x2=\"9\" y2=\"9\"/></svg>").repeat(3) + "</body></html>";
        AtomicInteger asked = new AtomicInteger();
        Report.write(page, Language.ENGLISH, OutputStream.nullOutputStream(), () -> asked.incrementAndGet() < 0);
        assertThat(asked.get()).as("steps, three pictures, the file").isGreaterThan(6);
        for (int step : new int[] {1, 2, 4, asked.get()}) {
            AtomicInteger at = new AtomicInteger();
            assertThatThrownBy(() -> Report.write(page, Language.ENGLISH, OutputStream.nullOutputStream(), () -> at.incrementAndGet() >= step)).as("step %d of %d", step, asked.get()).isInstanceOf(Stopped.class);
            assertThat(at.get()).isEqualTo(step);
        }
    }

    @Test
    void theCardSaysWhatACrewNeedsOnTwoPagesAtMost() throws IOException {
        Path card = folder.resolve("crew.pdf");
        Run run = Run.of("card", NIGHT, "--out", card.toString(), "--format", "json");
        assertThat(run.exit()).as(run.err()).isZero();
        assertThat(new ObjectMapper().readTree(run.out()).get("card").asText()).isEqualTo(card.toString());
        JsonNode plan = new ObjectMapper().readTree(Run.of("plan", NIGHT, "--format", "json").out());
        try (PDDocument pdf = Loader.loadPDF(card.toFile())) {
            String text = text(pdf);
            assertThat(pdf.getNumberOfPages()).isLessThanOrEqualTo(2);
            assertThat(text).contains("\"highest pressure\"", plan.get("settings").get("mode").asText(), String.format(Locale.ROOT, "%.0f mL", plan.get("settings").get("tidalVolumeMl").asDouble()),
                    "Local protocol comes first", "Change over from portable", "Lasts from departure", "not a medical device").doesNotContain("turn back by any time");
            JsonNode first = plan.get("rehearsals").get(0);
            assertThat(text).contains(first.get("fault").asText(), first.get("do").get(0).asText());
            everyFontIsInside(pdf);
            isTagged(pdf);
        }
    }

    @Test
    void aPlanThatDoesNotHoldHasACardThatSaysSo() throws IOException {
        Path card = folder.resolve("crew.pdf");
        assertThat(Run.of("card", "../examples/one-small-cylinder.yaml", "--out", card.toString()).exit()).isEqualTo(1);
        try (PDDocument pdf = Loader.loadPDF(card.toFile())) {
            assertThat(text(pdf)).contains("Does not hold");
        }
    }

    @Test
    void whatCannotBeWrittenIsRefusedInALine() throws IOException {
        assertThat(Run.of("card", NIGHT, "--out", folder.resolve("card.html").toString())).satisfies(r -> {
            assertThat(r.exit()).isEqualTo(2);
            assertThat(r.err()).contains("does not end in .pdf").hasLineCount(1);
        });
        Path taken = Files.createDirectory(folder.resolve("taken.pdf"));
        assertThat(Run.of("card", NIGHT, "--out", taken.toString())).satisfies(r -> {
            assertThat(r.exit()).isEqualTo(2);
            assertThat(r.err()).contains("is a folder").hasLineCount(1);
        });
        assertThat(Run.of("card", "../examples/nowhere.yaml").exit()).isEqualTo(2);
    }

    private static void everyFontIsInside(PDDocument pdf) throws IOException {
        for (PDPage page : pdf.getPages()) {
            for (COSName name : page.getResources().getFontNames()) {
                PDFont font = page.getResources().getFont(name);
                assertThat(font.isEmbedded()).as(font.getName()).isTrue();
            }
        }
    }

    private static void isTagged(PDDocument pdf) {
        assertThat(pdf.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
        assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
        assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
    }
}
