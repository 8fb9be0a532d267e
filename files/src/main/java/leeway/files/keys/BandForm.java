package leeway.files.keys;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.kit.Band;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;

/** A value with the range that 19 of 20 of its kind lie in; its value is a {@code Band} in the kind's unit. */
record BandForm(QuantityForm of) implements Form {
    private static final List<String> KEYS = List.of("is", "from", "to", "source");

    @Override public Optional<Object> read(Node node, String name, TableReader reader) {
        if (!(node instanceof Node.Mapping m)) return of.read(node, name, reader).map(v -> Band.of((Double) v));
        Complaints c = reader.complaints();
        for (Node.Entry e : m.entries()) {
            String key = e.key().text();
            if (!KEYS.contains(key)) c.add(e.key().at(), "\"%s\" has no key %s".formatted(name, Complaints.echo(key)), "Its keys are is, from, to and source.", () -> Nearest.of(key, KEYS));
        }
        if (m.get("is").isEmpty()) {
            c.add(m.at(), "\"%s\" has no \"is\"".formatted(name), "It is %s.".formatted(of.words()));
            return Optional.empty();
        }
        Optional<Double> is = number(m, "is", name, reader);
        Optional<Double> from = number(m, "from", name, reader);
        Optional<Double> to = number(m, "to", name, reader);
        if (is.isEmpty() || m.get("from").isPresent() != from.isPresent() || m.get("to").isPresent() != to.isPresent()) return Optional.empty();
        double low = from.orElse(is.get());
        double high = to.orElse(is.get());
        if (low > is.get() || high < is.get()) {
            c.add(m.at(), "\"%s\" lies outside its own range".formatted(name), "\"from\" is at most \"is\", \"to\" at least \"is\".");
            return Optional.empty();
        }
        return Optional.of(new Band(is.get(), low, high));
    }

    private Optional<Double> number(Node.Mapping m, String key, String name, TableReader reader) {
        return m.get(key).flatMap(n -> of.read(n, name, reader)).map(Double.class::cast);
    }

    @Override public String words() { return of.words() + ", or {is: …, from: …, to: …}"; }

    @Override public String example() { return of.example(); }

    @Override public Optional<leeway.core.quantity.Kind> quantity() { return of.quantity(); }

    @Override public Map<String, Object> schema() {
        Map<String, Object> one = of.schema();
        Map<String, Object> keys = new LinkedHashMap<>();
        keys.put("is", one);
        keys.put("from", one);
        keys.put("to", one);
        keys.put("source", Map.of("type", "string"));
        Map<String, Object> range = new LinkedHashMap<>();
        range.put("type", "object");
        range.put("properties", keys);
        range.put("required", List.of("is"));
        range.put("additionalProperties", false);
        return Map.of("anyOf", List.of(one, range));
    }
}
