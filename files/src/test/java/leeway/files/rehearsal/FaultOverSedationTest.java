package leeway.files.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Breathing.Row;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

/** A fault that ends the drive lasts, whatever the sedation given before it does meanwhile. */
class FaultOverSedationTest {
    private static final String LASTING = """
            transport: short
            patient: {sex: female, height: 166 cm, weight: 68 kg, age: 61 years, illness: healthy lungs, airway: face mask adult, lungs: {effort: normal}, sedation: moderate}
            ventilator: free flow
            settings: {bias flow: 6 L/min}
            oxygen: [{name: portable, cylinder: 10 L, pressure: 150 bar, read at: 20 Cel}]
            legs: [{leg: to the ward, takes: 12 min, at worst: 25 min, oxygen: portable}]
            """;
    private static final String WEARING_OFF = LASTING.replace("sedation: moderate", "sedation: moderate, sedation half-time: 20 min");

    @Test void whoStopsBreathingIsNotWokenByTheSedationBefore() {
        Rehearsal lasting = Nights.one(LASTING, "effort stops"), wearingOff = Nights.one(WEARING_OFF, "effort stops");
        assertThat(lasting.harm()).isPresent();
        assertThat(wearingOff.harm()).isPresent();
        assertThat(wearingOff.harm().orElseThrow().afterS()).isBetween(0.5 * lasting.harm().orElseThrow().afterS(), 1.5 * lasting.harm().orElseThrow().afterS());
    }

    @Test void norInTheRunOfAJourneyThatAsksWhatIf() {
        Transport t = Nights.read(WEARING_OFF + "what if: [{at: 2 min, fault: effort stops}]\n");
        List<Row> rows = new ArrayList<>();
        Breathing.of(t, Nights.settings(t), Nights.NOISES, Nights.FAULTS).rows(500, rows::add);
        assertThat(rows).filteredOn(r -> r.atS() > 130 && r.expiredMl() > 1).isEmpty();
    }
}
