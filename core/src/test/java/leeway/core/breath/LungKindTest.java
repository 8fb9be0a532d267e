package leeway.core.breath;

import static leeway.core.breath.Bench.of;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import leeway.core.lung.FlowLimit;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.lung.Rohrer;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.How;
import leeway.core.run.Knob;
import org.junit.jupiter.api.Test;

/** What a clinician would expect of lungs that are not one linear bag. */
class LungKindTest {
    static final Recruitment RECRUITMENT = new Recruitment(0.6, 20, 9, 5, 4, 2.3, 60, 0.6, 10, 25);
    static final Lungs OPENING = Lungs.LINEAR.withCurve(5, 10).withRecruitment(RECRUITMENT);
    static final Lungs LIMITED = Lungs.LINEAR.withLimit(new FlowLimit(4, 2));
    static final Lungs APART = Lungs.LINEAR.withLeft(0.5);
    private static final Mechanics STIFF = Mechanics.linear(12, 25).withChestWall(0.25).withLungs(OPENING);
    private static final DeviceLimits FREE = new DeviceLimits(1000, 200, 0, true, 0.08, 3, 5);
    private static final BreathSettings SMALL = BreathSettings.volume(400, 20, 1, 0.2, 10);

    private static double[] last(List<double[]> rows) {
        return rows.get(rows.size() - 1);
    }

    @Test
    void complianceIsThatOfTheSheetBetweenItsPressures() {
        Recruitment still = new Recruitment(0.6, 20, 9, 5, 4, 1e9, 1e9, 0, 10, 25);
        Mechanics m = Mechanics.linear(12, 25).withChestWall(0.25).withLungs(Lungs.LINEAR.withCurve(5, 10).withRecruitment(still));
        BreathNumbers n = SteadyBreath.of(m, BreathSettings.pressure(15, 10, 3, 0, 10), FREE);
        assertThat(n.plateauCmH2O()).isCloseTo(25, within(0.05));
        assertThat(n.expiredMl() / n.drivingCmH2O()).isCloseTo(25, within(0.6));
    }

    @Test
    void anOverdistendedLungStiffens() {
        Mechanics m = Mechanics.linear(12, 40).withLungs(Lungs.LINEAR.withCurve(5, 6));
        double low = SteadyBreath.of(m, BreathSettings.volume(400, 12, 1.5, 0.3, 5), FREE).drivingCmH2O(), high = SteadyBreath.of(m, BreathSettings.volume(400, 12, 1.5, 0.3, 25), FREE).drivingCmH2O();
        assertThat(high).isGreaterThan(1.5 * low);
    }

    @Test
    void withPeepGoneTheLungClosesInMinutesAndTheShuntRises() {
        List<double[]> rows = Bench.rows(STIFF, SMALL, 900, s -> s.add(Change.at(300, Knob.PEEP_SET, How.SET, 0)));
        double before = of(Bench.rowFrom(rows, 290), Column.OPEN_SHARE), soon = of(Bench.rowFrom(rows, 310), Column.OPEN_SHARE), later = of(Bench.rowFrom(rows, 600), Column.OPEN_SHARE);
        assertThat(soon).isBetween(before - 0.25, before - 0.005);
        assertThat(later).isLessThan(before - 0.2);
        assertThat(of(Bench.rowFrom(rows, 890), Column.OPEN_SHARE)).as("settled after five minutes").isCloseTo(later, within(0.03));
        assertThat(of(Bench.rowFrom(rows, 600), Column.SHUNT_ADDED)).isCloseTo(0.6 * 0.6 * (RECRUITMENT.reference() - later), within(1e-9));
        assertThat(of(Bench.rowFrom(rows, 890), Column.DRIVING_CMH2O)).as("less lung is stiffer").isGreaterThan(of(Bench.rowFrom(rows, 290), Column.DRIVING_CMH2O));
    }

    @Test
    void aLongHighPressureOpensItAndPeepKeepsItOpen() {
        List<double[]> rows = Bench.rows(STIFF, BreathSettings.pressure(14, 20, 1, 0, 12).withLimit(80), 400, s -> s.add(Change.during(100, 130, Knob.INSPIRATORY_PRESSURE_SET, How.SET, 33)));
        double before = of(Bench.rowFrom(rows, 95), Column.OPEN_SHARE), after = of(Bench.rowFrom(rows, 140), Column.OPEN_SHARE), later = of(last(rows), Column.OPEN_SHARE);
        assertThat(after).isGreaterThan(before + 0.1);
        assertThat(later).as("what the PEEP keeps").isGreaterThan(before + 0.05).isLessThanOrEqualTo(after + 1e-9);
    }

    @Test
    void aFlowLimitedLungTrapsMoreAndPeepBelowItCostsLittle() {
        Mechanics free = Mechanics.linear(18, 60).withLungs(18, 2, 60).withChestWall(0.3), limited = free.withLungs(LIMITED);
        BreathSettings zero = BreathSettings.volume(500, 15, 1, 0, 0);
        BreathNumbers unlimited = SteadyBreath.of(free, zero, FREE), none = SteadyBreath.of(limited, zero, FREE);
        assertThat(none.autoPeepCmH2O()).isGreaterThan(unlimited.autoPeepCmH2O());
        double peep = 0.75 * none.autoPeepCmH2O();
        double rise = SteadyBreath.of(limited, zero.withPeep(peep), FREE).peepCmH2O() - none.peepCmH2O(), linear = SteadyBreath.of(free, zero.withPeep(peep), FREE).peepCmH2O() - unlimited.peepCmH2O();
        assertThat(rise).as("over a waterfall").isLessThan(0.1 * peep);
        assertThat(linear).as("without one").isCloseTo(peep, within(0.05));
    }

