package leeway.core.kit;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A mode and values set, complete or in part. Values stand in the unit of {@link Setting#unit()}.
 *
 * @param inspiratoryShare of the breath that inspiration takes, where a file gives i:e and leaves the rate to the strategy
 */
public record Settings(Optional<Mode> mode, Map<Setting, Double> values, OptionalDouble inspiratoryShare) {
    public static final Settings NONE = new Settings(Optional.empty(), Map.of());

    public Settings {
        EnumMap<Setting, Double> copy = new EnumMap<>(Setting.class);
        values.forEach((k, v) -> {
            if (!Double.isFinite(v)) throw new IllegalArgumentException("setting %s (%s) must be finite".formatted(k.words(), v));
            copy.put(k, v);
        });
        values = Collections.unmodifiableMap(copy);
    }

    public Settings(Optional<Mode> mode, Map<Setting, Double> values) { this(mode, values, OptionalDouble.empty()); }

    public OptionalDouble get(Setting setting) {
        Double v = values.get(setting);
        return v == null ? OptionalDouble.empty() : OptionalDouble.of(v);
    }

    public double get(Setting setting, double otherwise) { return values.getOrDefault(setting, otherwise); }

    public boolean has(Setting setting) { return values.containsKey(setting); }

    public Settings with(Setting setting, double value) {
        EnumMap<Setting, Double> copy = new EnumMap<>(Setting.class);
        copy.putAll(values);
        copy.put(setting, value);
        return new Settings(mode, copy, inspiratoryShare);
    }

    public Settings without(Setting setting) {
        EnumMap<Setting, Double> copy = new EnumMap<>(Setting.class);
        copy.putAll(values);
        copy.remove(setting);
        return new Settings(mode, copy, inspiratoryShare);
    }

    public Settings with(Mode other) { return new Settings(Optional.of(other), values, inspiratoryShare); }
}
