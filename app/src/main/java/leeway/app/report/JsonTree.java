package leeway.app.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;

/** Writes maps, lists, texts, numbers and booleans as one JSON document. */
public final class JsonTree {
    private JsonTree() { }

    public static void write(OutputStream out, Object tree) {
        try (JsonGenerator to = new JsonFactory().createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)) {
            DefaultPrettyPrinter lines = new DefaultPrettyPrinter();
            lines.indentObjectsWith(new DefaultIndenter("  ", "\n"));
            to.setPrettyPrinter(lines);
            value(to, tree);
            to.writeRaw('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void value(JsonGenerator to, Object v) throws IOException {
        if (v instanceof Map<?, ?> map) {
            to.writeStartObject();
            for (Map.Entry<?, ?> e : map.entrySet()) {
                to.writeFieldName((String) e.getKey());
                value(to, e.getValue());
            }
            to.writeEndObject();
        } else if (v instanceof List<?> list) {
            to.writeStartArray();
            for (Object o : list) value(to, o);
            to.writeEndArray();
        } else if (v instanceof Integer i) {
            to.writeNumber(i);
        } else if (v instanceof Double d) {
            if (d == Math.rint(d) && Math.abs(d) < 1e15) to.writeNumber(d.longValue());
            else to.writeNumber(d);
        } else if (v instanceof Boolean b) {
            to.writeBoolean(b);
        } else {
            to.writeString((String) v);
        }
    }
}
