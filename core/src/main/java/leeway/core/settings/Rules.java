package leeway.core.settings;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import leeway.core.expression.Formula;
import leeway.core.expression.Names;
import leeway.core.expression.Table;
import leeway.core.expression.Type;
import leeway.core.expression.Value;
import leeway.core.kit.Illness;
import leeway.core.kit.Setting;
import leeway.core.kit.Ventilator;

/** A strategy's names at work for one patient: facts, its own values, and settings, each worked out once. */
final class Rules {
    private static final Map<String, Fact> FACTS = new HashMap<>();
    private static final Map<String, Setting> SETTINGS = new HashMap<>();

    static {
        for (Fact f : Fact.values()) FACTS.put(f.words(), f);
        for (Setting s : Setting.values()) SETTINGS.put(s.words(), s);
    }

    private final Strategy strategy;
    private final Names names;
    private final Function<Fact, Value> facts;
    private final Function<Setting, Double> settings;
    private final Map<String, Value> known = new HashMap<>();
    private final Deque<String> open = new ArrayDeque<>();

    /** @param settings the value at which a setting stands, in its unit; asked when a formula names it */
    Rules(Strategy strategy, PatientFacts patient, Illness illness, Ventilator ventilator, Function<Setting, Double> settings) {
        this.strategy = strategy;
        this.names = names(strategy);
        this.facts = f -> f.of(patient, illness, ventilator);
        this.settings = settings;
    }

    /** What a formula of this strategy may name. */
    static Names names(Strategy strategy) {
        Map<String, Optional<Type>> types = new HashMap<>();
        return new Names() {
            @Override public Optional<Type> type(String name) {
                Optional<Fact> fact = Fact.ofWords(name);
                if (fact.isPresent()) return Optional.of(fact.get().type());
                Optional<Setting> setting = Setting.ofWords(name);
                if (setting.isPresent()) return Optional.of(Type.of(setting.get().kind()));
                Strategy.Named own = strategy.names().get(name);
                if (own == null) return Optional.empty();
                Optional<Type> before = types.get(name);
                if (before != null) return before;
                types.put(name, Optional.empty());
                Optional<Type> type = Optional.of(own.is().type(this));
                types.put(name, type);
                return type;
            }

            @Override public Optional<Table> table(String name) { return Optional.ofNullable(strategy.tables().get(name)); }

            @Override public Collection<String> known() {
                List<String> all = new ArrayList<>(strategy.names().keySet());
                for (Fact f : Fact.values()) all.add(f.words());
                for (Setting s : Setting.values()) all.add(s.words());
                all.addAll(strategy.tables().keySet());
                return all;
            }
        };
    }

    Value value(Formula formula) { return formula.value(names, this::of); }

    double in(Formula formula, leeway.core.quantity.Unit unit) { return value(formula).in(unit); }

    /** The value of a name. */
    Value of(String name) {
        Value before = known.get(name);
        if (before != null) return before;
        if (open.contains(name)) throw new IllegalStateException("strategy %s: %s needs itself".formatted(strategy.name(), name));
        open.push(name);
        try {
            Fact fact = FACTS.get(name);
            Setting setting = SETTINGS.get(name);
            Value value = fact != null ? facts.apply(fact) : setting != null ? Value.of(settings.apply(setting), setting.kind()) : value(strategy.names().get(name).is());
            known.put(name, value);
            return value;
        } finally {
            open.pop();
        }
    }

    Names names() { return names; }
}
