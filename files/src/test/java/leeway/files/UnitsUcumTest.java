package leeway.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.format.UnitFormat;
import leeway.core.quantity.Dimension;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import systems.uom.ucum.format.UCUMFormat;
import tech.units.indriya.quantity.Quantities;

/** Every unit of our closed table against an independent library of the Unified Code for Units of Measure: factor, offset, dimension. */
class UnitsUcumTest {
    private static final UnitFormat UCUM = UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE);
    /** The library computes with few guard digits in some converters; a wrong factor differs by far more. */
    private static final double RELATIVE = 1e-9;

    static Stream<leeway.core.quantity.Unit> units() { return Units.all().stream(); }

    @SuppressWarnings({"rawtypes", "unchecked"})
    private static double convert(double value, String from, String to) {
        Quantity q = Quantities.getQuantity(value, (Unit) UCUM.parse(from));
        return q.to((Unit) UCUM.parse(to)).getValue().doubleValue();
    }

    @ParameterizedTest @MethodSource("units")
    void factorAndOffsetAreThoseOfUcum(leeway.core.quantity.Unit unit) {
        String si = si(unit.dimension());
        for (double value : List.of(0.0, 1.0, 37.0)) {
            double theirs = convert(value, unit.ucum(), si);
            double ours = value * unit.factor() + unit.offset();
            assertThat(ours).as("%s %s in %s", value, unit.ucum(), si).isCloseTo(theirs, within(Math.max(Math.abs(theirs), Math.abs(unit.factor())) * RELATIVE));
        }
    }

    private static String si(Dimension d) {
        StringBuilder out = new StringBuilder();
        part(out, "kg", d.kilogram());
        part(out, "m", d.metre());
        part(out, "s", d.second());
        part(out, "K", d.kelvin());
        part(out, "mol", d.mole());
        return out.isEmpty() ? "1" : out.toString();
    }

    private static void part(StringBuilder out, String base, int exponent) {
        if (exponent == 0) return;
        if (!out.isEmpty()) out.append('.');
        out.append(base);
        if (exponent != 1) out.append(exponent);
    }

    @Test void everyFamilyTakesUnitsOfOneDimensionOnly() {
        for (Kind kind : Kind.values()) {
            assertThat(kind.accepted()).as(kind.name()).isNotEmpty().allSatisfy(u -> assertThat(u.dimension()).isEqualTo(kind.internal().dimension()));
            assertThat(leeway.core.quantity.Quantity.parse(kind.example())).as(kind.example()).hasValueSatisfying(q -> assertThat(kind.accepted()).contains(q.unit()));
        }
    }

    @Test void everySpellingLeadsToItsUnitAndWhatIsPrintedIsReadAgain() {
        SplittableRandom random = new SplittableRandom(20_261_125);
        for (Map.Entry<String, leeway.core.quantity.Unit> e : Units.spellings().entrySet()) {
            assertThat(Units.find(e.getKey())).contains(e.getValue());
            for (int i = 0; i < 50; i++) {
                double value = Math.scalb(random.nextDouble(-1, 1), random.nextInt(-20, 20));
                leeway.core.quantity.Quantity q = new leeway.core.quantity.Quantity(value, e.getValue());
                assertThat(leeway.core.quantity.Quantity.parse(q.toString())).as(q.toString()).contains(q);
            }
        }
    }

    /** UCUM's own codes are units of the contract; 1 and mo_j, a_j say less than what people write. */
    @Test void aUnitIsTakenByItsUcumCodeToo() {
        for (Kind kind : Kind.values()) {
            for (leeway.core.quantity.Unit unit : kind.accepted()) {
                String code = unit.ucum().replace("_j", "");
                if (!code.equals("1") && !code.contains("/kg")) assertThat(Units.find(code)).as(code).contains(unit);
            }
        }
        assertThat(leeway.core.quantity.Quantity.parse("\u221215\u00a0\u00b0C")).as("as we print it").contains(new leeway.core.quantity.Quantity(-15, Units.CEL));
        assertThat(leeway.core.quantity.Quantity.parse("12 minutes")).contains(new leeway.core.quantity.Quantity(12, Units.MIN));
    }

    @Test void conversionsThereAndBackLoseNothingThatMatters() {
        SplittableRandom random = new SplittableRandom(7);
        for (Kind kind : Kind.values()) {
            for (leeway.core.quantity.Unit unit : kind.accepted()) {
                for (int i = 0; i < 200; i++) {
                    double value = random.nextDouble(0.001, 1000);
                    double back = unit.from(kind.internal().from(value, unit), kind.internal());
                    assertThat(back).isCloseTo(value, within(1e-9 * Math.max(1, value)));
                }
            }
        }
    }
}
