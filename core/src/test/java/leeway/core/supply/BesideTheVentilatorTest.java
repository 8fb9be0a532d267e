package leeway.core.supply;

import static leeway.core.supply.Kits.cylinder;
import static leeway.core.supply.Kits.leg;
import static leeway.core.supply.Kits.need;
import static leeway.core.supply.Kits.on;
import static leeway.core.supply.Kits.pure;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Kit;
import leeway.core.kit.Policy;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.kit.Ventilator.VolumeBasis;
import leeway.core.run.Draw;
import leeway.core.run.Flux;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.Event;
import leeway.core.transport.KitAlone;
import leeway.core.transport.Leg;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

/** What is drawn beside the patient's breaths: start-up check, standby, nebuliser, suction, the way home; and what follows when a pack is empty. */
class BesideTheVentilatorTest {
    private static final Store LARGE = cylinder("large", 50, 200, 15, 1, 0, Kits.EXACT);
    private static final Leg HOUR = on(leg("a", 60, 60, "large"), "own", 25);

    private static Ventilator.Gas gas(double checkL, double standbyLPerMin, double fio2Error) {
        return new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE), OptionalDouble.empty(), false, 0, 0, 0, standbyLPerMin, checkL, 2.7, 6, false, VolumeBasis.FREE,
                Ventilator.Altitude.COMPENSATED, fio2Error);
    }

    private static Ventilator turbine(double checkL, double standbyLPerMin, double fio2Error) {
        return Kits.ventilator("turbine", Ventilator.Drive.TURBINE, gas(checkL, standbyLPerMin, fio2Error));
    }

    private static Transport transport(Ventilator v, List<Store> oxygen, List<PowerStore> power, List<Event> events, KitAlone alone, Policy policy, Leg... legs) {
        Transport t = Kits.transport(v, oxygen, power, events, 0, policy, legs);
        return new Transport(t.title(), null, null, null, v, null, null, null, t.strategy(), t.prescribed(), t.oxygen(), t.power(), t.legs(), t.events(), t.whatIf(), policy, Map.of(), 0,
                Optional.empty(), Optional.empty(), List.of(), List.of(), "", alone);
    }

    private static SupplyResult of(Transport t, List<LegNeed> needs) { return Supply.of(t, needs, Optional.empty(), 1, 500); }

    private static final List<PowerStore> POWER = List.of(Kits.pack("own", 0.9, 1), Kits.mains("socket"));

    private static Event use(String what, double atMin, double lPerMin, double forS) {
        return new Event(atMin, Settings.NONE, OptionalDouble.of(forS), Optional.empty(), Optional.of(new Event.Use(what, lPerMin)));
    }

    @Test
    void theStartUpCheckAndStandingByAreTakenBeforeDepartureAndAreNotNeedOfTheJourney() {
        Ventilator v = turbine(5, 0.1, 0);
        SupplyResult plain = of(transport(turbine(0, 0, 0), List.of(LARGE), POWER, List.of(), KitAlone.NONE, Kits.POLICY, HOUR), List.of(pure(5)));
        SupplyResult after = of(transport(v, List.of(LARGE), POWER, List.of(), new KitAlone(30, List.of()), Kits.POLICY, HOUR), List.of(pure(5)));
        assertThat(after.oxygen().beforeL()).isCloseTo(8, within(1e-12));
        assertThat(after.oxygen().neededL()).isEqualTo(plain.oxygen().neededL());
        assertThat(plain.oxygen().leftAtEndMin().getAsDouble() - after.oxygen().leftAtEndMin().getAsDouble()).isCloseTo(8.0 / 5, within(1e-9));
        assertThat(plain.oxygen().handovers().get(0).gaugeBar()).isGreaterThan(after.oxygen().handovers().get(0).gaugeBar());
        assertThat(after.assumed()).contains("the start-up check and 30 min of standby takes 8.0 L after the gauge was read, not counted as needed");
        double standbyWh = 4 * 30 / 60.0;
        double load = after.power().orElseThrow().byLeg().get(0).loadW();
        assertThat(plain.power().orElseThrow().withoutExternalMin().getAsDouble() - after.power().orElseThrow().withoutExternalMin().getAsDouble()).isCloseTo(standbyWh / load * 60, within(1e-6));
    }

    @Test
    void nebuliserAndSuctionAreDrawnBesideTheVentilatorInTheWalkAndInTheLoop() {
        List<Event> events = List.of(use("nebuliser", 10, 8, 600), use("suction", 40, 30, 30));
        Transport t = transport(turbine(0, 0, 0), List.of(LARGE), POWER, events, KitAlone.NONE, Kits.POLICY, HOUR);
        SupplyResult result = of(t, List.of(pure(5)));
        assertThat(result.oxygen().neededL().p50()).isCloseTo(300 + 80 + 15, within(1e-9));
        assertThat(result.assumed()).anyMatch(a -> a.startsWith("nebuliser at 10 min: 8 L/min for 10.0 min, 80 L"));
        double[] endS = { 3600 };
        Script script = new Script().base(Knob.FIO2_SET, 1.0).base(Knob.BAROMETER, 760).base(Knob.VENTILATOR_ON, 0);
        SupplyPart.plan(t, endS, script);
        SupplyPart part = SupplyPart.of(t, List.of(pure(5)), endS, new Draw(1, 0));
        Now n = new Loop(part).begin(script);
        double before = part.levelL(n, 0);
        new Loop(part).to(3600, n, script, Sink.NONE);
        assertThat(before - part.levelL(n, 0)).isCloseTo(95, within(1e-6));
        assertThat(part.ventedL(n)).isCloseTo(95, within(1e-6));
        var weak = transport(turbine(0, 0, 0), List.of(Kits.concentrator("c", 5)), POWER, events, KitAlone.NONE, Kits.POLICY, on(leg("a", 60, 60, "c"), "own", 25));
        assertThat(of(weak, List.of(need(8, 0.4))).remarks()).contains("a: a concentrator has no pressure to drive suction.");
    }

    @Test
    void theHighSideOfTheFio2ErrorIsShownAndPureOxygenHasNone() {
        Ventilator v = turbine(0, 0, 0.05);
        var o = of(transport(v, List.of(LARGE), POWER, List.of(), KitAlone.NONE, Kits.POLICY, HOUR), List.of(need(10, 0.6))).oxygen();
        assertThat(o.byLeg().get(0).drawLPerMin()).isCloseTo(10 * 0.39 / 0.79, within(1e-9));
        assertThat(o.high().orElseThrow().drawLPerMin().get(0)).isCloseTo(10 * 0.44 / 0.79, within(1e-9));
        assertThat(o.high().orElseThrow().neededL().p50() / o.neededL().p50()).isCloseTo(0.44 / 0.39, within(1e-9));
        assertThat(of(transport(v, List.of(LARGE), POWER, List.of(), KitAlone.NONE, Kits.POLICY, HOUR), List.of(pure(10))).oxygen().high()).isEmpty();
        Store just = cylinder("large", 300 / leeway.core.gas.RealOxygen.usableL(1, 200, 15, 0), 200, 15, 1, 0, Kits.EXACT);
        Policy bare = new Policy("bare", 0.01, 0.01, 0, 0, false, Optional.empty(), null, null, "invented");
        var close = of(transport(v, List.of(just), POWER, List.of(), KitAlone.NONE, bare, HOUR), List.of(need(10, 0.58)));
        assertThat(close.remarks()).anyMatch(r -> r.startsWith("Where the ventilator gives 5 points more oxygen than is set"));
    }

    @Test
    void aSecondPackFollowsWhereTheFirstIsEmptyInTheWalkAndInTheLoop() {
        PowerStore second = new PowerStore("second", false, Optional.of(Kits.PACK), 1, 1, 0, Optional.of("own"));
        Leg day = on(leg("a", 350, 350, "w"), "own", 15);
        Transport one = transport(turbine(0, 0, 0), List.of(Kits.wall("w")), List.of(Kits.pack("own", 0.9, 1)), List.of(), KitAlone.NONE, Kits.POLICY, day);
        Transport two = transport(turbine(0, 0, 0), List.of(Kits.wall("w")), List.of(Kits.pack("own", 0.9, 1), second), List.of(), KitAlone.NONE, Kits.POLICY, day);
        var alone = of(one, List.of(pure(5))).power().orElseThrow();
        var both = of(two, List.of(pure(5))).power().orElseThrow();
        double firstWh = Charge.usableWh(Kits.PACK, 0.9, 1, 0, 15);
        double secondWh = Charge.usableWh(Kits.PACK, 1, 1, 0, 15);
        assertThat(both.usableWh()).isCloseTo(firstWh + secondWh, within(1e-9));
        assertThat(both.withoutExternalMin()).hasValueCloseTo((firstWh + secondWh) / both.byLeg().get(0).loadW() * 60, within(1e-6));
        assertThat(alone.emptyChance()).isGreaterThan(0.99);
        assertThat(both.emptyChance()).isZero();
        double[] endS = { 36_000 };
        Script script = new Script().base(Knob.FIO2_SET, 1.0).base(Knob.BAROMETER, 760);
        SupplyPart.plan(two, endS, script);
        SupplyPart part = SupplyPart.of(two, List.of(pure(5)), endS, new Draw(1, 0));
        List<Double> gone = new ArrayList<>();
        Now n = new Loop(part).begin(script);
        new Loop(part).to(36_000, n, script, new Sink() {
            @Override public void event(double tS, int what, double value) { if (what == SupplyPart.POWER_GONE) gone.add(tS); }
        });
        assertThat(gone).singleElement().satisfies(s -> assertThat(s).isCloseTo((firstWh + secondWh) / 13.1 * 3600, within(5.0)));
    }

    @Test
    void theSmallestSetOfSparePacksIsWhatTryingAllOfThemFinds() {
        List<Kit.Pack> kinds = List.of(new Kit.Pack("heavy", "pack", Optional.of(Kits.PACK), OptionalDouble.of(1.1), 3), new Kit.Pack("small", "small", Optional.of(Kits.PACK), OptionalDouble.of(0.9), 2),
                new Kit.Pack("odd", "odd", Optional.of(Kits.PACK), OptionalDouble.of(0.95), 1));
        Leg[] legs = { on(leg("a", 100, 150, "w"), "own", 15), on(leg("b", 60, 90, "w"), "socket", 15), on(leg("c", 300, 420, "w"), "own", -5) };
        Transport t = transport(turbine(0, 0, 0), List.of(Kits.wall("w")), POWER, List.of(), KitAlone.NONE, Kits.POLICY, legs);
        Route route = new Route(t, List.of(pure(6), pure(6), pure(6)));
        Drawn drawn = new Drawn(1, 1000, () -> false);
        PackKitting kitting = new PackKitting(route, new Chances(route, drawn), kinds, drawn);
        var best = kitting.best().orElseThrow();
        double lightest = Double.POSITIVE_INFINITY;
        int fewest = 0;
        for (int a = 0; a <= 3; a++) for (int b = 0; b <= 2; b++) for (int c = 0; c <= 1; c++) {
            double mass = a * 1.1 + b * 0.9 + c * 0.95;
            if (kitting.chance(new int[] { a, b, c }) < 0 || mass > lightest + 1e-9 || Math.abs(mass - lightest) < 1e-9 && a + b + c >= fewest) continue;
            lightest = mass;
            fewest = a + b + c;
        }
        assertThat(best.massKg()).isCloseTo(lightest, within(1e-9));
        assertThat(best.count()).isEqualTo(fewest).isGreaterThan(1);
        assertThat(best.emptyChance()).isLessThanOrEqualTo(0.01);
        // and the plan with so many packs of that kind in line holds, with one less it does not
        var with = kit(t, kinds);
        assertThat(with.power().orElseThrow().take()).contains(best);
    }

    private static SupplyResult kit(Transport t, List<Kit.Pack> packs) {
        return Supply.of(t, List.of(pure(6), pure(6), pure(6)), Optional.of(new Kit("kit", List.of(), packs, "invented")), 1, 1000);
    }

    @Test
    void standingByOnTheWayHomeDrainsAndTrulyOffDoesNot() {
        KitAlone standby = new KitAlone(0, List.of(new KitAlone.Back("home", 120, OptionalDouble.of(25), Optional.empty(), true)));
        KitAlone off = new KitAlone(0, List.of(new KitAlone.Back("home", 120, OptionalDouble.of(25), Optional.empty(), false)));
        var on = of(transport(turbine(0, 0.1, 0), List.of(LARGE), POWER, List.of(), standby, Kits.POLICY, HOUR), List.of(pure(5))).home().orElseThrow();
        var truly = of(transport(turbine(0, 0.1, 0), List.of(LARGE), POWER, List.of(), off, Kits.POLICY, HOUR), List.of(pure(5))).home().orElseThrow();
        assertThat(on.atMin()).isEqualTo(180);
        assertThat(truly.stores().get(0).leftL() - on.stores().get(0).leftL()).isCloseTo(12, within(1e-9));
        assertThat(truly.packs().get(0).leftWh() - on.packs().get(0).leftWh()).isCloseTo(8, within(1e-9));
        assertThat(on.stores().get(0).gaugeBar().getAsDouble()).isLessThan(truly.stores().get(0).gaugeBar().getAsDouble());
        KitAlone long_ = new KitAlone(0, List.of(new KitAlone.Back("home", 2000, OptionalDouble.of(25), Optional.empty(), true)));
        var flat = of(transport(turbine(0, 0.1, 0), List.of(LARGE), POWER, List.of(), long_, Kits.POLICY, HOUR), List.of(pure(5)));
        assertThat(flat.remarks()).anyMatch(r -> r.startsWith("On the way home the charge ends in standby"));
        KitAlone plugged = new KitAlone(0, List.of(new KitAlone.Back("home", 600, OptionalDouble.of(25), Optional.of("socket"), true)));
        var full = of(transport(turbine(0, 0, 0), List.of(LARGE), POWER, List.of(), plugged, Kits.POLICY, HOUR), List.of(pure(5))).home().orElseThrow();
        assertThat(full.packs().get(0).charge()).isCloseTo(1, within(1e-9));
    }

    @Test
    void anotherMixtureAndAnotherVentilatorAreComputedAndAHandBagIsNoChoice() {
        Ventilator pneumatic = Kits.pneumatic(VolumeBasis.FREE, 0.5, true, 0.7);
        Ventilator bag = Kits.ventilator("bag", Ventilator.Drive.HAND, gas(0, 0, 0));
        Transport t = transport(pneumatic, List.of(LARGE), POWER, List.of(), KitAlone.NONE, Kits.POLICY, HOUR);
        var savings = Supply.of(t, List.of(need(8, 0.7)), Optional.empty(), List.of(pneumatic, bag, turbine(0, 0, 0)), 1, 500).oxygen().savings();
        assertThat(savings).extracting(SupplyResult.Saving::what).containsExactly("its air mixture of 50 %", "a a quarter shorter", "FiO2 10 points lower", "ventilator: turbine");
        assertThat(savings.get(0).savesL()).isCloseTo(8 * 0.2 / 0.79 * 60, within(1e-6));
        assertThat(savings.get(3).savesL()).isCloseTo(0.7 * 60, within(1e-6));
    }

    @Test
    void whatALoopDeliversInStandbyIsItsSheetsAndNothingMore() {
        Transport t = transport(turbine(0, 0.1, 0), List.of(LARGE), POWER, List.of(), KitAlone.NONE, Kits.POLICY, HOUR);
        double[] endS = { 3600 };
        Script script = new Script().base(Knob.FIO2_SET, 1.0).base(Knob.BAROMETER, 760);
        SupplyPart.plan(t, endS, script);
        script.add(leeway.core.run.Change.at(0, Knob.STANDBY, How.SET, 1));
        SupplyPart part = SupplyPart.of(t, List.of(pure(5)), endS, new Draw(1, 0));
        Now n = new Loop(part).begin(script);
        double wh = part.chargeWh(n, 0);
        new Loop(part).to(3600, n, script, Sink.NONE);
        assertThat(part.drawnL(n)).isCloseTo(6, within(1e-6));
        assertThat(wh - part.chargeWh(n, 0)).isCloseTo(4, within(1e-6));
        assertThat(n.flux[Flux.DELIVERED_ML.ordinal()]).isZero();
    }
}
