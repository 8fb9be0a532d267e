package leeway.files.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.rehearsal.Harm;
import leeway.core.rehearsal.MonitorPower;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The monitor is a device of its own: its charge ends by itself; volumes are judged where the policy says so. */
class MonitorPowerTest {
    private static final String PLUGGED = Nights.SHORT.replace("legs:", "power: [{name: vehicle, mains: yes}]\nlegs:").replace("oxygen: bottle}]", "oxygen: bottle, power: vehicle}]");

    @TempDir static Path folder;

    @BeforeAll static void aMonitorOfHalfAnHour() throws Exception {
        Files.createDirectories(folder.resolve("monitor"));
        Files.writeString(folder.resolve("monitor/short.yaml"), """
                monitor: short
                like: example transport monitor
                source: invented
                battery lasts: 25 min
                """);
    }

    private static Transport read(String text) {
        var read = TransportReader.read("test.yaml", text.replace("settings:", "monitor: short\nsettings:"), Catalogue.of(List.of(folder)));
        return read.good().orElseThrow(() -> new AssertionError(read.problems().toString()));
    }

    private static Rehearsal row(Transport t, String fault, double atMin) {
        return Nights.rehearse(t, List.of(Nights.fault(Nights.CATALOGUE, fault)), OptionalDouble.of(atMin * 60)).central().get(0);
    }

    @Test void afterItsChargeTheMonitorIsSilent() {
        Transport t = read(Nights.SHORT);
        assertThat(row(t, "tube in the oesophagus", 20).alarm().orElseThrow().from()).isEqualTo(From.MONITOR);
        assertThat(row(t, "tube in the oesophagus", 30).alarm()).as("this ventilator alone notices nothing").isEmpty();
    }

    @Test void thePlanSaysWhenItEnds() {
        assertThat(MonitorPower.endsMin(read(Nights.SHORT))).hasValue(25);
        assertThat(MonitorPower.remark(read(Nights.SHORT)).orElseThrow()).contains("25 min", "15 min before the journey does");
    }

    @Test void theColdShortensIt() {
        assertThat(MonitorPower.endsMin(read(Nights.SHORT.replace("oxygen: bottle}]", "oxygen: bottle, temperature: -10 Cel}]"))).orElseThrow()).as("three quarters at -10 Cel").isCloseTo(0.75 * 25, org.assertj.core.api.Assertions.within(0.01));
    }

    @Test void withExternalPowerItStandsStill() {
        assertThat(MonitorPower.endsMin(read(PLUGGED))).isEmpty();
        assertThat(MonitorPower.remark(read(PLUGGED))).isEmpty();
        assertThat(row(read(PLUGGED), "tube in the oesophagus", 30).alarm()).isPresent();
    }

    @Test void itMayEndWhereTheJourneyTakesLonger() {
        Transport t = read(Nights.SHORT.replace("takes: 40 min, at worst: 60 min", "takes: 20 min, at worst: 60 min"));
        assertThat(MonitorPower.endsMin(t)).isEmpty();
        assertThat(MonitorPower.remark(t).orElseThrow()).contains("may end", "60 min");
    }

    @Test void largeBreathsHarmWhereThePolicySaysSo() {
        String judged = Nights.SHORT + "policy: lungs first\n";
        Rehearsal row = row(Nights.read(judged), "settings of another patient", 10);
        assertThat(row.harm().orElseThrow().measure()).isEqualTo(Harm.Measure.VOLUME);
        // 12 mL/kg of the 61.5 kg of a woman of 170 cm
        assertThat(row.harm().orElseThrow().threshold()).isBetween(738.0, 738.5);
        // thirty breaths at 12 /min, the thirtieth at its end
        assertThat(row.harm().orElseThrow().afterS()).isBetween(29 * 5.0, 32 * 5.0);
        assertThat(row(Nights.read(Nights.SHORT), "settings of another patient", 10).harm()).as("the default does not judge volume").isEmpty();
    }
}
