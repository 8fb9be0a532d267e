package leeway.core.calc;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Collects working and results of one calc, in order; the first result is the value. */
public final class Answer {
    private final String calc;
    private final List<String> working = new ArrayList<>();
    private final Map<String, Double> keys = new LinkedHashMap<>();
    private String unit;

    public Answer(Calc calc) { this.calc = calc.name(); }

    /** A step, as in {@link String#format}; numbers best through {@link Show}. */
    public Answer step(String text, Object... values) {
        working.add(values.length == 0 ? text : String.format(Locale.ROOT, text, values));
        return this;
    }

    /** A result by its name of the contract. */
    public Answer key(String name, double value, String unit) {
        if (keys.isEmpty()) this.unit = unit;
        keys.put(name, value);
        return this;
    }

    public CalcResult from(String source) {
        return new CalcResult(calc, keys.values().iterator().next(), unit, keys, working, source);
    }
}
