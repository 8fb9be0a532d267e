package leeway.core.supply;

import static leeway.core.supply.Kits.cylinder;
import static leeway.core.supply.Kits.leg;
import static leeway.core.supply.Kits.on;
import static leeway.core.supply.Kits.pure;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import leeway.core.kit.Ventilator;
import leeway.core.kit.Ventilator.VolumeBasis;
import leeway.core.run.Change;
import leeway.core.run.Claims;
import leeway.core.run.Draw;
import leeway.core.run.Flux;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

class SupplyPartTest {
    private static final double BTPS_PER_FREE = 1 / OxygenDraw.freePer(VolumeBasis.BTPS, 1013.25);

    /** Breathes a constant flow of free gas, every 3 s, while the ventilator is on. */
    private static final class Steady implements Part {
        private final double freeLPerMin;

        Steady(double freeLPerMin) { this.freeLPerMin = freeLPerMin; }

        @Override public void claim(Claims claims) { }

        @Override public void begin(Now n) { }

        @Override public double nextS(Now n, double latestS) { return 3 * (Math.floor(n.tS / 3 + 1e-9) + 1); }

        @Override public void pass(Now n, double dtS) {
            if (n.on(Knob.VENTILATOR_ON) && !n.on(Knob.STANDBY)) n.flux[Flux.DELIVERED_ML.ordinal()] = freeLPerMin * BTPS_PER_FREE * 1000 * dtS / 60;
        }
    }

    private static final class Heard implements Sink {
        final List<Integer> what = new ArrayList<>();
        final List<Double> atS = new ArrayList<>();

        @Override public void event(double tS, int event, double value) {
            what.add(event);
            atS.add(tS);
        }
    }

    private static Transport with(Ventilator v, List<Store> oxygen, Leg... legs) {
        return Kits.transport(v, oxygen, List.of(Kits.pack("own", 0.9, 1), Kits.mains("socket")), List.of(), 0, Kits.POLICY, legs);
    }

    private static Script script(Transport t, double[] endS, double fio2) {
        Script script = new Script().base(Knob.FIO2_SET, fio2).base(Knob.BAROMETER, leeway.core.gas.Barometer.mmHg(1013.25));
        SupplyPart.plan(t, endS, script);
        return script;
    }

    @Test
    void gasThatLeftTheStoresIsGasDeliveredVentedAndLeftInTheHoseOnAThousandRandomJourneys() {
        var random = new SplittableRandom(12);
        for (int i = 0; i < 1000; i++) {
            int stores = random.nextInt(1, 4);
            List<Store> oxygen = new ArrayList<>();
            for (int s = 0; s < stores; s++) oxygen.add(cylinder("s" + s, random.nextDouble(0.5, 5), random.nextDouble(2, 200), 15, random.nextInt(1, 3), 2, Kits.USUAL));
            String[] names = random.ints(0, stores).distinct().limit(stores).mapToObj(s -> "s" + s).toArray(String[]::new);
            Ventilator v = i % 2 == 0 ? Kits.turbine(VolumeBasis.BTPS) : Kits.pneumatic(VolumeBasis.BTPS, 0.5, true, 0.7);
            Transport t = with(v, oxygen, on(leg("a", 20, 30, names), "own", 15), on(leg("b", 20, 30, names[0]), "socket", 15));
            double[] endS = { 1200, 2400 };
            Script script = script(t, endS, random.nextDouble(0.5, 1));
            for (int c = 0; c < 4; c++) {
                double at = random.nextDouble(0, 2000);
                int k = random.nextInt(stores);
                script.add(Change.during(at, at + random.nextDouble(1, 600), c % 2 == 0 ? Knob.EXTRA_DRAIN : Knob.STORE_OPEN, How.SET, c % 2 == 0 ? random.nextDouble(0, 60) : 0));
                script.add(new Change(at, at + 100, 0, c % 2 == 0 ? Knob.STORE_OPEN : Knob.EXTRA_DRAIN, k, How.SET, c % 2 == 0 ? 0 : 30));
            }
            SupplyPart part = SupplyPart.of(t, List.of(pure(8), pure(8)), endS, new Draw(3, i));
            Loop loop = new Loop(new Steady(random.nextDouble(2, 20)), part);
            Now n = loop.begin(script);
            double before = total(part, n, stores) + part.hoseL(n);
            loop.to(2400, n, script, Sink.NONE);
            assertThat(total(part, n, stores) + part.hoseL(n) + part.drawnL(n) + part.ventedL(n)).as("journey %s", i).isCloseTo(before, within(1e-9 * before));
        }
    }

    private static double total(SupplyPart part, Now n, int stores) {
        double sum = 0;
        for (int s = 0; s < stores; s++) sum += part.levelL(n, s);
        return sum;
    }

