package leeway.core.expression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormulaTest {
    private static final Map<String, Value> PATIENT = Map.of("predicted body weight", Value.of(61.5, Kind.MASS), "age", Value.of(58, Kind.AGE),
            "dead space", Value.of(150, Kind.VOLUME), "nothing", Value.of(0, Kind.VOLUME), "sex", Value.of("female"), "fio2", Value.of(0.6, Kind.FRACTION));
    private static final Table PEEP = new Table("PEEP for oxygen", Type.NUMBER, Type.of(Kind.AIRWAY_PRESSURE), false,
            List.of(new Table.Row(0.3, 5 * 98.0665), new Table.Row(0.5, 8 * 98.0665), new Table.Row(0.6, 10 * 98.0665)), "test");
    static final Names NAMES = new Names() {
        @Override public Optional<Type> type(String name) { return Optional.ofNullable(PATIENT.get(name)).map(Value::type); }

        @Override public Optional<Table> table(String name) { return name.equals(PEEP.name()) ? Optional.of(PEEP) : Optional.empty(); }

        @Override public Collection<String> known() { return PATIENT.keySet(); }
    };

    static double in(String formula, Unit unit) { return Formula.of(formula).value(NAMES, PATIENT::get).in(unit); }

    @ParameterizedTest(name = "{0} = {1} {2}")
    @CsvSource(delimiter = '|', value = {
        "6 mL/kg * predicted body weight | 369 | mL",
        "30 mbar + 1 kPa | 40.78864852 | cmH2O",
        "20 /min * 0.5 L - 2 L/min | 8 | L/min",
        "60 / 20 | 3 | ",
        "1 / (20 /min) | 3 | s",
        "-2 + 3 * 4 | 10 | ",
        "2 * 3 ^ 2 | 18 | ",
        "min(3 s, 2000 ms) | 2 | s",
        "clamp(40 /min, 6 /min, 35 /min) | 35 | /min",
        "round(369 mL, 10 mL) | 370 | mL",
        "floor(369 mL, 10 mL) | 360 | mL",
        "ceil(361 mL, 10 mL) | 370 | mL",
        "if age < 1 year then 30 /min else 20 /min | 20 | /min",
        "if sex = \"female\" and not (age > 60 years) then 1 else 2 | 1 | ",
        "PEEP for oxygen(fio2) | 10 | cmH2O",
        "PEEP for oxygen(55 %) | 8 | cmH2O",
        "PEEP for oxygen(10 %) | 5 | cmH2O",
        "863 mmHg * 200 mL/min / 40 mmHg | 4.315 | L/min",
        "exp(-(1 s) / (0.5 s)) | 0.1353352832366 | ",
        "37.5 Cel - 36 Cel | 1.5 | K"})
    void computesWithUnits(String formula, double expected, String unit) {
        assertThat(in(formula, Units.find(unit == null ? "" : unit).orElseThrow())).isCloseTo(expected, within(1e-4 * Math.max(1, Math.abs(expected)) * 1e-4));
    }

    @ParameterizedTest(name = "{0}: character {1}, {2}")
    @CsvSource(delimiter = '|', value = {
        "100 kPa + 1 L | 8 | a pressure cannot be added to a volume",
        "6 mL/kg * predicted body wight | 10 | there is no \"predicted body wight\" here. Did you mean \"predicted body weight\"?",
        "6 mL/kg * kg | 10 | there is no \"kg\" here. That is a unit",
        "min(3 s, 2 mL) | 9 | min mixes a time with a volume",
        "if age then 1 else 2 | 3 | if needs a yes or no, this is a time",
        "if age > 1 year then 1 mL else 2 s | 0 | then gives a volume, else gives a time",
        "if age > 1 year then 1 mL | 25 | \"else\" is missing",
        "6 mL/kg * | 9 | a value is missing before the end",
        "(1 + 2 | 6 | \")\" is missing to close the bracket at character 1",
        "1 < 2 < 3 | 6 | comparisons do not chain",
        "system(1) | 0 | there is no function or table \"system\"",
        "mim(1, 2) | 0 | there is no function or table \"mim\". Did you mean \"min\"?",
        "clamp(1, 2) | 0 | clamp with 2 arguments. Write clamp(value, from, to).",
        "PEEP for oxygen(3 s) | 16 | the table \"PEEP for oxygen\" is looked up by a plain number, not by a time",
        "2 ^ 0.5 | 4 | \"0.5\" cannot be an exponent",
        "3 × 4 | 2 | \"×\" means nothing in a formula. Times is written *.",
        "sex + 1 | 0 | + needs an amount, this is a word",
        "exp(3 mL) | 4 | exp needs a plain number, this is a volume",
        "\"open | 0 | the quote is not closed",
        "1 mL 2 mL | 5 | \"2 mL\" is not expected here",
        "3 mL | 0 | this is a volume, a plain number belongs here",
        "age + 1 | 4 | a time cannot be added to a plain number. Give the plain number its unit."})
    void saysWhereAndWhat(String text, int offset, String message) {
        Formula.Parsed parsed = Formula.parse(text);
        Slip slip = parsed.slip().or(() -> parsed.formula().get().check(NAMES, Type.NUMBER)).orElseThrow();
        assertThat(slip.toString()).startsWith(message);
        assertThat(slip.offset()).isEqualTo(offset);
    }

    @Test
    void nothingLongDeepOrLargeGetsIn() {
        assertThat(Formula.parse("1" + "+1".repeat(400)).slip().get().what()).contains("characters");
        assertThat(Formula.parse("(".repeat(60) + "1" + ")".repeat(60)).slip().get().what()).contains("nested more than 40 deep");
        assertThat(Formula.parse("-".repeat(100) + "1").slip().get().what()).contains("nested");
        assertThat(Formula.parse("1" + "+1".repeat(150)).slip().get().what()).contains("more than 200 parts");
        assertThat(Formula.parse("9".repeat(400)).slip().get().what()).contains("too large");
        assertThat(Formula.parse("  ").slip().get().what()).contains("empty");
    }

    @Test
    void divisionByZeroIsRefusedWithItsPlace() {
        assertThatThrownBy(() -> in("1 mL / nothing", Units.ONE)).isInstanceOfSatisfying(SlipException.class, e -> {
            assertThat(e.slip().what()).isEqualTo("division by zero");
            assertThat(e.slip().offset()).isEqualTo(5);
        });
        assertThatThrownBy(() -> in("nothing ^ -1 * 1 mL", Units.ONE)).isInstanceOf(SlipException.class);
        assertThat(in("if nothing > 0 mL then 1 mL / nothing else 7", Units.ONE)).isEqualTo(7);
    }

    @Test
    void namesOfSeveralWordsEndAtKeywords() {
        assertThat(Formula.of("if dead space > nothing then dead space else nothing").uses()).containsExactly("dead space", "nothing");
    }
}
