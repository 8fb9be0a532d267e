package leeway.files.sheet;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import leeway.core.expression.Formula;
import leeway.core.expression.Slip;
import leeway.core.kit.Mode;
import leeway.files.keys.Form;
import leeway.files.keys.TableReader;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Node;
import leeway.files.yaml.Place;

/** A formula of a strategy sheet; its value is a {@link Written}. The code of a mode alone stands for itself. */
record FormulaForm(String example) implements Form {
    /** A formula and where it stands, so that what is found wrong with it later has its line and column. */
    record Written(Formula formula, Node.Scalar node, int shift) {
        /** Adds a complaint at the place inside the formula. */
        void complain(Slip slip, Complaints complaints) { complaints.add(inside(node, slip.offset() - shift), slip.what(), slip.right()); }
    }

    @Override public Optional<Object> read(Node node, String name, TableReader reader) {
        if (!(node instanceof Node.Scalar s) || s.text().isBlank()) {
            reader.complaints().add(node.at(), "\"%s\" has %s where a formula belongs".formatted(name, node.words()), "Write for example \"%s: %s\".".formatted(name, example));
            return Optional.empty();
        }
        boolean mode = Mode.ofCode(s.text().strip()).isPresent();
        String text = mode ? '"' + s.text().strip() + '"' : s.text();
        Formula.Parsed parsed = Formula.parse(text);
        if (parsed.slip().isPresent()) {
            Slip slip = parsed.slip().get();
            reader.complaints().add(inside(s, slip.offset()), slip.what(), slip.right());
            return Optional.empty();
        }
        return Optional.of(new Written(parsed.formula().get(), s, mode ? 1 : 0));
    }

    /** The place of an offset of a text that stands on one line; the text's beginning where it does not. */
    static Place inside(Node.Scalar s, int offset) {
        int quote = s.quoted() ? 1 : 0;
        boolean oneLine = !s.block() && s.span().end() - s.span().start() == s.text().length() + 2 * quote;
        return oneLine ? new Place(s.at().file(), s.at().line(), s.at().column() + quote + Math.max(0, offset)) : s.at();
    }

    @Override public String words() { return "a formula, for example \"%s\"".formatted(example); }

    @Override public Map<String, Object> schema() {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("type", java.util.List.of("string", "number")); // a plain number is a formula too
        out.put("minLength", 1);
        out.put("maxLength", 600);
        out.put("examples", java.util.List.of(example));
        return out;
    }
}
