package leeway.core.calc;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The answer of a calc. Numbers are rounded to six significant digits, once, here.
 *
 * @param value   the first of the keys
 * @param unit    its unit
 * @param keys    all results by the names of the contract, in order
 * @param working the steps with the numbers put in, a sentence each
 * @param source  of the formula
 */
public record CalcResult(String calc, double value, String unit, Map<String, Double> keys, List<String> working, String source) {
    public CalcResult {
        Map<String, Double> rounded = new LinkedHashMap<>();
        keys.forEach((k, v) -> {
            if (!Double.isFinite(v)) throw new IllegalArgumentException("%s: %s is %s".formatted(calc, k, v));
            rounded.put(k, significant(v));
        });
        value = significant(value);
        keys = Collections.unmodifiableMap(rounded);
        working = List.copyOf(working);
    }

    private static double significant(double value) {
        return value == 0 ? 0 : Double.parseDouble(String.format(Locale.ROOT, "%.5e", value));
    }
}
