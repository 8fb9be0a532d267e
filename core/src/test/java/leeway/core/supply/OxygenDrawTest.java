package leeway.core.supply;

import static leeway.core.supply.Kits.gas;
import static leeway.core.supply.Kits.need;
import static leeway.core.supply.Kits.pneumatic;
import static leeway.core.supply.Kits.turbine;
import static leeway.core.supply.Kits.ventilator;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import leeway.core.kit.Ventilator;
import leeway.core.kit.Ventilator.VolumeBasis;
import leeway.core.transport.Store;
import org.junit.jupiter.api.Test;

class OxygenDrawTest {
    @Test
    void oxygenInEqualsOxygenOut() {
        var random = new SplittableRandom(7);
        for (int i = 0; i < 1000; i++) {
            double volume = random.nextDouble(0, 30);
            double fio2 = random.nextDouble(0.5, 1);
            LegNeed need = need(volume, fio2).withBiasFlowLPerMin(random.nextDouble(0, 10)).withLeakLPerMin(random.nextDouble(0, 5));
            OxygenDraw draw = OxygenDraw.of(pneumatic(VolumeBasis.BTPS, 0.5, true, 0.7), need);
            double air = draw.mixedLPerMin() - (draw.oxygenLPerMin() - draw.driveLPerMin());
            assertThat(draw.oxygenLPerMin() - draw.driveLPerMin() + air * 0.21).isCloseTo(draw.fio2() * draw.mixedLPerMin(), within(1e-9));
        }
    }

    @Test
    void theFigureWithoutItsWorkingIsTheSame() {
        var random = new SplittableRandom(8);
        for (int i = 0; i < 500; i++) {
            LegNeed need = need(random.nextDouble(0, 30), random.nextDouble(0.21, 1)).withBiasFlowLPerMin(random.nextDouble(0, 10)).withLeakLPerMin(random.nextDouble(0, 5));
            for (Ventilator v : List.of(pneumatic(VolumeBasis.BTPS, 0.5, true, 0.7), pneumatic(VolumeBasis.FREE, 0.5, false, 0), turbine(VolumeBasis.ATPD))) {
                assertThat(OxygenDraw.litresPerMin(v, need, Optional.empty())).isEqualTo(OxygenDraw.of(v, need).oxygenLPerMin());
                for (Store.Type type : List.of(Store.Type.CYLINDER, Store.Type.CONCENTRATOR)) {
                    for (boolean high : new boolean[] {true, false}) {
                        var store = new Store("o", type, Optional.empty(), OptionalDouble.of(2), OptionalDouble.of(150), OptionalDouble.of(15),
                                OptionalDouble.empty(), OptionalDouble.of(5), 1, 0, Kits.EXACT, OptionalDouble.empty(), new Store.Inlet(high, OptionalDouble.empty()));
                        assertThat(OxygenDraw.litresPerMin(v, need, Optional.of(store))).isEqualTo(OxygenDraw.of(v, need, store).oxygenLPerMin());
                    }
                }
            }
        }
    }

    @Test
    void anEntrainedMixtureIsTheLeastThatAPneumaticDeviceGives() {
        OxygenDraw draw = OxygenDraw.of(pneumatic(VolumeBasis.FREE, 0.5, true, 0), need(8, 0.4));
        assertThat(draw.fio2()).isEqualTo(0.5);
        assertThat(draw.working()).anyMatch(line -> line.contains("no FiO2 of 0.40; it gives 0.50"));
        assertThat(OxygenDraw.of(pneumatic(VolumeBasis.FREE, 0.5, false, 0), need(8, 0.6)).fio2()).isEqualTo(1);
        var pure = ventilator("pure", Ventilator.Drive.PNEUMATIC, gas(OptionalDouble.empty(), false, 0, true, VolumeBasis.FREE));
        assertThat(OxygenDraw.of(pure, need(8, 0.6)).oxygenLPerMin()).isEqualTo(8);
    }

    @Test
    void aFlowmeterGivesItsSettingWhateverIsBreathed() {
        var store = new Store("o", Store.Type.CYLINDER, Optional.empty(), OptionalDouble.of(2), OptionalDouble.of(150), OptionalDouble.of(15),
                OptionalDouble.empty(), OptionalDouble.empty(), 1, 0, Kits.EXACT, OptionalDouble.empty(), new Store.Inlet(false, OptionalDouble.of(6)));
        OxygenDraw small = OxygenDraw.of(turbine(VolumeBasis.FREE), need(5, 0.4), store);
        OxygenDraw large = OxygenDraw.of(turbine(VolumeBasis.FREE), need(12, 0.4), store);
        assertThat(small.oxygenLPerMin()).isEqualTo(6).isEqualTo(large.oxygenLPerMin());
        assertThat(small.fio2()).isEqualTo(1);
        assertThat(large.fio2()).isEqualTo(0.21 + 0.79 / 2, within(1e-12));
    }

    @Test
    void aConcentratorEnrichesWithWhatItHas() {
        var store = new Store("c", Store.Type.CONCENTRATOR, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(),
                OptionalDouble.empty(), OptionalDouble.of(5), 1, 0, Kits.EXACT, OptionalDouble.empty(), new Store.Inlet(false, OptionalDouble.empty()));
        assertThat(OxygenDraw.of(turbine(VolumeBasis.FREE), need(10, 0.6), store).fio2()).isEqualTo(0.21 + 0.72 / 2, within(1e-12));
    }

    @Test
    void aHandBagTakesFifteenLitresAndTheSameVolumeTakesLessInThinAir() {
        var bag = ventilator("hand bag", Ventilator.Drive.HAND, gas(OptionalDouble.empty(), false, 0, false, VolumeBasis.BTPS));
        assertThat(OxygenDraw.of(bag, need(8, 1)).oxygenLPerMin()).isEqualTo(15);
        LegNeed low = new LegNeed(8, 0, 0, 15, 1, 22, 5, 1013.25);
        LegNeed high = new LegNeed(8, 0, 0, 15, 1, 22, 5, 752.62);
        var compensated = pneumatic(VolumeBasis.BTPS, 0.5, true, 0);
        assertThat(OxygenDraw.of(compensated, high).oxygenLPerMin()).isLessThan(OxygenDraw.of(compensated, low).oxygenLPerMin());
    }
}
