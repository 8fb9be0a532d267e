package leeway.app.web.entry;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import leeway.core.quantity.Quantity;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;

/**
 * A number that stayed when the unit beside it was changed. Who types 2000 and then finds psi wants 2000 psi, so the number
 * is never converted unasked; the page says what was and what is now, and offers as much as before in the new unit.
 *
 * @param number as it stands in the field
 * @param before the unit until now
 * @param now    the unit from now on
 * @param same   the number that would be as much as before, to four digits; empty where the units measure different things
 */
public record Stayed(String path, String number, String before, String now, String same) {
    private static final MathContext FOUR_DIGITS = new MathContext(4);

    /** By path; only units that change what is meant. */
    public static Map<String, Stayed> of(Entry form, UnaryOperator<String> value) {
        Map<String, Stayed> out = new LinkedHashMap<>();
        for (Field f : form.all().toList()) {
            String typed = value.apply(Posted.VALUE + f.path());
            String unit = value.apply(Posted.UNIT + f.path());
            if (typed == null || unit == null || !f.filled() || f.unit().isEmpty() || !typed.strip().equals(f.value())) continue;
            of(f, unit.strip()).ifPresent(s -> out.put(f.path(), s));
        }
        return out;
    }

    private static Optional<Stayed> of(Field f, String unit) {
        Optional<Quantity> was = Quantity.parse(f.written());
        Optional<Unit> to = Units.find(unit);
        if (unit.isEmpty() || was.isEmpty() || to.isEmpty()) return Optional.empty();
        String same = "";
        if (was.get().dimension().equals(to.get().dimension())) {
            same = figure(was.get().in(to.get()));
            if (same.equals(figure(was.get().value()))) return Optional.empty();
        }
        return Optional.of(new Stayed(f.path(), f.value(), f.unit(), unit, same));
    }

    private static String figure(double v) {
        BigDecimal rounded = new BigDecimal(v).round(FOUR_DIGITS);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** The act that makes it as much as before. */
    public String act() { return "same:" + path + "=" + same + " " + now; }
}
