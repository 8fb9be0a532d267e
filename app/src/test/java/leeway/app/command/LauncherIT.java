package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person gets from {@code ./leeway}: exit codes, clean streams, any folder, every JDK on the machine. */
class LauncherIT {
    private static final Path ROOT = root();

    @BeforeAll static void theProgramIsPackaged() { assertThat(ROOT.resolve("app/target/leeway.jar")).exists(); }

    private record Said(int exit, String out, String err) { }

    private static Said leeway(Path in, Path javaHome, String... args) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(ROOT.resolve("leeway").toString()));
        line.addAll(List.of(args));
        Path out = Files.createTempFile("leeway", ".out");
        Path err = Files.createTempFile("leeway", ".err");
        ProcessBuilder builder = new ProcessBuilder(line).directory(in.toFile()).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().put("LEEWAY_NO_BUILD", "1");
        if (javaHome != null) builder.environment().put("JAVA_HOME", javaHome.toString());
        Process process = builder.start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("%s ends", line).isTrue();
        Said said = new Said(process.exitValue(), Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
        Files.delete(out);
        Files.delete(err);
        return said;
    }

    @Test void exitCodesReachTheShell(@TempDir Path anywhere) throws Exception {
        assertThat(leeway(anywhere, null, "--version").exit()).isZero();
        Said unknown = leeway(anywhere, null, "plam");
        assertThat(unknown.exit()).isEqualTo(2);
        assertThat(unknown.out()).isEmpty();
        assertThat(unknown.err()).startsWith("leeway: there is no command \"plam\".").hasLineCount(1);
    }

    @Test void argumentsWithBlanksAndMinusSignsArriveWhole(@TempDir Path anywhere) throws Exception {
        assertThat(leeway(anywhere, null, "no such command; $(echo oops)").err()).contains("\"no such command; $(echo oops)\"");
    }

    @Test void theLauncherMayBeCalledThroughALink(@TempDir Path anywhere) throws Exception {
        Path link = Files.createSymbolicLink(anywhere.resolve("leeway-link"), ROOT.resolve("leeway"));
        ProcessBuilder builder = new ProcessBuilder(link.toString(), "--version").redirectErrorStream(true);
        builder.environment().put("LEEWAY_NO_BUILD", "1");
        Process process = builder.start();
        assertThat(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)).isEqualTo("leeway " + Version.TEXT + "\n");
        assertThat(process.waitFor()).isZero();
    }

    /** What {@code cat} sends is read to its end, and what is answered goes on through a pipe, whole and alone. */
    @Test void aFilePipedThroughAShellIsPlannedAndChecked(@TempDir Path anywhere) throws Exception {
        String night = ROOT.resolve("examples/night-transfer.yaml").toString();
        Path planned = anywhere.resolve("plan.json");
        String line = "cat \"$1\" | \"$2\" plan - --format json | cat > \"$3\"; cat \"$1\" | \"$2\" check -";
        ProcessBuilder builder = new ProcessBuilder("sh", "-c", line, "sh", night, ROOT.resolve("leeway").toString(), planned.toString()).directory(anywhere.toFile()).redirectErrorStream(true);
        builder.environment().put("LEEWAY_NO_BUILD", "1");
        Process process = builder.start();
        assertThat(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)).isEqualTo("standard input: nothing wrong with this transport\n");
        assertThat(process.waitFor()).isZero();
        assertThat(Files.readString(planned, StandardCharsets.UTF_8)).startsWith("{").contains("\"verdict\"").endsWith("}\n");
    }

    private static Path root() {
        Path here = Path.of("").toAbsolutePath();
        while (here != null && !Files.isRegularFile(here.resolve("LICENSE"))) here = here.getParent();
        return here;
    }

    /** Homes of the JDKs of other major versions than the one that runs this test. */
    private static List<Path> otherJdks() throws IOException {
        Path all = Path.of("/usr/lib/jvm");
        if (!Files.isDirectory(all)) return List.of();
        try (Stream<Path> homes = Files.list(all)) {
            return homes.filter(h -> !Files.isSymbolicLink(h) && Files.isExecutable(h.resolve("bin/java")) && Files.isRegularFile(h.resolve("release")))
                    .filter(h -> !version(h).equals(String.valueOf(Runtime.version().feature()))).sorted().toList();
        }
    }

    private static String version(Path home) {
        try (Stream<String> lines = Files.lines(home.resolve("release"))) {
            return lines.filter(l -> l.startsWith("JAVA_VERSION=")).map(l -> l.replaceAll("JAVA_VERSION=\"?([0-9]+).*", "$1")).findFirst().orElse("");
        } catch (IOException e) {
            return "";
        }
    }

    @Test void everyJdkOnTheMachineSaysTheSame(@TempDir Path anywhere) throws Exception {
        List<Path> others = otherJdks();
        assumeTrue(!others.isEmpty(), "only one JDK is on this machine");
        List<List<String>> lines = new ArrayList<>();
        lines.add(List.of("--help"));
        for (String example : List.of("night-transfer", "infant-by-road", "one-small-cylinder")) {
            lines.add(List.of("plan", ROOT.resolve("examples/" + example + ".yaml").toString(), "--format", "json"));
        }
        for (List<String> args : lines) {
            Said here = leeway(anywhere, null, args.toArray(String[]::new));
            for (Path jdk : others) assertThat(leeway(anywhere, jdk, args.toArray(String[]::new))).as("%s on %s", args, jdk).isEqualTo(here);
        }
    }
}
