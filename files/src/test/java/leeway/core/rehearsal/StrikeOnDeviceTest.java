package leeway.core.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.run.Change;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Script;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every fault sheet on every ventilator sheet: a knob that is turned stands where this device has it. */
class StrikeOnDeviceTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();
    private static final Map<Knob, Setting> KNOBS = Map.ofEntries(Map.entry(Knob.TIDAL_VOLUME_SET, Setting.TIDAL_VOLUME), Map.entry(Knob.RATE_SET, Setting.RATE),
            Map.entry(Knob.INSPIRATORY_TIME_SET, Setting.INSPIRATORY_TIME), Map.entry(Knob.PAUSE_SET, Setting.PAUSE), Map.entry(Knob.INSPIRATORY_PRESSURE_SET, Setting.INSPIRATORY_PRESSURE),
            Map.entry(Knob.SUPPORT_SET, Setting.SUPPORT_PRESSURE), Map.entry(Knob.PEEP_SET, Setting.PEEP), Map.entry(Knob.FIO2_SET, Setting.FIO2), Map.entry(Knob.RISE_SET, Setting.RISE_TIME),
            Map.entry(Knob.PRESSURE_LIMIT_SET, Setting.PRESSURE_LIMIT), Map.entry(Knob.CYCLE_OFF_SET, Setting.CYCLE_OFF), Map.entry(Knob.BIAS_FLOW_SET, Setting.BIAS_FLOW));

    static List<String> ventilators() { return CATALOGUE.names("ventilator"); }

    private static Transport with(String ventilator, String mode) {
        String set = mode.isEmpty() ? "" : "settings: {mode: %s}\n".formatted(mode);
        var read = TransportReader.read("test.yaml", """
                transport: every fault on this device
                patient: {sex: female, height: 170 cm, age: 40 years, illness: healthy lungs, airway: tracheal tube 7.5 mm}
                ventilator: %s
                circuit: single limb adult
                %soxygen: [{name: bottle, cylinder: 10 L, pressure: 200 bar, read at: 15 Cel}]
                legs: [{leg: road, takes: 20 min, oxygen: bottle}]
                """.formatted(ventilator, set), CATALOGUE);
        return read.good().orElseThrow(() -> new AssertionError(ventilator + ": " + read.problems()));
    }

    /** What stands on the device after a change; absent values are not turned by it. */
    private static List<Double> turned(Change c, Setting setting, Settings settings) {
        if (c.how() == How.SET && c.value() != 0) return List.of(c.value());
        double set = settings.get(setting, Double.NaN);
        return c.how() == How.TIMES && setting == Setting.RATE && set > 0 ? List.of(set * c.value()) : List.of();
    }

    @ParameterizedTest @MethodSource("ventilators")
    void aKnobThatIsTurnedStandsWhereTheDeviceHasIt(String ventilator) {
        boolean settable = CATALOGUE.read(Kinds.VENTILATOR, ventilator).good().orElseThrow().ranges().containsKey(Setting.TIDAL_VOLUME);
        int looked = 0;
        for (String mode : settable ? List.of("A/C-VC", "A/C-PC") : List.of("")) {
            Transport t = with(ventilator, mode);
            Settings settings = Start.of(t, Ventilated.of(t), name -> CATALOGUE.read(Kinds.STRATEGY, name).good().orElseThrow()).settings();
            KitFacts kit = new KitFacts(t, settings, t.legs().get(0));
            for (String name : CATALOGUE.names("fault")) {
                Fault fault = CATALOGUE.read(Kinds.FAULT, name).good().orElseThrow();
                List<Change> changes = new ArrayList<>(Strike.changes(fault.effects(), 60, kit, new Script()));
                changes.addAll(Strike.changes(fault.remedy(), 120, kit, new Script()));
                for (Change c : changes) {
                    Setting setting = KNOBS.get(c.knob());
                    Range range = setting == null ? null : t.ventilator().ranges().get(setting);
                    if (range == null) continue;
                    for (double stands : turned(c, setting, settings)) {
                        assertThat(range.nearest(stands)).as("%s on %s: %s at %s, which has %s", name, ventilator, setting.words(), stands, range).isCloseTo(stands, within(1e-9));
                        looked++;
                    }
                }
            }
        }
        if (settable) assertThat(looked).as("settings that faults turn on %s", ventilator).isGreaterThan(10);
        else assertThat(CATALOGUE.read(Kinds.VENTILATOR, ventilator).good().orElseThrow().ranges()).doesNotContainKeys(Setting.RATE, Setting.FIO2, Setting.PEEP);
    }

    @Test void someSheetsAskForMoreThanSomeDevicesHave() {
        int beyond = 0;
        for (String ventilator : ventilators()) {
            for (String name : CATALOGUE.names("fault")) {
                for (Effect e : CATALOGUE.read(Kinds.FAULT, name).good().orElseThrow().effects()) {
                    Range range = KNOBS.containsKey(e.knob()) ? CATALOGUE.read(Kinds.VENTILATOR, ventilator).good().orElseThrow().ranges().get(KNOBS.get(e.knob())) : null;
                    if (range != null && e.how() == How.SET && e.value() != 0 && !range.holds(e.value())) beyond++;
                }
            }
        }
        assertThat(beyond).as("or the walk over all of them shows nothing").isPositive();
    }
}
