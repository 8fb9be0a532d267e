package leeway.app.web.entry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leeway.files.keys.Form;
import leeway.files.keys.Table;
import leeway.files.yaml.Edit;
import leeway.files.yaml.Tree;

/** What a posted form says: how the text that it was made from shall change. */
public final class Posted {
    private Posted() { }

    /** Names of a posted form: the value at a path, and its unit. */
    public static final String VALUE = "f:";
    public static final String UNIT = "u:";

    /**
     * The text with every field that was changed.
     *
     * @param form  the form of the text from which the page was made
     * @param text  the text to change: the same one, or what was typed into it meanwhile
     * @param value a field of the posted form by its name; null where the form did not have it
     */
    public static String changed(Table table, Entry form, String text, UnaryOperator<String> value) {
        String out = text;
        for (Field f : form.all().toList()) {
            String typed = value.apply(VALUE + f.path());
            if (typed == null) continue;
            String unit = value.apply(UNIT + f.path());
            String now = joined(typed.strip(), unit == null ? "" : unit.strip());
            if (now.equals(f.written())) continue;
            out = write(table, out, f, now).orElse(out);
        }
        return out;
    }

    private static Optional<String> write(Table table, String text, Field f, String value) {
        if (value.isEmpty()) return Edit.remove(text, f.path());
        List<String> order = order(table, f.path());
        if (f.look() == Field.Look.NAMES && value.contains(",")) {
            String list = Stream.of(value.split(",")).map(String::strip).filter(s -> !s.isEmpty()).map(s -> Edit.scalar(s, true, false)).collect(Collectors.joining(", ", "[", "]"));
            return Edit.put(text, f.path(), list, order);
        }
        return Edit.set(text, f.path(), value, order);
    }

    /** A number with its unit; a value that brings its own unit keeps it. */
    public static String joined(String value, String unit) {
        if (value.isEmpty() || unit.isEmpty() || !value.matches("[-+\u2212]?[0-9., \u00A0\u202F]*([eE][-+]?[0-9]+)?")) return value;
        return value + " " + unit;
    }

    /** The keys that may stand beside the one at the path, in the order of their table. */
    public static List<String> order(Table table, String path) {
        Table at = table;
        String[] steps = path.split("/");
        for (int i = 0; i < steps.length - 1; i++) {
            if (steps[i].matches("\\d+")) continue;
            Optional<Form> form = at.key(steps[i]).map(k -> k.form());
            Optional<Table> next = form.flatMap(Form::inner).or(() -> form.flatMap(Form::items).flatMap(Form::inner));
            if (next.isEmpty()) return List.of();
            at = next.get();
        }
        return at.names();
    }

    /**
     * An act on a list: {@code add:oxygen}, {@code remove:legs/1}, {@code up:legs/1}, {@code down:legs/1}, or
     * {@code place:legs/3/0}, which puts the fourth first; or a value in its new unit, as {@link Stayed} offers it. What is added has no figures: they are asked for, never assumed.
     */
    public static String act(Table table, String text, String act) {
        int colon = act.indexOf(':');
        if (colon < 0) return text;
        String path = act.substring(colon + 1);
        int slash = path.lastIndexOf('/');
        switch (act.substring(0, colon)) {
            case "add" -> { return Edit.append(text, path, blank(text, path), order(table, path)).orElse(text); }
            case "remove" -> { return Edit.remove(text, path).orElse(text); }
            case "up", "down" -> {
                if (slash < 0 || !path.substring(slash + 1).matches("\\d{1,3}")) return text;
                return Edit.move(text, path.substring(0, slash), Integer.parseInt(path.substring(slash + 1)), act.startsWith("up") ? -1 : 1).orElse(text);
            }
            case "same" -> { return same(table, text, path); }
            case "place" -> { return place(text, path.split("/")); }
            default -> { return text; }
        }
    }

    /** Another value where one stands: {@code oxygen/0/pressure=2683 psi}. */
    private static String same(Table table, String text, String what) {
        int is = what.lastIndexOf('=');
        String path = what.substring(0, Math.max(0, is));
        if (is < 0 || Tree.of("text", text).good().flatMap(root -> Edit.at(root, path)).isEmpty()) return text;
        return Edit.set(text, path, what.substring(is + 1), order(table, path)).orElse(text);
    }

    private static String place(String text, String[] steps) {
        int n = steps.length;
        if (n < 3 || !steps[n - 2].matches("\\d{1,3}") || !steps[n - 1].matches("\\d{1,3}")) return text;
        String list = String.join("/", Arrays.copyOf(steps, n - 2));
        int from = Integer.parseInt(steps[n - 2]);
        int to = Integer.parseInt(steps[n - 1]);
        String out = text;
        while (from != to) {
            int by = Integer.signum(to - from);
            Optional<String> moved = Edit.move(out, list, from, by);
            if (moved.isEmpty()) return text;
            out = moved.get();
            from += by;
        }
        return out;
    }

    private static String blank(String text, String list) {
        List<String> stores = Entry.stores(text, "oxygen");
        return switch (list) {
            case "oxygen" -> "{name: " + free("cylinder", stores) + ", cylinder: , pressure: }";
            case "power" -> "{name: " + free("pack", Entry.stores(text, "power")) + ", battery: , charge: }";
            case "legs" -> "{leg: next leg, takes: , oxygen: " + (stores.isEmpty() ? "" : Edit.scalar(stores.get(0), true, false)) + "}";
            case "events" -> "{at: , set: {fio2: }, for: }";
            case "what if" -> "{at: , fault: , for: }";
            default -> "{}";
        };
    }

    private static String free(String word, List<String> taken) {
        if (!taken.contains(word)) return word;
        int n = 2;
        while (taken.contains(word + " " + n)) n++;
        return word + " " + n;
    }

    /** The texts before this one, packed, the newest last; old ones fall out. */
    public static List<String> before(List<String> undo, String packed, int most, int mostChars) {
        List<String> out = new ArrayList<>(undo);
        out.add(packed);
        while (out.size() > most || out.size() > 1 && out.stream().mapToInt(String::length).sum() > mostChars) out.remove(0);
        return out;
    }
}
