package leeway.core.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import leeway.core.kit.Mode;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.settings.Suggested.Origin;
import org.junit.jupiter.api.Test;

class SuggestTest {
    private static final Ventilator DEVICE = Sheets.ventilator(Sheets.ranges(), Mode.AC_VC, Mode.AC_PC, Mode.CSV_PS);

    private static Suggested suggest(Ventilator device, Settings prescribed) {
        return Suggest.settings(Sheets.WOMAN, Sheets.PNEUMONIA, device, prescribed, Sheets.strategy());
    }

    private static Suggested.Because row(Suggested s, String setting) {
        return s.because().stream().filter(b -> b.setting().equals(setting)).findFirst().orElseThrow();
    }

    @Test
    void whatNobodyPrescribesFollowsFromTheRulesInStepsOfTheDevice() {
        Suggested s = suggest(DEVICE, Settings.NONE);
        assertThat(s.settings().mode()).contains(Mode.AC_VC);
        assertThat(s.settings().get(Setting.TIDAL_VOLUME)).hasValue(370);
        assertThat(s.settings().get(Setting.RATE)).hasValue(18);
        assertThat(s.settings().get(Setting.INSPIRATORY_TIME).getAsDouble()).isCloseTo(1.1, within(1e-9));
        assertThat(s.settings().get(Setting.PEEP)).hasValue(10);
        assertThat(row(s, "tidal volume").why()).isEqualTo("6 mL/kg of 61.5 kg (test); called \"Vt\" on the test device");
        assertThat(row(s, "bias flow").why()).isEqualTo("as the test device stands");
        assertThat(s.because()).allMatch(b -> b.origin() == Origin.SUGGESTED);
        assertThat(s.settings().has(Setting.INSPIRATORY_PRESSURE)).isFalse();
        assertThat(s.reasons()).isEmpty();
        assertThat(s.remarks()).isEmpty();
    }

    @Test
    void whatIsPrescribedStandsAndTheRestFollowsFromIt() {
        Suggested s = suggest(DEVICE, Settings.NONE.with(Setting.FIO2, 0.4).with(Setting.TIDAL_VOLUME, 420));
        assertThat(s.settings().get(Setting.PEEP)).hasValue(5);
        assertThat(s.settings().get(Setting.RATE)).hasValue(15);
        assertThat(row(s, "fio2").origin()).isEqualTo(Origin.PRESCRIBED);
        assertThat(row(s, "tidal volume").why()).startsWith("as the file says");
    }

    @Test
    void aWishOutsideTheDeviceIsAskedAndItsNearestSet() {
        Suggested s = suggest(DEVICE, Settings.NONE.with(Setting.PEEP, 24).with(Setting.RATE, 17.6));
        assertThat(s.settings().get(Setting.PEEP)).hasValue(20);
        assertThat(s.asked().get(Setting.PEEP)).hasValue(24);
        assertThat(s.reasons()).containsExactly("PEEP: prescribed 24 cmH2O, the nearest that the test device has is 20 cmH2O.");
        assertThat(s.settings().get(Setting.RATE)).hasValue(18);
        assertThat(s.remarks()).containsExactly("Rate: prescribed 17.6 /min, the nearest that the test device has is 18 /min.");
    }

    @Test
    void aMissingModeGivesTheNearestAndSaysTheDifference() {
        Suggested s = suggest(Sheets.ventilator(Sheets.ranges(), Mode.CMV_VC, Mode.CSV_PS), Settings.NONE.with(Mode.AC_VTPC));
        assertThat(s.settings().mode()).contains(Mode.CMV_VC);
        assertThat(s.asked().mode()).contains(Mode.AC_VTPC);
        assertThat(s.reasons()).singleElement().asString().contains("the flow is constant").contains("the patient cannot start a breath");
        assertThat(NearestMode.of(Mode.AC_PC, DEVICE.modes())).contains(Mode.AC_PC);
        assertThat(NearestMode.of(Mode.SIMV_VC_PS, DEVICE.modes())).contains(Mode.AC_VC);
        assertThat(NearestMode.of(Mode.CPAP, DEVICE.modes())).contains(Mode.CSV_PS);
    }

