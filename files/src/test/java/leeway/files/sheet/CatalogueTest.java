package leeway.files.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import leeway.core.kit.Airway;
import leeway.core.kit.Circuit;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Place;
import leeway.files.yaml.Read;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CatalogueTest {
    @TempDir Path folder;

    record Name(SheetKind<?> kind, String name) {
        @Override public String toString() { return kind.word() + " " + name; }
    }

    static Stream<Name> everySheet() {
        Catalogue all = Catalogue.builtIn();
        return Kinds.ALL.stream().flatMap(k -> all.names(k.word()).stream().map(n -> new Name(k, n)));
    }

    @ParameterizedTest @MethodSource("everySheet")
    void everySheetThatComesAlongIsReadAndCalledAsItsFile(Name n) {
        Complaints c = new Complaints();
        var sheet = Catalogue.builtIn().sheet(n.kind(), n.name(), Place.start("test"), c);
        assertThat(c.all()).isEmpty();
        assertThat(sheet.orElseThrow().section().text(n.kind().word())).contains(n.name());
        assertThat(Catalogue.builtIn().read(n.kind(), sheet.get().section().node()).problems()).as("proved").isEmpty();
        assertThat(Catalogue.rows(sheet.get())).allSatisfy(r -> assertThat(r.source()).as(r.key()).isNotBlank());
    }

    private Path write(String file, String text) throws IOException { return Files.writeString(folder.resolve(file), text); }

    private List<String> complaints(SheetKind<?> kind, String name) {
        Catalogue own = Catalogue.of(List.of(folder));
        Complaints c = new Complaints();
        c.addAll(own.problems());
        own.sheet(kind, name, new Place("t.yaml", 3, 9), c);
        List<String> lines = new ArrayList<>();
        for (Complaint x : c.all()) lines.add(x.line().replace(folder.toString() + "/", ""));
        return lines;
    }

    @Test void aUsersSheetWinsAndMayContinueOneThatComesAlong() throws IOException {
        write("any.yaml", "circuit: ours\nlike: single limb adult\nsource: measured in our workshop\ncompliance: 1.5 mL/cmH2O\n");
        write("two.yml", "circuit: single limb adult\nsource: invented\nlimbs: 1\ncompliance: 2 mL/cmH2O\ninspiratory resistance: 1 cmH2O.s/L\n"
                + "expiratory resistance: 1 cmH2O.s/L\ndead space: 11 mL\nvolume: 500 mL\n");
        Catalogue own = Catalogue.of(List.of(folder));
        assertThat(own.problems()).isEmpty();
        Circuit ours = own.read(Kinds.CIRCUIT, "ours").good().orElseThrow();
        assertThat(ours.complianceMlPerCmH2O()).isEqualTo(1.5);
        assertThat(ours.deadSpaceMl()).isEqualTo(11);
        assertThat(ours.source()).isEqualTo("measured in our workshop");
        assertThat(own.isOwn("circuit", "single limb adult")).isTrue();
        assertThat(own.names("circuit")).contains("ours", "two limb adult");
        var sheet = own.sheet(Kinds.CIRCUIT, "ours", Place.start(""), new Complaints()).orElseThrow();
        assertThat(Catalogue.rows(sheet)).filteredOn(r -> r.key().equals("dead space")).singleElement().extracting(Catalogue.Row::source).isEqualTo("invented");
    }

    @Test void aSheetThatRefersToItselfIsRefused() throws IOException {
        write("a.yaml", "circuit: a\nlike: b\nsource: invented\n");
        write("b.yaml", "circuit: b\nsource: invented\nlike: a\n");
        write("c.yaml", "circuit: c\nlike: c\nsource: invented\n");
        assertThat(complaints(Kinds.CIRCUIT, "a")).containsExactly("b.yaml:3:7: this sheet refers to itself: \"a\" is like \"b\" is like \"a\". Name a sheet that stands on its own.");
        assertThat(complaints(Kinds.CIRCUIT, "c")).containsExactly("c.yaml:2:7: this sheet refers to itself: \"c\" is like \"c\". Name a sheet that stands on its own.");
    }

    @Test void whatIsWrongWithAUsersSheetIsSaidInTheSheet() throws IOException {
        write("a.yaml", "circuit: a\nsource: invented\nlimbs: 3\ncompliance: 12\ndead spce: 10 mL\nvolume: 1 m\n");
        assertThat(complaints(Kinds.CIRCUIT, "a")).containsExactly(
                "a.yaml:1:1: the sheet has no \"inspiratory resistance\". It is a resistance, for example \"2 cmH2O.s/L\".",
                "a.yaml:1:1: the sheet has no \"expiratory resistance\". It is a resistance, for example \"3 cmH2O.s/L\".",
                "a.yaml:3:8: \"3\" is impossible: limbs lies between 1 and 2.",
                "a.yaml:4:13: \"12\" has no unit. A compliance is in mL/cmH2O, mL/mbar or L/kPa, for example \"1.2 mL/cmH2O\".",
                "a.yaml:5:1: the sheet has no key \"dead spce\". Did you mean \"dead space\"?",
                "a.yaml:6:9: \"1 m\" is not a volume. A volume is in mL or L, for example \"500 mL\".");
    }

    @Test void unreadableFilesAndDoublesInAFolderAreErrors() throws IOException {
        write("a.yaml", "circuit: x\n");
        write("b.yaml", "circuit: x\n");
        write("c.yaml", "a: [\n");
        write("d.yaml", "circiut: x\n");
        assertThat(complaints(Kinds.AIRWAY, "tracheal tube 7.5 mm")).containsExactly(
                "b.yaml:1:1: the circuit \"x\" is described twice. Also in a.yaml: keep one of them.".replace("a.yaml", "a.yaml"),
                "c.yaml:2:1: a \"]\" or a comma is missing. The bracket was opened at 1:4.",
                "d.yaml:1:1: \"circiut\" is no kind of sheet. Did you mean \"circuit\"?");
        assertThat(Catalogue.of(List.of(folder.resolve("none"))).problems()).singleElement().extracting(Complaint::what).isEqualTo("there is no such folder");
    }

    @Test void aNameThatIsNotThereIsAComplaintWhereItWasAskedFor() {
        assertThat(complaints(Kinds.AIRWAY, "tracheal tube 7.4 mm")).singleElement().asString()
                .startsWith("t.yaml:3:9: there is no airway \"tracheal tube 7.4 mm\". Did you mean \"tracheal tube ");
        assertThat(complaints(Kinds.AIRWAY, "../../x")).singleElement().asString().startsWith("t.yaml:3:9: there is no airway \"../../x\". \"leeway catalogue airway\"");
    }

    @Test void valuesOfTheTubesFollowFromTheirGeometry() {
        Catalogue all = Catalogue.builtIn();
        for (String name : all.names("airway")) {
            Airway a = ((Read.Good<Airway>) all.read(Kinds.AIRWAY, name)).value();
            if (a.type() != Airway.Type.TRACHEAL_TUBE && a.type() != Airway.Type.TRACHEOSTOMY) continue;
            double d = a.innerDiameterMm() / 10;
            assertThat(a.deadSpaceMl()).as(name).isCloseTo(Math.PI * d * d / 4 * a.lengthCm(), org.assertj.core.api.Assertions.within(0.05));
            assertThat(name).contains("%.1f mm".formatted(a.innerDiameterMm()));
        }
    }
}