    @Test
    void aTubeInOneBronchusVentilatesOneLungUnderMorePressure() {
        Mechanics m = Mechanics.linear(8, 50).withLungs(APART);
        List<double[]> rows = Bench.rows(m, BreathSettings.volume(450, 14, 1.2, 0.3, 5), 200, s -> s.add(Change.at(100, Knob.VENTILATED_SHARE, How.SET, 0.5)));
        double[] both = Bench.rowFrom(rows, 90), one = last(rows);
        assertThat(of(both, Column.FIRST_TIDAL_ML)).isCloseTo(of(both, Column.SECOND_TIDAL_ML), within(1e-3));
        assertThat(of(one, Column.SECOND_TIDAL_ML)).isZero();
        assertThat(of(one, Column.FIRST_TIDAL_ML)).isCloseTo(450, within(0.01));
        assertThat(of(one, Column.DRIVING_CMH2O)).isGreaterThan(1.4 * of(both, Column.DRIVING_CMH2O));
    }

    @Test
    void gasThatCannotLeaveThePleuraPressesOnBothLungs() {
        Mechanics m = Mechanics.linear(8, 50).withLungs(APART.withCurve(5, 6).withRecruitment(new Recruitment(0.85, 8, 4, -1, 3, 2.3, 30, 0.6, 5, 15)));
        List<double[]> rows = Bench.rows(m, BreathSettings.pressure(15, 14, 1.2, 0, 5), 600, s -> s.add(Change.at(60, Knob.PLEURAL_LEAK, How.SET, 2)));
        double[] before = Bench.rowFrom(rows, 50), after = last(rows);
        assertThat(of(after, Column.PLEURAL_GAS_ML)).isGreaterThan(500);
        assertThat(of(after, Column.FIRST_TIDAL_ML)).as("the collapsed side").isLessThan(0.7 * of(before, Column.FIRST_TIDAL_ML));
        assertThat(of(after, Column.FIRST_END_ML)).isLessThan(of(before, Column.FIRST_END_ML) - 100);
        assertThat(of(after, Column.SECOND_END_ML)).as("the mediastinum gives way").isLessThan(of(before, Column.SECOND_END_ML) - 50);
        assertThat(of(after, Column.SHUNT_ADDED)).as("collapsed lung is passed by blood").isGreaterThan(of(before, Column.SHUNT_ADDED) + 0.1);
        assertThat(of(after, Column.INSPIRED_ML)).as("less volume at the same pressure").isLessThan(0.85 * of(before, Column.INSPIRED_ML));
    }

    @Test
    void aSlowPartFillsLastAndTrapsMost() {
        Mechanics m = Mechanics.linear(15, 50).withLungs(Lungs.LINEAR.withSlow(0.5, 6));
        List<double[]> rows = Bench.rows(m, BreathSettings.volume(450, 20, 1, 0, 0), 120, s -> { });
        double[] r = last(rows);
        assertThat(of(r, Column.SECOND_TIDAL_ML)).isLessThan(of(r, Column.FIRST_TIDAL_ML));
        assertThat(of(r, Column.SECOND_END_ML)).isGreaterThan(of(r, Column.FIRST_END_ML));
    }

    @Test
    void unevenLungsAgreeWithTheExactTwoCompartments() {
        Mechanics plain = Mechanics.linear(15, 50).withFilterAndCircuit(2, 3, 0).withTube(Rohrer.NONE).withChestWall(0);
        BreathSettings s = BreathSettings.volume(450, 18, 1, 0.2, 5);
        BreathNumbers exact = new TwoCompartments(plain.withSlow(0.4, 5), s).steady(), ours = SteadyBreath.of(plain.withLungs(Lungs.LINEAR.withSlow(0.4, 5)), s, FREE);
        // the exact one has a circuit of 0.02 mL/cmH2O, which is all that differs without a chest wall that both share
        assertThat(ours.plateauCmH2O()).isCloseTo(exact.plateauCmH2O(), within(0.02));
        assertThat(ours.autoPeepCmH2O()).isCloseTo(exact.autoPeepCmH2O(), within(0.02));
        assertThat(ours.peakCmH2O()).isCloseTo(exact.peakCmH2O(), within(0.02));
        assertThat(ours.meanCmH2O()).isCloseTo(exact.meanCmH2O(), within(0.02));
    }

    @Test
    void energyIsTheSumOfItsShares() {
        List<double[]> rows = Bench.rows(STIFF, SMALL, 30, s -> { });
        double[] r = last(rows);
        assertThat(of(r, Column.ENERGY_ELASTIC_J) + of(r, Column.ENERGY_RESISTIVE_J) + of(r, Column.ENERGY_PEEP_J)).isCloseTo(of(r, Column.ENERGY_J), within(1e-9));
        assertThat(of(r, Column.ENERGY_ELASTIC_J)).isBetween(0.8 * 0.5 * 0.4 * of(r, Column.DRIVING_CMH2O) * 0.0980665, 1.2 * 0.5 * 0.4 * of(r, Column.DRIVING_CMH2O) * 0.0980665);
    }
}