    @Test
    void aPrescribedInspiratoryPressureMeansAPressureMode() {
        Suggested s = suggest(DEVICE, Settings.NONE.with(Setting.INSPIRATORY_PRESSURE, 14).with(Setting.TIDAL_VOLUME, 400));
        assertThat(s.settings().mode()).contains(Mode.AC_PC);
        assertThat(s.settings().has(Setting.TIDAL_VOLUME)).isFalse();
        assertThat(s.asked().get(Setting.TIDAL_VOLUME)).hasValue(400);
        assertThat(s.remarks()).containsExactly("Mode A/C-PC has no tidal volume; the prescribed 400 mL is left out.");
    }

    @Test
    void inspirationNeverTakesTheWholeBreath() {
        Suggested both = suggest(DEVICE, Settings.NONE.with(Setting.INSPIRATORY_TIME, 2).with(Setting.RATE, 30));
        assertThat(both.settings().get(Setting.INSPIRATORY_TIME)).hasValue(1);
        assertThat(both.reasons()).singleElement().asString().contains("leaves no expiration");
        Suggested one = suggest(DEVICE, Settings.NONE.with(Setting.INSPIRATORY_TIME, 3).with(Setting.TIDAL_VOLUME, 300));
        assertThat(one.settings().get(Setting.RATE)).hasValue(10);
        assertThat(one.reasons()).isEmpty();
    }

    @Test
    void aDeviceWithoutTheFlowGetsALongerInspiration() {
        Map<Setting, Range> ranges = Sheets.ranges();
        ranges.put(Setting.PAUSE, new Range(0, 2, 0.05));
        Ventilator weak = Sheets.ventilator(ranges, Mode.AC_VC);
        Suggested s = suggest(weak, Settings.NONE.with(Setting.TIDAL_VOLUME, 2000).with(Setting.INSPIRATORY_TIME, 0.5).with(Setting.RATE, 10));
        assertThat(s.reasons()).singleElement().asString().contains("240 L/min").contains("at most 120 L/min");
    }

    @Test
    void theHandBagHasNoMode() {
        Ventilator d = DEVICE;
        Ventilator bag = new Ventilator("hand bag", Ventilator.Drive.HAND, java.util.List.of(), Map.of(), Settings.NONE, Map.of(), 0, 0, 0, 4, false, false, false, d.gas(), Optional.empty(),
                Optional.empty(), java.util.List.of(), java.util.List.of(), d.apnoeaBackupAfterS(), 1, "invented");
        Suggested s = suggest(bag, Settings.NONE);
        assertThat(s.settings().mode()).isEmpty();
        assertThat(s.settings().get(Setting.TIDAL_VOLUME).getAsDouble()).isCloseTo(369.1, within(0.1));
        assertThat(s.settings().get(Setting.FIO2)).hasValue(1);
        assertThat(s.reasons()).isEmpty();
        assertThat(s.because().stream().filter(b -> b.setting().equals("fio2")).findFirst().orElseThrow().why()).contains("has no blender");
        Suggested wished = suggest(bag, Settings.NONE.with(Setting.FIO2, 0.4));
        assertThat(wished.settings().get(Setting.FIO2)).hasValue(1);
        assertThat(wished.asked().get(Setting.FIO2)).hasValue(0.4);
        assertThat(wished.reasons()).singleElement().asString().startsWith("FiO2: prescribed 40 %; the hand bag has no blender");
    }

    @Test
    void theStrategyGoesByAgeThenIllnessThenSize() {
        assertThat(ByIllness.pick(Sheets.INFANT, Sheets.illness("bronchiolitis", Optional.of("obstructive"))).strategy()).isEqualTo("infant");
        assertThat(ByIllness.pick(Sheets.WOMAN, Sheets.illness("asthma attack", Optional.of("obstructive"))).strategy()).isEqualTo("obstructive");
        assertThat(ByIllness.pick(Sheets.WOMAN, Sheets.PNEUMONIA).why()).isEqualTo("strategy \"lung protective\" by illness \"moderate pneumonia\"");
        PatientFacts w = Sheets.WOMAN;
        PatientFacts heavy = new PatientFacts(w.sex(), 58, 170, 150, w.predictedBodyWeightKg(), w.effort(), 30, 17, 140, 250, 0.1, 760);
        assertThat(ByIllness.pick(heavy, Sheets.PNEUMONIA).strategy()).isEqualTo("obese");
        assertThat(ByIllness.pick(heavy, Sheets.illness("head injury", Optional.of("head injury"))).strategy()).isEqualTo("head injury");
    }
}
