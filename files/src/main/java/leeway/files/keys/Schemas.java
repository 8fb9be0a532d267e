package leeway.files.keys;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** JSON Schema 2020-12 of tables, as maps and lists ready to be written. */
public final class Schemas {
    private Schemas() { }

    /** A whole document. */
    public static Map<String, Object> document(Table table, String title, String id) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        out.put("$id", id);
        out.put("title", title);
        out.putAll(section(table, false));
        return out;
    }

    static Map<String, Object> section(Table table, boolean outer) {
        boolean sourced = outer || table.sourced();
        Map<String, Object> properties = new LinkedHashMap<>();
        List<String> required = new ArrayList<>();
        for (Key k : table.keys()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("description", k.meaning() + k.otherwise().map(o -> " Otherwise: " + o + ".").orElse(""));
            Map<String, Object> form = k.form().schema(sourced);
            one.putAll(sourced && !(k.form() instanceof Forms.InSection) && !(k.form() instanceof BandForm) ? orSourced(form) : form);
            properties.put(k.name(), one);
            if (k.required()) required.add(k.name());
        }
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("type", "object");
        out.put("properties", properties);
        if (!required.isEmpty()) out.put("required", required);
        out.put("additionalProperties", false);
        return out;
    }

    private static Map<String, Object> orSourced(Map<String, Object> form) {
        Map<String, Object> keys = new LinkedHashMap<>();
        keys.put("is", form);
        keys.put("source", Map.of("type", "string"));
        Map<String, Object> wrapped = new LinkedHashMap<>();
        wrapped.put("type", "object");
        wrapped.put("properties", keys);
        wrapped.put("required", List.of("is", "source"));
        wrapped.put("additionalProperties", false);
        return Map.of("anyOf", List.of(form, wrapped));
    }
}
