package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leeway.app.command.SheetLibrary;
import leeway.app.rehearse.Shared;
import leeway.app.report.Examples;
import leeway.app.report.MapPicture;
import leeway.app.report.PlanText;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.Test;

/** What core says on the journey and rehearsal pages is said in German too. */
class SentencesTest {
    private static final Words GERMAN = Words.in("de");
    private static final Pattern FIGURE = Pattern.compile("[^A-Za-z]*(\\d+ h )?[−\\d.:/,–]*[ ]?(min|L|bar|Wh|mL|s|%|/min|L/min|mmHg|cmH2O|J/min|J/L|mL/kg|kPa|h)?");
    private static final Pattern LABEL = Pattern.compile("<text[^>]*>([^<]+)</text>");

    @Test
    void whatTheExamplesAndLessUsualFilesSayIsSaidInGerman() throws IOException {
        Catalogue catalogue = Catalogue.builtIn();
        SheetLibrary library = new SheetLibrary(catalogue);
        Set<String> missing = new TreeSet<>();
        Map<String, String> files = new LinkedHashMap<>();
        Examples.names().forEach(e -> files.put(e, Examples.text(e).orElseThrow()));
        for (String odd : List.of("odd-turbine.yaml", "odd-pneumatic.yaml", "odd-waiting.yaml")) {
            try (InputStream in = SentencesTest.class.getResourceAsStream(odd)) {
                files.put(odd, new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        for (String name : files.keySet()) {
            Plan p = PlanMaker.plan(TransportReader.read(name, files.get(name), catalogue).good().orElseThrow(), library, 1, Shared::begin);
            for (List<String> said : List.of(p.verdict().reasons(), p.verdict().remarks(), p.assumed(), p.cautions(), p.turnaround(), List.of(p.patient().summary()),
                    p.suggested().because().stream().map(b -> b.why()).toList(), p.rehearsals().stream().map(r -> r.why()).toList(),
                    p.supply().oxygen().changeovers().stream().map(PlanText::changeover).toList(), new AnswerView(p).sure(), new AnswerView(p).home(),
                    new AnswerView(p).savings().stream().map(r -> r.get(0)).toList(), new AnswerView(p).losses().stream().flatMap(List::stream).toList(),
                    new AnswerView(p).alarms().stream().flatMap(List::stream).toList(), new AnswerView(p).expected().stream().flatMap(List::stream).toList(), labels(p),
                    new AnswerView(p).wall().stream().map(AnswerView.WallView::of).toList())) {
                for (String sentence : said) if (GERMAN.tongue(sentence) != null && !FIGURE.matcher(sentence).matches()) missing.add(sentence);
            }
        }
        // add them to sentences_de.txt (words_de.properties for a fault), with {1} where figures and names stand
        assertThat(missing).isEmpty();
        library.faults().forEach(f -> {
            if (GERMAN.name("fault", f.name()).equals(f.name())) missing.add("fault." + f.name());
            Stream.concat(Stream.of(f.firstSign()), f.steps().stream()).forEach(s -> {
                if (GERMAN.tongue(s) != null) missing.add(s);
            });
        });
        assertThat(missing).isEmpty();
    }

    /** What the pictures of a plan have written beside figures and names of the file. */
    private static List<String> labels(Plan p) {
        AnswerView a = new AnswerView(p);
        List<String> own = Stream.of(p.legs().stream().map(l -> l.leg()), p.supply().oxygen().stores().stream().map(s -> s.name()), p.supply().power().stream().flatMap(w -> w.stores().stream()).map(s -> s.name()))
                .flatMap(names -> names).toList();
        return Stream.of(a.journey("wide"), a.journey("narrow"), a.speaks("").speaks("wide"), a.breath()).flatMap(svg -> LABEL.matcher(svg).results().map(m -> m.group(1)))
                .map(t -> t.replace("&amp;", "&")).filter(t -> own.stream().noneMatch(name -> t.startsWith(name) || t.endsWith("…") && name.startsWith(t.substring(0, t.length() - 1)))).toList();
    }

    /** No example has a blood gas that cannot be right; what would be said of one has its German all the same. */
    @Test
    void whyABloodGasWasNotUsedIsSaidInGerman() {
        List<String> whys = List.of("a test lung has no blood", "pH 6.60 with a PaCO2 of 200 mmHg would be a base excess of -22 mmol/L",
                "a PaO2 of 300 mmHg is more than the 100 mmHg that 21 % oxygen leaves in the alveoli at a PaCO2 of 40 mmHg", "a PaCO2 of 200 mmHg leaves no oxygen in the alveoli at 21 %", "the PaO2 of 30 mmHg would need a shunt of 80 %, far from this illness",
                "a PaCO2 of 20 mmHg at 2.0 L/min would need hardly any metabolism or dead space", "a PaCO2 of 90 mmHg at 20.0 L/min would need a dead space or a metabolism far beyond this illness",
                "lungs and heart that give this gas could not meet the body's need for oxygen", "no shunt explains a PaO2 of 30 mmHg here; the nearest is 41 mmHg");
        for (String why : whys) {
            assertThat(GERMAN.tongue("The blood gas cannot be right and was not used: " + why + ".")).as(why).isNull();
            assertThat(GERMAN.tongue("the blood gas cannot be right and was not used: " + why)).as(why).isNull();
            assertThat(GERMAN.tongue(why)).as(why).isNull();
        }
    }

    @Test
    void theMapIsLabelledInGerman() {
        Catalogue catalogue = Catalogue.builtIn();
        SheetAnswers answers = new SheetAnswers(catalogue, 1);
        Set<String> missing = new TreeSet<>();
        for (String example : List.of("night-transfer", "mode-support")) {
            var map = answers.map(Examples.text(example).orElseThrow(), Hands.ALONE).good().orElseThrow().map().orElseThrow();
            LABEL.matcher(MapPicture.of(map, "wide", 720)).results().map(m -> m.group(1)).filter(t -> GERMAN.tongue(t) != null && !FIGURE.matcher(t).matches()).forEach(missing::add);
            if (GERMAN.tongue(MapPicture.says(map)) != null) missing.add(MapPicture.says(map));
            map.held().stream().filter(t -> GERMAN.tongue(t) != null).forEach(missing::add);
        }
        assertThat(missing).isEmpty();
    }

    @Test
    void sheetsHaveAGermanName() {
        Catalogue catalogue = Catalogue.builtIn();
        Set<String> missing = new TreeSet<>();
        for (String kind : List.of("illness", "airway", "circuit", "filter", "ventilator", "monitor", "battery", "strategy", "noise", "kit")) {
            for (String name : catalogue.names(kind)) if (GERMAN.name("value", name).equals(name)) missing.add("value." + name);
        }
        // add them to words_de.properties
        assertThat(missing).isEmpty();
    }

    @Test
    void germanLeavesNoGapOut() throws IOException {
        Pattern gap = Pattern.compile("\\{(\\d)[*#~]?}");
        String english = "";
        Set<String> wrong = new TreeSet<>();
        for (String line : Files.readAllLines(Path.of("src/main/resources/leeway/web/sentences_de.txt"), StandardCharsets.UTF_8)) {
            if (line.isBlank() || line.startsWith("#")) continue;
            if (!line.startsWith("  ")) {
                english = line;
                continue;
            }
            if (!gaps(gap, english).equals(gaps(gap, line))) wrong.add(english);
        }
        assertThat(wrong).isEmpty();
    }

    private static Set<String> gaps(Pattern gap, String text) {
        Set<String> out = new TreeSet<>();
        Matcher m = gap.matcher(text);
        while (m.find()) out.add(m.group(1));
        return out;
    }

    @Test
    void figuresAndNamesOfTheFileStayAsTheyStand() {
        assertThat(GERMAN.tell("Change over from big & old to {1} about 12 min from departure.")).isEqualTo("Wechsel von big & old auf {1} etwa 12 min nach der Abfahrt.");
        assertThat(GERMAN.tell("3 of 22 faults that can harm are uncovered: audio paused (silent), fever and shivering (too late) and 1 more."))
                .isEqualTo("3 von 22 Störungen, die schaden können, sind nicht abgedeckt: Ton pausiert (stumm), Fieber und Zittern (zu spät) und 1 weitere.");
        assertThat(GERMAN.tell("Nobody said this yet.")).isEqualTo("Nobody said this yet.");
        assertThat(GERMAN.tongue("Nobody said this yet.")).isEqualTo("en");
    }

    @Test
    void picturesAreLabelledInGerman() {
        assertThat(GERMAN.picture("<svg aria-label=\"saturation\"><text x=\"1\">tube bitten</text><text>a &amp; b</text></svg>"))
                .isEqualTo("<svg aria-label=\"Sättigung\"><text x=\"1\">Biss auf den Tubus</text><text>a &amp; b</text></svg>");
        assertThat(Words.in("en").picture("<text>tube bitten</text>")).isEqualTo("<text>tube bitten</text>");
    }

    @Test
    void aNameOfTheFileStaysInAPictureAlsoWhereItIsAWordOfOurs() {
        assertThat(GERMAN.picture("<svg><text>ferry</text></svg>")).contains("Fähre");
        Catalogue catalogue = Catalogue.builtIn();
        Plan plan = PlanMaker.plan(TransportReader.read("f", Examples.text("copd-by-ferry").orElseThrow(), catalogue).good().orElseThrow(), new SheetLibrary(catalogue), 1, Shared::begin);
        assertThat(GERMAN.picture(new AnswerView(plan).journey("wide"), plan)).contains(">ferry<").doesNotContain("Fähre");
        assertThat(GERMAN.spoken().keepingNamesOf(plan).tell("ferry")).isEqualTo("ferry");
    }

    @Test
    void aNameOfTheFileIsNoFigureAndStaysAsItIsWritten() {
        Words german = Words.in("de");
        assertThat(german.picture("<svg><text>road to the strip</text><text>change over at 156 bar</text></svg>"))
                .contains(">road to the strip<", ">Wechsel bei 156 bar<");
        assertThat(german.tell("25 to 27")).isEqualTo("25 bis 27");
        assertThat(german.tell("0.6 L/min to 12 L/min")).isEqualTo("0.6 L/min bis 12 L/min");
        assertThat(german.tell("none in 10,000")).isEqualTo("in keinem von 10 000");
    }

    /** A line that is little more than gaps once took "Own mask first, then …" with all that followed for two names of stores. */
    @Test
    void aLineOfGapsEndsWhereTheSentenceDoes() {
        assertThat(GERMAN.spoken().tell("Own mask first, then 100 % oxygen for the patient. Tell the pilot; descend.")).startsWith("Zuerst die eigene Maske, dann 100 % Sauerstoff").doesNotContain("Tell");
        assertThat(GERMAN.tell("vehicle, then portable")).isEqualTo("vehicle, dann portable");
        assertThat(GERMAN.tell("The chosen tidal volume 370 mL and rate 20 /min has a room of 0.09 of 1; saturation low comes first.")).contains("Tidalvolumen 370 mL und Frequenz 20 /min");
        assertThat(GERMAN.tell("FiO2 60 % and PEEP 8 cmH2O")).isEqualTo("FiO2 60 % und PEEP 8 cmH2O");
        assertThat(GERMAN.tell("tidal volume per body weight low")).isEqualTo("Tidalvolumen je Körpergewicht niedrig");
    }
}
