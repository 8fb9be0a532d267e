package leeway.files.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Breathing.Row;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

/** A fault turns a device's knobs no further than the device lets them. */
class FaultOnDeviceTest {
    private static List<Row> struck(String text, String fault) {
        Transport t = Nights.read(text + "what if: [{at: 2 min, fault: %s}]\n".formatted(fault));
        List<Row> rows = new ArrayList<>();
        Breathing.of(t, Nights.settings(t), Nights.NOISES, Nights.FAULTS).rows(240, row -> rows.add(row));
        return rows.stream().filter(r -> r.atS() > 180).toList();
    }

    @Test void aDeviceThatBeginsAtFiftyPercentOxygenStaysThere() {
        String other = "settings of another patient";
        assertThat(struck(Nights.SHORT, other)).isNotEmpty().allSatisfy(r -> assertThat(r.fio2().orElseThrow()).as("example pneumatic begins at 50 %").isBetween(0.495, 0.505));
        assertThat(struck(Nights.SHORT.replace("example pneumatic", "example turbine"), other)).isNotEmpty()
                .allSatisfy(r -> assertThat(r.fio2().orElseThrow()).as("the turbine has 40 %").isBetween(0.395, 0.405));
    }

    @Test void aRateGoesNoHigherThanItsKnob() {
        List<Row> fast = struck(Nights.SHORT.replace("peep: 5 cmH2O", "peep: 5 cmH2O, rate: 30 /min, inspiratory time: 0.6 s"), "overventilation");
        assertThat(fast).hasSizeGreaterThan(10);
        for (int i = 1; i < fast.size(); i++) assertThat(fast.get(i).atS() - fast.get(i - 1).atS()).as("40 /min at most").isBetween(1.49, 1.51);
    }
}
