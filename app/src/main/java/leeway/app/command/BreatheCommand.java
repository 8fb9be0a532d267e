package leeway.app.command;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.report.BreatheJson;
import leeway.app.report.BreatheText;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.LungRow;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.edf.EdfWriter;
import leeway.files.sheet.Catalogue;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway breathe FILE}: the virtual patient along the journey, a row a breath or sampled waves. */
@picocli.CommandLine.Command(sortOptions = false,
        description = {"Runs the virtual patient along the journey of a transport file, with its events", "and what-ifs: a row a breath (every 2 s without one), or sampled waves.", "",
            "Example:  leeway breathe examples/night-transfer.yaml --for \"5 min\""},
        customSynopsis = "leeway breathe FILE [--for TIME] [--as breaths|waves] [--rate \"100 /s\"] [--gases mmHg|kPa] [--out F.csv|F.edf] [--format text|json]")
final class BreatheCommand extends Command {
    /** Longest run: two days. */
    private static final double LONGEST_S = 48 * 3600;
    private static final double LEAST_RATE = 1, MOST_RATE = 1000, USUAL_RATE = 100;

    /** What is written. */
    enum As { breaths, waves }

    /** Unit of gas tensions in the text. */
    enum Gases { mmHg, kPa }

    @Parameters(paramLabel = "FILE", description = "a transport file; - reads one from standard input")
    Path file;

    @Option(names = "--for", paramLabel = "TIME", description = "how long, from departure, \"20 min\"; the journey at its medians unless you say")
    String lasting;

    @Option(names = "--as", paramLabel = "breaths|waves", description = "a row a breath, or samples; breaths unless you say")
    As as = As.breaths;

    @Option(names = "--rate", paramLabel = "N /s", description = "samples a second of the waves; \"100 /s\" unless you say")
    String rate;

    @Option(names = "--gases", paramLabel = "mmHg|kPa", description = "unit of gas tensions in the text; mmHg unless you say")
    Gases gases = Gases.mmHg;

    @Option(names = "--out", paramLabel = "F.csv|F.edf", description = "write into this file: CSV, or for waves EDF+")
    Path out;

