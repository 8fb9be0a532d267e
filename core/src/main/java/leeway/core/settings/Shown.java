package leeway.core.settings;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import leeway.core.expression.Value;
import leeway.core.kit.Setting;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;

/** How an amount is shown in a sentence: three digits at most, its unit, shares in percent. */
public final class Shown {
    private Shown() { }

    /** "369 mL", "61.5 kg", "60 %", "0.35 s". */
    public static String amount(double value, Unit unit) {
        if (unit.equals(Units.ONE)) return number(value);
        return number(value) + " " + unit.symbol();
    }

    /** A setting's value as a reader expects it. */
    public static String of(Setting setting, double value) {
        return setting.kind() == Kind.FRACTION ? number(value * 100) + " %" : amount(value, setting.unit());
    }

    /** A measure's value as a reader expects it. */
    public static String of(Measure measure, double value) {
        if (measure.kind() == Kind.FRACTION) return number(value * 100) + " %";
        return measure == Measure.PH ? String.format(Locale.ROOT, "%.2f", value) : amount(value, measure.unit());
    }

    /** The number alone, for the lower end of a range. */
    static String bare(Measure measure, double value) {
        if (measure == Measure.PH) return of(measure, value);
        return number(measure.kind() == Kind.FRACTION ? value * 100 : value);
    }

    static String of(String name, Value value, Optional<Unit> wanted) {
        if (!value.type().amount()) return value.type().equals(leeway.core.expression.Type.WORD) ? value.word() : value.truth() ? "yes" : "no";
        Optional<Setting> setting = Setting.ofWords(name);
        if (wanted.isEmpty() && setting.isPresent()) return of(setting.get(), value.in(setting.get().unit()));
        Unit unit = wanted.or(() -> Fact.ofWords(name).flatMap(Fact::unit)).orElseGet(() -> usual(value));
        return amount(value.in(unit), unit);
    }

    private static Unit usual(Value value) {
        return Arrays.stream(Kind.values()).filter(k -> k != Kind.FRACTION && k != Kind.HEIGHT && k != Kind.ALTITUDE && k != Kind.AGE)
                .map(Kind::internal).filter(u -> u.dimension().equals(value.type().dimension())).findFirst()
                .orElseGet(() -> new Unit("(SI)", "1", value.type().dimension(), 1, 0));
    }

    static String number(double value) {
        double size = Math.abs(value);
        int decimals = size >= 100 ? 0 : size >= 10 ? 1 : 2;
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        if (text.indexOf('.') >= 0) text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }
}
