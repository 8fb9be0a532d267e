package leeway.core.settings;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.expression.Formula;
import leeway.core.expression.Table;
import leeway.core.kit.Setting;

/**
 * The rules that turn a patient into starting settings, with their sources; a sheet of the catalogue.
 *
 * @param plain   for whom it is, in a sentence
 * @param names   values that several rules share
 * @param mode    a rule that gives the code of a mode
 * @param rules   one a setting; which of them are used depends on the mode
 * @param targets what the solver keeps, in order: the first is kept to the end, the last is given up first
 */
public record Strategy(String name, String plain, Map<String, Named> names, Map<String, Table> tables, Rule mode, Map<Setting, Rule> rules,
                       List<Target> targets, String source) {
    public Strategy {
        names = Collections.unmodifiableMap(new LinkedHashMap<>(names));
        tables = Collections.unmodifiableMap(new LinkedHashMap<>(tables));
        rules = Collections.unmodifiableMap(rules.isEmpty() ? new EnumMap<Setting, Rule>(Setting.class) : new EnumMap<>(rules));
        targets = List.copyOf(targets);
    }

    /** A value with a name of its own. */
    public record Named(Formula is, String source) { }

    /**
     * How one setting follows.
     *
     * @param from the least that the solver may choose, and that the suggestion keeps to; likewise {@code to}; a setting without either is not moved
     * @param why  a sentence for the reader; {@code {name}} shows a value in it, {@code {name in mmHg}} in a unit of choice
     */
    public record Rule(Formula is, Optional<Formula> from, Optional<Formula> to, String why, String source) {
        public boolean movable() { return from.isPresent() && to.isPresent(); }
    }

    /** What a measure is to keep to. */
    public record Target(Measure measure, Optional<Formula> from, Optional<Formula> to, String source) { }
}
