package leeway.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Setting;
import leeway.core.plan.Plan;
import leeway.core.quantity.Quantity;
import leeway.files.yaml.Edit;
import leeway.files.yaml.Node;
import leeway.files.yaml.Tree;

/**
 * A value of the transport that a what-if moves.
 *
 * @param path  in the text
 * @param kind  for its label: a setting, or "takes" of a leg, or "count" of a store
 * @param of    the leg or the store; empty for a setting
 * @param least of its scale
 * @param value as it stands, from the text or from the plan
 * @param set   whether the text has it; otherwise the plan found it
 */
public record Slider(String path, String kind, String of, double least, double most, double step, double value, String unit, boolean set) {
    public String id() { return "s-" + path.replaceAll("[^A-Za-z0-9]+", "-"); }

    /** As the slider and the text have it. */
    public String number(double v) {
        return v == Math.rint(v) ? Long.toString((long) v) : new java.math.BigDecimal(v).setScale(2, java.math.RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString();
    }

    /** Whether a value that came back is another one: a browser rounds to the nearest step. */
    boolean moved(double v) { return Math.abs(v - value) > step / 2 + 1e-9; }

    /** As it is written into the text. */
    String written(double v) { return number(v) + (unit.isEmpty() ? "" : " " + unit); }

    /** Those of a text and its plan. */
    static List<Slider> of(String text, Plan plan) {
        List<Slider> out = new ArrayList<>();
        Optional<Node> root = Tree.of("text", text).good();
        if (root.isEmpty()) return out;
        setting(out, root.get(), plan, Setting.FIO2, "fio2", 21, 100, 1, "%", 100);
        setting(out, root.get(), plan, Setting.TIDAL_VOLUME, "tidal volume", 0, 0, 0, "mL", 1);
        setting(out, root.get(), plan, Setting.RATE, "rate", 5, 60, 1, "/min", 1);
        setting(out, root.get(), plan, Setting.PEEP, "peep", 0, 20, 1, "cmH2O", 1);
        list(root.get(), "legs").forEach(i -> minutes(root.get(), "legs/" + i + "/takes").ifPresent(min -> out.add(new Slider("legs/" + i + "/takes", "takes", text(root.get(), "legs/" + i + "/leg"),
                1, Math.max(60, Math.ceil(min / 30) * 60), 1, min, "min", true))));
        list(root.get(), "oxygen").forEach(i -> {
            if (text(root.get(), "oxygen/" + i + "/cylinder").isEmpty()) return;
            String count = text(root.get(), "oxygen/" + i + "/count");
            double n = count.matches("\\d{1,2}") ? Integer.parseInt(count) : 1;
            out.add(new Slider("oxygen/" + i + "/count", "count", text(root.get(), "oxygen/" + i + "/name"), 1, Math.max(6, n), 1, n, "", !count.isEmpty()));
        });
        return out;
    }

    private static void setting(List<Slider> out, Node root, Plan plan, Setting setting, String key, double least, double most, double step, String unit, double times) {
        OptionalDouble v = plan.suggested().settings().get(setting);
        if (v.isEmpty()) return;
        double value = v.getAsDouble() * times;
        double low = least;
        double high = most;
        double by = step;
        if (setting == Setting.TIDAL_VOLUME) {
            by = value < 50 ? 0.5 : 1;
            low = Math.max(1, Math.floor(value * 0.5));
            high = Math.ceil(value * 1.6);
        }
        out.add(new Slider("settings/" + key, key, "", Math.min(low, value), Math.max(high, value), by, value, unit, Edit.at(root, "settings/" + key).isPresent()));
    }

    private static List<Integer> list(Node root, String path) {
        return Edit.at(root, path).filter(n -> n instanceof Node.Items).map(n -> java.util.stream.IntStream.range(0, ((Node.Items) n).items().size()).boxed().toList()).orElse(List.of());
    }

    private static String text(Node root, String path) {
        return Edit.at(root, path).filter(n -> n instanceof Node.Scalar).map(n -> ((Node.Scalar) n).text().strip()).orElse("");
    }

    /** A duration of a text; empty where there is none. */
    static Optional<Double> minutes(String text, String path) { return Tree.of("text", text).good().flatMap(r -> minutes(r, path)); }

    private static Optional<Double> minutes(Node root, String path) {
        return Quantity.parse(text(root, path)).map(q -> leeway.core.quantity.Units.MIN.from(q.value(), q.unit())).filter(m -> m > 0);
    }
}
