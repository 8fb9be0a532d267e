package leeway.app.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.PrettyPrinter;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.Optional;
import java.util.OptionalDouble;

/** One JSON document, written key by key in the order given; what is absent is left out. */
public final class Json implements AutoCloseable {
    private final JsonGenerator to;

    /** Starts a document that is one object; closing it ends the document and leaves the stream open. */
    public Json(OutputStream out) {
        try {
            to = new JsonFactory().createGenerator(new FilterOutputStream(out) {
                @Override public void write(byte[] b, int from, int length) throws IOException { out.write(b, from, length); }

                @Override public void close() throws IOException { flush(); }
            });
            to.setPrettyPrinter(new Lines());
            to.writeStartObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Something that writes. */
    public interface Body { void write(); }

    /** Something written for one element. */
    public interface Each<T> { void write(T element); }

    public void object(String key, Body body) {
        run(() -> to.writeObjectFieldStart(key));
        body.write();
        run(to::writeEndObject);
    }

    /** A list of objects. */
    public <T> void objects(String key, Collection<T> elements, Each<? super T> each) {
        run(() -> to.writeArrayFieldStart(key));
        for (T element : elements) {
            run(to::writeStartObject);
            each.write(element);
            run(to::writeEndObject);
        }
        run(to::writeEndArray);
    }

    public void texts(String key, Collection<String> texts) {
        run(() -> {
            to.writeArrayFieldStart(key);
            for (String t : texts) to.writeString(t);
            to.writeEndArray();
        });
    }

    /** A list of numbers, each rounded as the key says. */
    public void numbers(String key, double[] values) {
        run(() -> {
            to.writeArrayFieldStart(key);
            for (double v : values) to.writeNumber(Digits.json(key, v));
            to.writeEndArray();
        });
    }

    /** Rows of numbers; a value that is NaN in the record has no meaning there and becomes null. */
    public void rows(String key, String digitsLike, double[][] rows) {
        run(() -> {
            to.writeArrayFieldStart(key);
            for (double[] row : rows) {
                to.writeStartArray();
                for (double v : row) {
                    if (Double.isNaN(v)) to.writeNull(); else to.writeNumber(Digits.json(digitsLike, v));
                }
                to.writeEndArray();
            }
            to.writeEndArray();
        });
    }

    public void text(String key, String text) { run(() -> to.writeStringField(key, text)); }

    public void text(String key, Optional<String> text) { text.ifPresent(t -> text(key, t)); }

    public void flag(String key, boolean value) { run(() -> to.writeBooleanField(key, value)); }

    public void count(String key, long value) { run(() -> to.writeNumberField(key, value)); }

    public void number(String key, double value) {
        run(() -> {
            to.writeFieldName(key);
            to.writeNumber(Digits.json(key, value));
        });
    }

    /** A number that is rounded already: all its digits, without an exponent. */
    public void exact(String key, double value) {
        if (!Double.isFinite(value)) throw new IllegalStateException("the figure %s is %s".formatted(key, value));
        run(() -> {
            to.writeFieldName(key);
            to.writeNumber(value == 0 ? "0" : new java.math.BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString());
        });
    }

    public void number(String key, OptionalDouble value) { value.ifPresent(v -> number(key, v)); }

    @Override public void close() {
        run(() -> {
            to.writeEndObject();
            to.writeRaw('\n');
            to.close();
        });
    }

    private interface Io { void run() throws IOException; }

    private static void run(Io io) {
        try {
            io.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Two levels on lines of their own, what lies deeper on one line: a row is a line. */
    private static final class Lines implements PrettyPrinter {
        private static final int ON_LINES = 2;
        private int depth;

        @Override public void writeRootValueSeparator(JsonGenerator g) throws IOException { g.writeRaw('\n'); }

        @Override public void writeStartObject(JsonGenerator g) throws IOException {
            g.writeRaw('{');
            depth++;
        }

        @Override public void writeEndObject(JsonGenerator g, int entries) throws IOException { end(g, entries, '}'); }

        @Override public void writeObjectEntrySeparator(JsonGenerator g) throws IOException { next(g); }

        @Override public void writeObjectFieldValueSeparator(JsonGenerator g) throws IOException { g.writeRaw(": "); }

        @Override public void writeStartArray(JsonGenerator g) throws IOException {
            g.writeRaw('[');
            depth++;
        }

        @Override public void writeEndArray(JsonGenerator g, int entries) throws IOException { end(g, entries, ']'); }

        @Override public void writeArrayValueSeparator(JsonGenerator g) throws IOException { next(g); }

        @Override public void beforeArrayValues(JsonGenerator g) throws IOException { indent(g); }

        @Override public void beforeObjectEntries(JsonGenerator g) throws IOException { indent(g); }

        private void next(JsonGenerator g) throws IOException {
            g.writeRaw(depth <= ON_LINES ? "," : ", ");
            indent(g);
        }

        private void end(JsonGenerator g, int entries, char bracket) throws IOException {
            depth--;
            if (entries > 0 && depth < ON_LINES) newLine(g);
            g.writeRaw(bracket);
        }

        private void indent(JsonGenerator g) throws IOException { if (depth <= ON_LINES) newLine(g); }

        private void newLine(JsonGenerator g) throws IOException { g.writeRaw("\n" + "  ".repeat(depth)); }
    }
}
