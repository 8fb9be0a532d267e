package leeway.core.supply;

import static leeway.core.supply.Kits.cylinder;
import static leeway.core.supply.Kits.leg;
import static leeway.core.supply.Kits.need;
import static leeway.core.supply.Kits.on;
import static leeway.core.supply.Kits.pure;
import static leeway.core.supply.Kits.waiting;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.kit.Ventilator.VolumeBasis;
import leeway.core.transport.Event;
import leeway.core.transport.Leg;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

class SupplyTest {
    private static final Ventilator TURBINE = Kits.turbine(VolumeBasis.FREE);
    private static final List<PowerStore> POWER = List.of(Kits.pack("own", 0.9, 1), Kits.mains("socket"));
    private static final Store LARGE = cylinder("large", 50, 200, 15, 1, 0, Kits.EXACT);

    private static SupplyResult of(Ventilator v, List<Store> oxygen, List<Event> events, List<LegNeed> needs, Leg... legs) {
        return Supply.of(Kits.transport(v, oxygen, POWER, events, 0, Kits.POLICY, legs), needs, Optional.empty(), 1, 2000);
    }

    private static SupplyResult turbine(List<LegNeed> needs, Leg... legs) { return of(TURBINE, List.of(LARGE), List.of(), needs, legs); }

    @Test
    void aPackDrainsFasterInTheColdAndChargesOnTheRoad() {
        var power = turbine(List.of(pure(5), pure(5), pure(5)), on(leg("a", 60, 60, "large"), "own", 25), on(leg("b", 60, 60, "large"), "socket", 25),
                on(leg("c", 60, 60, "large"), "own", 0)).power().orElseThrow();
        double load = 5 + 3 + 5 + 0.1 + 5 * 22 * Charge.W_PER_CMH2O_L_PER_MIN / 0.1;
        assertThat(power.byLeg()).allSatisfy(l -> assertThat(l.loadW()).isCloseTo(load, within(1e-9)));
        assertThat(power.byLeg()).extracting(SupplyResult.PowerLeg::from).containsExactly("own", "socket", "own");
        assertThat(power.neededWh()).isCloseTo(2 * load, within(1e-9));
        double capacity = 90 * 0.8;
        double atC = Math.min(capacity * 0.9, capacity * 0.8 - load + Math.min(40, 60 - load)) - load / 0.87;
        assertThat(power.marginMin()).hasValueCloseTo(atC * 0.87 / load * 60, within(1.5)); // median of 2000 charges shown
        assertThat(power.stores()).singleElement().satisfies(p -> assertThat(p.usableWh()).isCloseTo(capacity * 0.87 * 0.8, within(1e-9)));
        double without = 120 + (capacity * 0.8 - 2 * load) * 0.87 / load * 60;
        assertThat(power.withoutExternalMin()).hasValueCloseTo(without, within(1e-6));
    }

    @Test
    void aChargeThatHoldsTheMedianNeedEndsInHalfOfTheJourneys() {
        double load = 5 + 3 + 5 + 0.1 + 5 * 22 * Charge.W_PER_CMH2O_L_PER_MIN / 0.1;
        double minutes = 90 * 0.8 * 0.8 / load * 60;
        var result = turbine(List.of(pure(5)), on(leg("a", minutes, minutes * 1.5, "large"), "own", 25));
        assertThat(result.power().orElseThrow().emptyChance()).isCloseTo(0.5, within(3 * Math.sqrt(0.25 / 2000)));
        assertThat(result.reasons()).anyMatch(r -> r.startsWith("The charge runs out on the way in "));
    }

    @Test
    void whatDoesNotFitTheInletIsAReasonAndWhatNobodyUsesARemark() {
        var pneumatic = Kits.pneumatic(VolumeBasis.FREE, 0.5, true, 0.5);
        var result = of(pneumatic, List.of(Kits.concentrator("c", 5), LARGE), List.of(), List.of(need(8, 0.6)), on(leg("a", 20, 30, "c"), "own", 20));
        assertThat(result.reasons()).anyMatch(r -> r.contains("does not run on it"));
        assertThat(result.remarks()).contains("Store large is used by no leg.");
        var weak = of(TURBINE, List.of(Kits.concentrator("c", 3)), List.of(), List.of(need(10, 0.6)), on(leg("a", 20, 30, "c"), "own", 20));
        assertThat(weak.reasons()).isEmpty();
        assertThat(weak.remarks()).anyMatch(r -> r.contains("FiO2 0.43 instead of 0.60"));
        assertThat(weak.oxygen().marginMin()).isEmpty();
        assertThat(weak.oxygen().stores()).singleElement().satisfies(s -> assertThat(s.freeGasL()).isEmpty());
    }

