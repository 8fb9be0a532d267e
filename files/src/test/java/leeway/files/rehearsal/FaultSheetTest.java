package leeway.files.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import leeway.core.rehearsal.Effect;
import leeway.core.rehearsal.Fault;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.yaml.Complaint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fault as a sheet: what may be written, and what is said where it is wrong. */
class FaultSheetTest {
    @TempDir Path folder;

    private List<String> complaints(String effect) throws Exception {
        Catalogue own = write(effect);
        return own.read(Kinds.FAULT, "mine").problems().stream().map(Complaint::line).map(l -> l.replaceFirst("^.*mine.yaml:", "")).toList();
    }

    private Catalogue write(String effect) throws Exception {
        Files.writeString(folder.resolve("mine.yaml"), """
                fault: mine
                source: ours
                group: circuit
                priority: high
                first sign: A sign.
                effects:
                  - %s
                crew time: {median: 12 s, at worst: 30 s, source: timed in our training}
                do: [Push it back on.]
                """.formatted(effect));
        return Catalogue.of(List.of(folder));
    }

    private Effect effect(String effect) throws Exception {
        Fault fault = write(effect).read(Kinds.FAULT, "mine").good().orElseThrow();
        assertThat(fault.effects()).hasSize(1);
        return fault.effects().get(0);
    }

    @Test void anEffectIsReadInTheUnitOfWhatItChanges() throws Exception {
        Effect e = effect("{what: oxygen uptake, by: 0.1 L/min, over: 2 min}");
        assertThat(e.knob()).isEqualTo(Knob.OXYGEN_UPTAKE);
        assertThat(e.how()).isEqualTo(How.PLUS);
        assertThat(e.value()).as("mL/min").isEqualTo(100);
        assertThat(e.rampS()).isEqualTo(120);
    }

    @Test void aDifferenceOfTemperaturesIsNoTemperature() throws Exception {
        assertThat(effect("{what: temperature, by: 1.5 Cel}").value()).isEqualTo(1.5);
    }

    @Test void anAltitudeIsTakenForThePressureThere() throws Exception {
        // ISO 2533: 2438.4 m (8000 ft) is 752.6 hPa, 564.5 mmHg
        assertThat(effect("{what: barometer, to: 8000 ft}").value()).isBetween(564.4, 564.6);
    }

    @Test void theNearestNameIsOffered() throws Exception {
        assertThat(complaints("{what: leak cicuit, by: 20 L/min}")).singleElement().asString().contains("leak cicuit").contains("Did you mean \"leak circuit\"?");
        assertThat(complaints("{what: sensor gain, on: ventilator airway presure, to: 0}")).singleElement().asString().contains("Did you mean \"ventilator airway pressure\"?");
    }

    @Test void whatIsWrongWithAnEffectIsSaidAtItsPlace() throws Exception {
        assertThat(complaints("{what: leak circuit, by: 20}")).singleElement().asString().contains("has no unit");
        assertThat(complaints("{what: leak circuit, by: 20 cmH2O}")).singleElement().asString().contains("is not a flow");
        assertThat(complaints("{what: leak circuit}")).singleElement().asString().contains("one of \"to\", \"by\" and \"times\"");
        assertThat(complaints("{what: leak circuit, by: 20 L/min, times: 2}")).singleElement().asString().contains("not 2 of them");
        assertThat(complaints("{what: store open, to: 0}")).singleElement().asString().contains("needs \"on\"");
        assertThat(complaints("{what: leak circuit, on: all, by: 20 L/min}")).singleElement().asString().contains("there is only one");
        assertThat(complaints("{what: airway closed, to: 5}")).singleElement().asString().contains("lies between");
    }
}
