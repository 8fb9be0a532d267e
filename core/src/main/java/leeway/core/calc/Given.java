package leeway.core.calc;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;
import leeway.core.supply.CylinderSizes;

/** What a calc was given, read: numbers in the unit of their kind, words, sheets. Collects what is wrong, all of it. */
public final class Given {
    private static final int ECHO = 40;
    private final Calc calc;
    private final Map<String, Double> numbers = new LinkedHashMap<>();
    private final Map<String, String> words = new LinkedHashMap<>();
    private final Map<String, Object> sheets = new LinkedHashMap<>();
    private final List<String> said = new ArrayList<>();
    private final List<CalcComplaint> complaints = new ArrayList<>();

    Given(Calc calc, Map<String, String> given, Sheets catalogue) {
        this.calc = calc;
        Map<String, Key> known = new LinkedHashMap<>();
        for (Key key : calc.keys()) known.put(key.name(), key);
        given.forEach((name, text) -> {
            Key key = known.get(name);
            if (key == null) {
                complaints.add(new CalcComplaint(name, "\"%s\" has no key \"%s\"".formatted(calc.name(), echo(name)), "Its keys are " + String.join(", ", known.keySet()) + ".", Nearest.of(name, known.keySet())));
            } else {
                said.add(name);
                read(key, text, catalogue);
            }
        });
        for (Key key : calc.keys()) {
            if (said.contains(key.name())) continue;
            if (key.required()) {
                complaints.add(new CalcComplaint(key.name(), "\"%s\" needs \"%s\": %s".formatted(calc.name(), key.name(), key.meaning()), key.right(), Optional.empty()));
            } else {
                key.otherwise().ifPresent(text -> read(key, text, catalogue));
            }
        }
    }

    private void read(Key key, String text, Sheets catalogue) {
        boolean either = key.kind().isPresent() && key.sheet().isPresent();
        if (key.kind().isPresent() && !(either && Quantity.split(text).isEmpty())) {
            number(key, key.kind().get(), text);
        } else if (key.sheet().isPresent()) {
            Optional<Object> sheet = catalogue.find(key.sheet().get(), text.strip());
            if (sheet.isPresent()) {
                sheets.put(key.name(), sheet.get());
                words.put(key.name(), text.strip());
            } else {
                complain(key, "there is no %s \"%s\"".formatted(key.sheet().get(), echo(text)), key.right(), Nearest.of(text, catalogue.names(key.sheet().get())));
            }
        } else {
            Optional<String> word = key.words().stream().filter(w -> w.equalsIgnoreCase(text.strip())).findFirst();
            if (word.isPresent()) words.put(key.name(), word.get());
            else complain(key, "\"%s\" is \"%s\"".formatted(key.name(), echo(text)), key.right(), Nearest.of(text, key.words()));
        }
    }

    private void number(Key key, Kind kind, String text) {
        Optional<Quantity.Parts> parts = Quantity.split(text);
        if (parts.isEmpty() && kind == Kind.STORE_VOLUME) {
            size(key, text.strip());
            return;
        }
        if (parts.isEmpty()) {
            complain(key, "\"%s\" is \"%s\", which is no number".formatted(key.name(), echo(text)), key.right(), Optional.empty());
            return;
        }
        String written = parts.get().unit();
        Optional<Unit> unit = Units.find(written);
        if (written.isEmpty() && kind != Kind.NUMBER) {
            complain(key, "\"%s\" is \"%s\", which has no unit".formatted(key.name(), echo(text)), key.right(), Optional.empty());
        } else if (unit.isEmpty() && written.matches(",\\d.*")) {
            complain(key, "\"%s\" is \"%s\", with a comma in its number".formatted(key.name(), echo(text)), "Write a point.", Optional.of(text.strip().replaceFirst(",", ".")));
        } else if (unit.isEmpty()) {
            List<String> spellings = kind.accepted().stream().map(Unit::symbol).toList();
            complain(key, "\"%s\" has the unit \"%s\", which is not known".formatted(key.name(), echo(written)), key.right(), Nearest.of(written, spellings));
        } else if (!kind.accepted().contains(unit.get())) {
            complain(key, "\"%s\" is \"%s\", and %s is no unit of it".formatted(key.name(), echo(text), unit.get().symbol()), key.right(), Optional.empty());
        } else {
            double value = kind.internal().from(parts.get().number(), unit.get());
            double slack = 1e-9 * Math.max(1, Math.max(Math.abs(key.least()), Math.abs(key.most())));
            if (!Double.isFinite(value) || value < key.least() - slack || value > key.most() + slack) {
                complain(key, "\"%s\" is %s".formatted(key.name(), echo(text)), "It lies between %s and %s.".formatted(shown(kind, key.least()), shown(kind, key.most())), Optional.empty());
            } else {
                numbers.put(key.name(), value);
            }
        }
    }

    /** A cylinder's size by the letter of a country stands for its water capacity. */
    private void size(Key key, String text) {
        for (Map.Entry<String, Double> known : CylinderSizes.waterL().entrySet()) {
            if (!known.getKey().equalsIgnoreCase(text)) continue;
            numbers.put(key.name(), known.getValue());
            words.put(key.name(), known.getKey());
            return;
        }
        List<String> names = List.copyOf(CylinderSizes.waterL().keySet());
        Optional<String> letter = names.stream().filter(n -> n.substring(3).equalsIgnoreCase(text)).findFirst();
        String right = "It is a water capacity, for example \"2 L\", or a size with its country: " + String.join(", ", names) + ".";
        complain(key, letter.isPresent() ? "\"%s\" is a letter alone, and the letters differ between countries".formatted(echo(text)) : "\"%s\" is \"%s\", which is no number and no size".formatted(key.name(), echo(text)),
                right, letter.isPresent() ? Optional.empty() : Nearest.of(text, names));
    }

    private static String shown(Kind kind, double value) {
        if (kind == Kind.FRACTION) return Show.number(100 * value) + " %";
        return Show.number(value) + (kind.internal().symbol().isEmpty() ? "" : " " + kind.internal().symbol());
    }

    private void complain(Key key, String what, String right, Optional<String> nearest) {
        complaints.add(new CalcComplaint(key.name(), what, right, nearest));
    }

    private static String echo(String text) {
        String clean = text.strip().replaceAll("\\p{Cntrl}", " ");
        return clean.length() <= ECHO ? clean : clean.substring(0, ECHO) + "…";
    }

    /** The value of a key that is required or has a default. */
    public double number(String key) {
        Double value = numbers.get(key);
        if (value == null) throw new IllegalStateException("%s asked for \"%s\", which is absent".formatted(calc.name(), key));
        return value;
    }

    /** Given, or taken by default. */
    public boolean has(String key) { return numbers.containsKey(key) || words.containsKey(key); }

    /** Given by the user, not by default. */
    public boolean said(String key) { return said.contains(key); }

    /** The word given, or the default; empty where neither. */
    public Optional<String> word(String key) { return Optional.ofNullable(words.get(key)); }

    /** The record of the sheet that a key names. */
    public <T> T sheet(String key, Class<T> type) { return type.cast(sheets.get(key)); }

    /** The values do not go together. */
    public void wrong(String key, String what, String right) { complaints.add(new CalcComplaint(key, what, right, Optional.empty())); }

    List<CalcComplaint> complaints() { return complaints; }

    @Override public String toString() { return "%s %s %s".formatted(calc.name(), numbers, words).toLowerCase(Locale.ROOT); }
}