    @Test
    void theLoopEndsWhereTheWalkAtMediansEnds() {
        Transport t = with(Kits.pneumatic(VolumeBasis.BTPS, 0.5, true, 0.7), List.of(cylinder("small", 2, 150, 15, 1, 5, Kits.USUAL), cylinder("large", 10, 200, 15, 1, 5, Kits.USUAL)),
                on(leg("a", 60, 60, "small", "large"), "own", 15), on(leg("b", 30, 30, "large"), "own", 15));
        LegNeed need = Kits.need(10 * BTPS_PER_FREE, 0.6);
        double[] endS = { 3600, 5400 };
        Script script = script(t, endS, 0.6);
        SupplyPart part = SupplyPart.of(t, List.of(need, need), endS, new Draw(1, 0));
        Loop loop = new Loop(new Steady(10), part);
        Now n = loop.begin(script);
        Heard heard = new Heard();
        loop.to(5400, n, script, heard);
        Route route = new Route(t, List.of(need, need));
        Trial trial = new Trial(route);
        trial.fill();
        trial.walk(route.medianMin, 1, null, null);
        assertThat(part.levelL(n, 0)).isZero();
        assertThat(part.levelL(n, 1)).isCloseTo(trial.levelL[1], within(1e-6));
        assertThat(heard.what).containsExactly(SupplyPart.STORE_EMPTY);
        assertThat(part.gaugeBar(n, 0)).isCloseTo(5, within(1e-6));
    }

    @Test
    void aClosedCylinderStopsAPneumaticDeviceOnceTheHoseHasBledDownAndOpeningItStartsItAgain() {
        Transport t = with(Kits.pneumatic(VolumeBasis.BTPS, 0.5, true, 0.7), List.of(cylinder("o", 2, 200, 15, 2, 5, Kits.USUAL), cylinder("other", 2, 200, 15, 1, 5, Kits.USUAL)),
                on(leg("a", 60, 60, "o", "other"), "own", 15));
        double[] endS = { 3600 };
        Script script = script(t, endS, 0.6);
        Change closed = Change.at(600, Knob.STORE_OPEN, How.SET, 0);
        script.add(closed);
        SupplyPart part = SupplyPart.of(t, List.of(pure(8)), endS, new Draw(1, 0));
        Loop loop = new Loop(new Steady(8), part);
        Now n = loop.begin(script);
        Heard heard = new Heard();
        loop.to(900, n, script, heard);
        assertThat(n.on(Knob.VENTILATOR_ON)).isFalse();
        assertThat(n.get(Level.INLET_BAR)).isLessThan(2.7);
        assertThat(heard.what).containsExactly(SupplyPart.GAS_GONE);
        assertThat(heard.atS.get(0)).isBetween(603.0, 612.0);
        assertThat(part.levelL(n, 1)).as("the other cylinder waits for somebody to turn to it").isEqualTo(new Route(t, List.of(pure(8))).usableL[1]);
        Now branch = n.copy();
        Script treated = script.copy();
        treated.end(closed, 900);
        loop.to(960, branch, treated, heard);
        assertThat(branch.on(Knob.VENTILATOR_ON)).isTrue();
        assertThat(branch.get(Level.INLET_BAR)).isCloseTo(SupplyPart.SUPPLY_BAR, within(1e-9));
        loop.to(960, n, script, heard);
        assertThat(n.on(Knob.VENTILATOR_ON)).isFalse();
    }

    @Test
    void aTurbineWithoutOxygenGoesOnWithAir() {
        Transport t = with(Kits.turbine(VolumeBasis.BTPS), List.of(cylinder("o", 1, 20, 15, 1, 5, Kits.USUAL)), on(leg("a", 60, 60, "o"), "own", 15));
        double[] endS = { 3600 };
        Script script = script(t, endS, 1);
        SupplyPart part = SupplyPart.of(t, List.of(pure(8)), endS, new Draw(1, 0));
        Loop loop = new Loop(new Steady(8), part);
        Now n = loop.begin(script);
        Heard heard = new Heard();
        loop.to(1200, n, script, heard);
        assertThat(heard.what).containsExactly(SupplyPart.STORE_EMPTY, SupplyPart.GAS_GONE);
        assertThat(n.on(Knob.VENTILATOR_ON)).isTrue();
        assertThat(n.get(Knob.SOURCE_OXYGEN)).isEqualTo(0.21);
    }

    @Test
    void withoutSocketAndChargeTheVentilatorStopsAndTheSocketBringsItBack() {
        Transport t = with(Kits.turbine(VolumeBasis.BTPS), List.of(Kits.wall("w")), on(leg("a", 600, 600, "w"), "own", 15));
        double[] endS = { 36_000 };
        Script script = script(t, endS, 0.6);
        Change plugged = Change.at(30_000, Knob.MAINS, How.SET, 1);
        script.add(plugged);
        SupplyPart part = SupplyPart.of(t, List.of(pure(8)), endS, new Draw(1, 0));
        Loop loop = new Loop(new Steady(8), part);
        Now n = loop.begin(script);
        Heard heard = new Heard();
        loop.to(29_000, n, script, heard);
        assertThat(heard.what).containsExactly(SupplyPart.POWER_GONE);
        double wh = Charge.usableWh(Kits.PACK, 0.9, 1, 0, 15);
        assertThat(heard.atS.get(0)).isCloseTo(wh / 13.1 * 3600, within(3.0));
        assertThat(n.get(Level.POWERLESS)).isEqualTo(1);
        assertThat(n.get(Level.CHARGE)).isCloseTo(0.1, within(1e-9));
        loop.to(31_000, n, script, heard);
        assertThat(heard.what).containsExactly(SupplyPart.POWER_GONE, SupplyPart.POWER_BACK);
        assertThat(n.on(Knob.VENTILATOR_ON)).isTrue();
        assertThat(n.get(Level.CHARGE)).isGreaterThan(0.1);
    }
}