    @Override public Integer call() throws IOException {
        OptionalDouble forS = lasting == null ? OptionalDouble.empty() : value(lasting, Kind.TIME);
        if (lasting != null && (forS.isEmpty() || forS.getAsDouble() <= 0 || forS.getAsDouble() > LONGEST_S)) {
            return refuse("--for \"%s\" is not a time between 0 and 48 h. Write for example --for \"20 min\".".formatted(Nearest.shortened(lasting)));
        }
        OptionalDouble perSecond = rate == null ? OptionalDouble.of(USUAL_RATE) : value(rate, Kind.RATE).isPresent() ? OptionalDouble.of(value(rate, Kind.RATE).getAsDouble() / 60) : perSecond(rate);
        if (perSecond.isEmpty() || perSecond.getAsDouble() < LEAST_RATE || perSecond.getAsDouble() > MOST_RATE) {
            return refuse("--rate \"%s\" is not a rate between 1 /s and 1000 /s. Write for example --rate \"100 /s\".".formatted(Nearest.shortened(rate)));
        }
        String name = out == null ? "" : out.getFileName().toString().toLowerCase(Locale.ROOT);
        if (out != null && !name.endsWith(".csv") && !name.endsWith(".edf")) return refuse("--out \"%s\" ends in neither .csv nor .edf.".formatted(Nearest.shortened(out.toString())));
        if (name.endsWith(".edf") && as == As.breaths) return refuse("rows of breaths are written as CSV; EDF+ holds waves. Say --as waves, or --out F.csv.");
        if (as == As.waves && json()) return refuse("waves are written as CSV or EDF+, not as JSON; leave --format json out.");
        double samples = perSecond.getAsDouble();
        if (name.endsWith(".edf") && Math.abs(samples - Math.rint(samples)) > 1e-9) return refuse("EDF+ wants a whole number of samples a second; --rate \"%s\" is none.".formatted(Nearest.shortened(rate)));
        Catalogue catalogue = Catalogue.of(sheets);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file);
        if (transport.isEmpty()) return BAD_INPUT;
        Transport t = transport.get();
        Breathing breathing;
        try {
            SheetLibrary library = new SheetLibrary(catalogue);
            Settings settings = Start.of(t, Ventilated.of(t), library::strategy).settings();
            breathing = Breathing.of(t, settings, library.noises(), library.faults());
        } catch (SheetLibrary.Bad e) {
            Inputs.complain(this, Inputs.called(file), e.complaints());
            return BAD_INPUT;
        }
        double untilS = forS.orElse(breathing.journeyS());
        if (out != null) {
            boolean written;
            try (Progress working = Progress.of(terminal, "breathing")) {
                written = write(breathing, untilS, samples, name.endsWith(".edf"));
            }
            if (!written) return BAD_INPUT;
            terminal.err().println("Written to " + out + ".");
            if (!json()) return DONE;
        }
        if (json()) {
            BreatheJson.write(breathing, t.title(), untilS, Version.TEXT, seed, terminal.out());
        } else if (as == As.waves) {
            PrintStream to = terminal.out();
            Writer writer = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8), 1 << 16);
            csvWaves(breathing, untilS, samples, writer);
            writer.flush();
        } else {
            BreatheText.write(breathing, t.title(), untilS, gases == Gases.kPa, terminal.out());
        }
        return DONE;
    }

    /** The file, whole or not at all. */
    private boolean write(Breathing breathing, double untilS, double perSecond, boolean edf) throws IOException {
        Path folder = out.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            terminal.err().println("leeway: there is no folder " + folder + " to write into.");
            return false;
        }
        if (Files.isDirectory(out)) {
            terminal.err().println("leeway: " + out + " is a folder; --out wants a file.");
            return false;
        }
        Path part;
        try {
            part = Files.createTempFile(folder, ".breathe", ".part");
        } catch (java.nio.file.AccessDeniedException e) {
            terminal.err().println("leeway: nothing can be written into " + folder + "; look at its permissions.");
            return false;
        }
        try {
            if (edf) {
                List<EdfWriter.Mark> marks = breathing.marks(untilS, false).stream().map(m -> new EdfWriter.Mark(m.atS(), m.words())).toList();
                EdfWriter.write(part, "leeway virtual patient", perSecond, signals(breathing), marks, sink -> breathing.waves(untilS, perSecond, new Sampled(breathing.lungs().isPresent()) {
                    @Override void sample(double tS, double[] values) { sink.sample(values); }
                }));
            } else {
                try (Writer writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
                    if (as == As.waves) csvWaves(breathing, untilS, perSecond, writer); else BreatheText.csv(breathing, untilS, new PrintWriter(writer));
                }
            }
            Files.move(part, out, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
        return true;
    }

    /** The waves of EDF+: those of the breath, and of each lung where there are two. */
    private static List<EdfWriter.Signal> signals(Breathing breathing) {
        List<EdfWriter.Signal> signals = new ArrayList<>(EdfWriter.BREATH);
        breathing.lungs().ifPresent(n -> {
            for (String part : List.of(n.first(), n.second())) signals.add(new EdfWriter.Signal("Vol " + part, "mL", 8000));
            for (String part : List.of(n.first(), n.second())) signals.add(new EdfWriter.Signal("Palv " + part, "cmH2O", 200));
        });
        return signals;
    }

    /** Samples as one row of numbers: pressure, flow, volume, muscles; of two lungs then the volume of each and the alveolar pressure of each. */
    private abstract static class Sampled implements Breathing.Samples {
        /** What a decimal of each is worth: hundredths, tenths of a millilitre. */
        static final int[] TENTHS = {100, 100, 10, 100, 10, 10, 100, 100};
        private final double[] values;

        Sampled(boolean two) { values = new double[two ? 8 : 4]; }

        abstract void sample(double tS, double[] values);

        @Override public void lungs(double firstMl, double secondMl, double firstCmH2O, double secondCmH2O) {
            values[4] = firstMl;
            values[5] = secondMl;
            values[6] = firstCmH2O;
            values[7] = secondCmH2O;
        }

        @Override public void at(double tS, double pressureCmH2O, double flowLPerMin, double volumeMl, double muscleCmH2O) {
            values[0] = pressureCmH2O;
            values[1] = flowLPerMin;
            values[2] = volumeMl;
            values[3] = muscleCmH2O;
            sample(tS, values);
        }
    }

    private static void csvWaves(Breathing breathing, double untilS, double perSecond, Writer to) {
        try {
            Optional<LungRow.Names> two = breathing.lungs();
            to.write("time [s],airway pressure [cmH2O],flow [L/min],volume [mL],muscle pressure [cmH2O],"
                    + two.map(n -> "%1$s volume [mL],%2$s volume [mL],%1$s alveolar pressure [cmH2O],%2$s alveolar pressure [cmH2O],".formatted(n.first(), n.second())).orElse("") + "mark\n");
            List<Breathing.Mark> marks = breathing.marks(untilS, true);
            StringBuilder line = new StringBuilder(64);
            breathing.waves(untilS, perSecond, new Sampled(two.isPresent()) {
                private int next;

                @Override void sample(double tS, double[] values) {
                    line.setLength(0);
                    decimals(line, tS, 1000).append(',');
                    for (int i = 0; i < values.length; i++) decimals(line, values[i], TENTHS[i]).append(',');
                    String words = "";
                    while (next < marks.size() && marks.get(next).atS() <= tS + 1e-9) words = marks.get(next++).words();
                    line.append(words.contains(",") ? '"' + words + '"' : words).append('\n');
                    try {
                        to.append(line);
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A decimal of as many places as {@code tenth} has zeros; never −0. */
    private static StringBuilder decimals(StringBuilder to, double value, int tenth) {
        long whole = Math.round(value * tenth);
        if (whole < 0) to.append('-');
        whole = Math.abs(whole);
        to.append(whole / tenth).append('.');
        long rest = whole % tenth;
        for (long t = tenth / 10; t > 1 && rest < t; t /= 10) to.append('0');
        return to.append(rest);
    }

    private static OptionalDouble value(String text, Kind kind) {
        Optional<Quantity> q = Quantity.parse(text.strip());
        return q.isEmpty() || !kind.accepted().contains(q.get().unit()) ? OptionalDouble.empty() : OptionalDouble.of(q.get().in(kind.internal()));
    }

    private static OptionalDouble perSecond(String text) {
        Optional<Quantity> q = Quantity.parse(text.strip());
        return q.isEmpty() || !q.get().dimension().equals(leeway.core.quantity.Dimension.RATE) ? OptionalDouble.empty() : OptionalDouble.of(q.get().si());
    }

    private int refuse(String message) {
        terminal.err().println("leeway: " + message);
        if (json()) UsageJson.write(terminal.out(), message, List.of());
        return BAD_INPUT;
    }
}
