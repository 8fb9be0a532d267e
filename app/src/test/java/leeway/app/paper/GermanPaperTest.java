package leeway.app.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import leeway.app.command.Run;
import leeway.app.command.SheetLibrary;
import leeway.app.rehearse.Shared;
import leeway.app.report.Examples;
import leeway.app.report.Language;
import leeway.app.report.ReportPage;
import leeway.app.web.Words;
import leeway.core.journey.Ventilated;
import leeway.core.map.MapMaker;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportReader;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Report and card in German: nothing that we say stays English. */
class GermanPaperTest {
    private static final Language GERMAN = Words.in("de").spoken();
    /** No words: figures with their units, gases, signs. */
    private static final Pattern FIGURES = Pattern.compile("([−+±×()\\d.,:;/%–-]|\\b(min|h|s|L|kg|bar|psi|Wh|W|mL|cmH2O|mmHg|kPa|Pa|J|J/min|J/L|L/min|L/bar|L/psi|mL/kg|mL/cmH2O|cmH2O\\.s/L|FiO2|PEEP|pH|PaCO2|PaO2|SpO2|etCO2|CO2|P0|A/C-VC|PS|VC|PC|E|I|mmol/L|°C)\\b|°C|\\s|[a-f0-9]{12,})*");

    @TempDir
    Path folder;

    /** Texts that German lacks, but for names of the file and what stands in quotation marks or brackets as a source. */
    private static Set<String> missing(String html, Plan plan) {
        Set<String> missing = new TreeSet<>();
        List<String> names = new java.util.ArrayList<>(plan.legs().stream().map(l -> l.leg()).toList());
        plan.supply().oxygen().stores().forEach(s -> names.add(s.name()));
        plan.supply().power().ifPresent(p -> p.stores().forEach(s -> names.add(s.name())));
        plan.supply().power().ifPresent(p -> p.byLeg().forEach(l -> names.add(l.from())));
        Document page = Jsoup.parse(html);
        page.select("style, script, h1, title").remove();
        for (Element e : page.getAllElements()) {
            for (TextNode t : e.textNodes()) {
                String text = t.getWholeText().strip();
                String bare = text;
                for (String name : names) bare = bare.replace(name, "");
                if (text.isEmpty() || FIGURES.matcher(bare).matches() || text.endsWith("…")) continue;
                for (String part : text.split("(?<=[.!?]) (?=[\\p{L}\\d\"])")) if (GERMAN.sentence().apply(text).isEmpty() && GERMAN.sentence().apply(part).isEmpty()) missing.add(part);
            }
            if (e.hasAttr("aria-label")) for (String part : e.attr("aria-label").split("(?<=[.!?]) (?=[\\p{L}\\d\"])")) if (!part.isBlank() && GERMAN.sentence().apply(part).isEmpty()) missing.add(part);
        }
        return missing;
    }

    @Test
    void whatIsPrintedOfTheExamplesIsSaidInGerman() {
        Catalogue catalogue = Catalogue.builtIn();
        SheetLibrary library = new SheetLibrary(catalogue);
        Set<String> missing = new TreeSet<>();
        for (String example : List.of("night-transfer", "copd-by-ferry")) {
            Transport t = TransportReader.read(example, Examples.text(example).orElseThrow(), catalogue).good().orElseThrow();
            Plan plan = PlanMaker.plan(t, library, 1, Shared::begin);
            missing.addAll(missing(CrewCard.of(plan, t.ventilator().called(), "1"), plan));
            missing.addAll(missing(ReportPage.of(plan, Optional.of(MapMaker.of(Start.of(t, Ventilated.of(t), library::strategy), t)), "1"), plan));
        }
        // add them to sentences_de.txt
        assertThat(missing).isEmpty();
    }

    @Test
    void theCommandsWriteGerman() throws IOException {
        Run run = Run.of("plan", "../examples/night-transfer.yaml", "--report", folder.toString(), "--language", "de");
        assertThat(run.exit()).as(run.err()).isZero();
        assertThat(Files.readString(folder.resolve("plan.html"))).contains("<html lang=\"de\">", "Wer spricht zuerst", "Frau von 58 Jahren, 170 cm, 74 kg; mäßige Pneumonie");
        try (PDDocument pdf = Loader.loadPDF(folder.resolve("card.pdf").toFile())) {
            assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("de");
            assertThat(pdf.getNumberOfPages()).isLessThanOrEqualTo(2);
            assertThat(new PDFTextStripper().getText(pdf).replaceAll("[\\s\u00A0]+", " ")).contains("Einstellen", "Was zuerst schiefgeht", "mäßige Pneumonie", "kein Medizinprodukt", "1 von 2")
                    .doesNotContain("not a medical device", "Local protocol", " bar, at least");
        }
    }

    @Test
    void theCardOfALongJourneyKeepsToTwoPages() throws IOException {
        for (String language : List.of("en", "de")) {
            Path card = folder.resolve(language + ".pdf");
            assertThat(Run.of("card", "../examples/copd-by-ferry.yaml", "--out", card.toString(), "--language", language).exit()).isZero();
            try (PDDocument pdf = Loader.loadPDF(card.toFile())) {
                assertThat(pdf.getNumberOfPages()).as(language).isLessThanOrEqualTo(2);
            }
        }
    }

    @Test
    void aLanguageThatWeLackIsRefusedInALine() {
        for (String command : List.of("plan", "card")) {
            Run run = Run.of(command, "../examples/night-transfer.yaml", "--language", "fr");
            assertThat(run.exit()).isEqualTo(2);
            assertThat(run.err()).contains("--language \"fr\" is not known; it is en or de.").hasLineCount(1);
        }
    }
}
