package leeway;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The house holds itself: core only computes, rooms have no cycles, every room says what it is. */
class HouseTest {
    private static final String CORE = "leeway.core..";
    private static final JavaClasses HOUSE = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("leeway");

    @Test
    void coreOnlyComputes() {
        noClasses().that().resideInAPackage(CORE).should().dependOnClassesThat().resideOutsideOfPackages(
                CORE, "java.lang", "java.lang.invoke", "java.lang.runtime", "java.util", "java.util.function", "java.util.regex", "java.util.stream").check(HOUSE);
    }

    @Test
    void coreHasNoClockAndNoChance() {
        noClasses().that().resideInAPackage(CORE).should().dependOnClassesThat().belongToAnyOf(System.class, Thread.class, Random.class)
                .orShould().callMethod(Math.class, "random").orShould().callConstructor(SplittableRandom.class).check(HOUSE);
    }

    @Test
    void roomsHaveNoCycles() {
        slices().matching("leeway.core.(*)..").should().beFreeOfCycles().allowEmptyShould(true).check(HOUSE);
    }

    /** The table of rooms in docs/architecture.md, each with the rooms that it leans on. */
    @Test
    void theArchitectureIsDrawnAsItIs() throws IOException {
        Map<String, Set<String>> built = new TreeMap<>(), drawn = new TreeMap<>();
        for (JavaClass c : HOUSE) {
            String room = room(c);
            if (room.isEmpty()) continue;
            Set<String> leans = built.computeIfAbsent(room, r -> new TreeSet<>());
            for (Dependency d : c.getDirectDependenciesFromSelf()) {
                String other = room(d.getTargetClass());
                if (!other.isEmpty() && !other.equals(room)) leans.add(other);
            }
        }
        Matcher row = Pattern.compile("(?m)^\\| `(\\w+)` \\|[^|]*\\|([^|]*)\\|$").matcher(Files.readString(Approved.root().resolve("docs/architecture.md")));
        while (row.find()) drawn.put(row.group(1), new TreeSet<>(row.group(2).isBlank() ? Set.of() : Set.of(row.group(2).strip().split(", "))));
        assertThat(drawn).isEqualTo(built);
    }

    private static String room(JavaClass c) {
        Matcher m = Pattern.compile("leeway\\.core\\.(\\w+)").matcher(c.getPackageName());
        return m.lookingAt() && !c.getSimpleName().equals("package-info") ? m.group(1) : "";
    }

    @Test
    void everyRoomSaysWhatItIs() throws IOException {
        List<String> silent = new ArrayList<>();
        for (String module : List.of("core", "files", "app", "speed")) {
            Path sources = Path.of("..", module, "src", "main", "java");
            if (!Files.isDirectory(sources)) continue;
            try (var tree = Files.walk(sources)) {
                for (Path room : (Iterable<Path>) tree.filter(Files::isDirectory)::iterator) {
                    try (var inside = Files.list(room)) {
                        boolean hasJava = inside.anyMatch(f -> f.getFileName().toString().endsWith(".java"));
                        if (hasJava && !Files.exists(room.resolve("package-info.java"))) silent.add(room.toString());
                    }
                }
            }
        }
        assertThat(silent).as("packages without package-info.java").isEmpty();
    }
}