    @Test
    void pluggedInIsNotChargingInTheColdAndASocketMayBeDeadWhileWaiting() {
        var result = turbine(List.of(pure(5), pure(5)), on(leg("road", 20, 30, "large"), "socket", -5), waiting(on(leg("quay", 20, 30, "large"), "socket", 15)));
        assertThat(result.remarks()).anyMatch(r -> r.equals("road: plugged in, but nothing charges at -5 °C and a load of 15 W."));
        assertThat(result.remarks()).anyMatch(r -> r.startsWith("quay: a vehicle's socket is often dead"));
    }

    @Test
    void aFlushToPureOxygenCostsItsLitresAndAPlannedChangeoverIsMade() {
        var flush = new Event(10, new Settings(Optional.empty(), Map.of(Setting.FIO2, 1.0)), OptionalDouble.of(90), Optional.empty());
        List<Store> oxygen = List.of(LARGE, cylinder("second", 10, 200, 15, 1, 0, Kits.EXACT));
        var plain = of(TURBINE, oxygen, List.of(), List.of(need(10, 0.6)), on(leg("a", 60, 60, "large", "second"), "own", 20)).oxygen();
        var flushed = of(TURBINE, oxygen, List.of(flush), List.of(need(10, 0.6)), on(leg("a", 60, 60, "large", "second"), "own", 20)).oxygen();
        assertThat(flushed.neededL().p50() - plain.neededL().p50()).isCloseTo(10 * 0.4 / 0.79 * 1.5, within(1e-6));
        var over = new Event(30, Settings.NONE, OptionalDouble.empty(), Optional.of("second"));
        var changed = of(TURBINE, oxygen, List.of(over), List.of(need(10, 0.6)), on(leg("a", 60, 60, "large"), "own", 20)).oxygen();
        assertThat(changed.changeovers()).singleElement().satisfies(c -> {
            assertThat(c.store()).isEqualTo("large");
            assertThat(c.to()).isEqualTo("second");
            assertThat(c.why()).isEqualTo("planned");
            assertThat(c.aboutMin()).isCloseTo(30, within(1e-9));
        });
        assertThat(changed.analytic()).isEmpty();
    }

    @Test
    void airAloneNeedsNoOxygen() {
        var o = turbine(List.of(need(8, 0.21)), on(leg("a", 60, 90, "large"), "own", 20)).oxygen();
        assertThat(o.neededL().p99()).isZero();
        assertThat(o.emptyChance()).isZero();
        assertThat(o.marginMin()).isEmpty();
    }

    @Test
    void aPneumaticChangeoverIsBridgedByHand() {
        var pneumatic = Kits.pneumatic(VolumeBasis.FREE, 0.5, true, 0.5);
        var result = of(pneumatic, List.of(cylinder("o", 2, 100, 15, 3, 5, Kits.EXACT)), List.of(), List.of(need(8, 1)), on(leg("a", 40, 50, "o"), "own", 20));
        assertThat(result.oxygen().changeovers()).isNotEmpty().allSatisfy(c -> assertThat(c.handBag()).isTrue());
        assertThat(result.remarks()).anyMatch(r -> r.contains("the hand bag bridges it"));
        assertThat(result.oxygen().series()).singleElement().satisfies(s -> {
            assertThat(s.points()).hasSize(Journey.PARTS + 1);
            assertThat(s.points().get(0).p50()).isCloseTo(result.oxygen().usableL(), within(1e-9));
            assertThat(s.points()).allSatisfy(p -> assertThat(p.p05()).isLessThanOrEqualTo(p.p50()));
        });
    }
}
