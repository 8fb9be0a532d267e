package leeway.files.edf;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes a contiguous EDF+ file of records of one second, with the time-keeping annotations that EDF+ demands.
 * <p>Samples beyond the physical range are written as the range's end. The last second is filled with its last sample. The
 * patient is written as unknown: nothing of a person enters the file.
 */
public final class EdfWriter {
    private static final int DIGITAL_MAX = 32_767;
    /** Least bytes of the annotation signal of a record: room for "+172800\u0014\u0014\0". */
    private static final int LEAST_ANNOTATION_BYTES = 16;
    private static final String ANNOTATIONS = "EDF Annotations";
    private static final int COUNT_AT = 236;

    private EdfWriter() { }

    /** A signal: label, unit, and the range that its 16 bits span, symmetric about 0. */
    public record Signal(String label, String unit, double range) { }

    /** The four waves of a breath; 0.01 cmH2O and finer, as a span of 400 over 65,535 steps has it. */
    public static final List<Signal> BREATH = List.of(new Signal("Paw", "cmH2O", 200), new Signal("Flow", "L/min", 300), new Signal("Vol", "mL", 8000),
            new Signal("Pmus", "cmH2O", 200));

    /** An annotation: a moment, s from the start, and words in plain ASCII. */
    public record Mark(double atS, String words) { }

    /** Takes one sample of every signal, in their order. */
    @FunctionalInterface
    public interface Sink {
        void sample(double... values);
    }

    /** What fills the file. */
    @FunctionalInterface
    public interface Source {
        void into(Sink sink);
    }

    /** @param perSecond a whole number of samples a second, else refused */
    public static void write(Path file, String equipment, double perSecond, List<Signal> signals, Source source) throws IOException {
        write(file, equipment, perSecond, signals, List.of(), source);
    }

    /** @param marks in the order of their time */
    public static void write(Path file, String equipment, double perSecond, List<Signal> signals, List<Mark> marks, Source source) throws IOException {
        int rate = (int) Math.rint(perSecond);
        if (rate < 1 || Math.abs(rate - perSecond) > 1e-9) throw new IllegalArgumentException("%s samples a second is not a whole number".formatted(perSecond));
        Records records;
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
            Notes notes = new Notes(marks);
            out.write(header(equipment, rate, signals, notes.bytes));
            records = new Records(out, rate, signals, notes);
            source.into(records);
            records.end();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        try (RandomAccessFile again = new RandomAccessFile(file.toFile(), "rw")) {
            again.seek(COUNT_AT);
            again.write(field(Integer.toString(records.count), 8).getBytes(StandardCharsets.US_ASCII));
        }
    }

    private static byte[] header(String equipment, int rate, List<Signal> signals, int annotationBytes) {
        int all = signals.size() + 1;
        StringBuilder h = new StringBuilder(256 * (all + 1));
        h.append(field("0", 8)).append(field("X X X X", 80)).append(field("Startdate X X X " + plain(equipment), 80)).append("01.01.85").append("00.00.00")
                .append(field(Integer.toString(256 * (all + 1)), 8)).append(field("EDF+C", 44)).append(field("-1", 8)).append(field("1", 8)).append(field(Integer.toString(all), 4));
        for (Signal s : signals) h.append(field(s.label(), 16));
        h.append(field(ANNOTATIONS, 16));
        for (int i = 0; i < signals.size(); i++) h.append(field("computed", 80));
        h.append(field("", 80));
        for (Signal s : signals) h.append(field(s.unit(), 8));
        h.append(field("", 8));
        for (Signal s : signals) h.append(field(number(-s.range()), 8));
        h.append(field("-1", 8));
        for (Signal s : signals) h.append(field(number(s.range()), 8));
        h.append(field("1", 8));
        for (int i = 0; i < signals.size(); i++) h.append(field("-32767", 8));
        h.append(field("-32768", 8));
        for (int i = 0; i < all; i++) h.append(field("32767", 8));
        for (int i = 0; i < all; i++) h.append(field("", 80));
        for (int i = 0; i < signals.size(); i++) h.append(field(Integer.toString(rate), 8));
        h.append(field(Integer.toString(annotationBytes / 2), 8));
        for (int i = 0; i < all; i++) h.append(field("", 32));
        return h.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static String number(double value) { return String.format(Locale.ROOT, "%.0f", value); }

    /** Sub-fields of EDF+ are parted by spaces, so within one they become underscores; nothing but printable ASCII. */
    private static String plain(String text) { return text.replaceAll("[^!-~]+", "_"); }

    private static String field(String text, int width) {
        String cut = text.length() > width ? text.substring(0, width) : text;
        return cut + " ".repeat(width - cut.length());
    }

    /** The annotations, second by second; every record has as many bytes as the fullest needs. */
    private static final class Notes {
        private final Map<Integer, StringBuilder> bySecond = new HashMap<>();
        private final int bytes;

        Notes(List<Mark> marks) {
            int most = LEAST_ANNOTATION_BYTES;
            for (Mark m : marks) {
                StringBuilder text = bySecond.computeIfAbsent((int) Math.floor(Math.max(0, m.atS())), second -> new StringBuilder());
                text.append(String.format(Locale.ROOT, "+%.3f\u0014%s\u0014\0", Math.max(0, m.atS()), m.words().replaceAll("[^ -~]", "?")));
                most = Math.max(most, text.length() + LEAST_ANNOTATION_BYTES);
            }
            bytes = most + most % 2;
        }

        byte[] of(int second) {
            String time = "+" + second + "\u0014\u0014\0";
            return (time + bySecond.getOrDefault(second, new StringBuilder())).getBytes(StandardCharsets.US_ASCII);
        }
    }

    private static final class Records implements Sink {
        private final OutputStream out;
        private final int rate;
        private final List<Signal> signals;
        private final short[][] record;
        private final Notes notes;
        private int at;
        private int count;

        Records(OutputStream out, int rate, List<Signal> signals, Notes notes) {
            this.notes = notes;
            this.out = out;
            this.rate = rate;
            this.signals = signals;
            record = new short[signals.size()][rate];
        }

        @Override public void sample(double... values) {
            for (int s = 0; s < record.length; s++) {
                double digital = values[s] / signals.get(s).range() * DIGITAL_MAX;
                record[s][at] = (short) Math.max(-DIGITAL_MAX, Math.min(DIGITAL_MAX, Math.rint(digital)));
            }
            if (++at == rate) flush();
        }

        void end() {
            if (at == 0) return;
            for (short[] s : record) Arrays.fill(s, at, rate, s[at - 1]);
            flush();
        }

        private void flush() {
            byte[] bytes = new byte[2 * rate * record.length + notes.bytes];
            int b = 0;
            for (short[] s : record) {
                for (short v : s) {
                    bytes[b++] = (byte) v;
                    bytes[b++] = (byte) (v >> 8);
                }
            }
            byte[] time = notes.of(count);
            for (int i = 0; i < time.length; i++) bytes[b + i] = time[i];
            try {
                out.write(bytes);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            count++;
            at = 0;
        }
    }
}
