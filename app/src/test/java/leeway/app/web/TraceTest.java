package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.report.Examples;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Trace;
import leeway.core.rehearsal.Trace.Row;
import leeway.core.rehearsal.Trace.What;
import leeway.files.sheet.Catalogue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the rehearsal page draws is what the rehearsal judges. */
class TraceTest {
    private static final SheetAnswers ANSWERS = new SheetAnswers(Catalogue.builtIn(), 1);
    private static final String TEXT = Examples.text("night-transfer").orElseThrow();

    private static Answers.Traced trace(String fault, OptionalDouble remedyS) {
        return ANSWERS.trace(TEXT, fault, OptionalDouble.empty(), remedyS, 30, 1_800, Hands.ALONE).good().orElseThrow();
    }

    private static double heard(Trace trace) {
        return trace.said().stream().filter(s -> s.what() == What.HEARD && s.tS() >= 0).mapToDouble(Trace.Said::tS).min().orElse(Double.POSITIVE_INFINITY);
    }

    @ParameterizedTest
    @ValueSource(strings = {"disconnection at the patient", "tube kinked", "oxygen cylinder closed", "tube slipped out"})
    void theFirstAlarmAndTheHarmAreThoseOfTheRehearsal(String fault) {
        Answers.Traced traced = trace(fault, OptionalDouble.empty());
        Rehearsal row = traced.row().orElseThrow();
        assertThat(heard(traced.trace())).isCloseTo(row.alarm().orElseThrow().afterS(), within(0.11));
        Rehearsal.Moment moment = row.leg().orElseThrow();
        assertThat(traced.trace().atS()).isEqualTo(moment.atS());
        Optional<Row> first = traced.trace().rows().stream().filter(r -> r.tS() > 0 && r.sao2() < 0.85).findFirst();
        if (row.harm().orElseThrow().measure().words().equals("saturation")) {
            // harm lies between two breaths, rows every 2 s without one
            assertThat(first.orElseThrow().tS()).isCloseTo(row.harm().orElseThrow().afterS(), within(4.0));
        }
    }

    @Test
    void aRemedyInTimeKeepsTheSaturationUpAndOneTooLateDoesNot() {
        Rehearsal row = trace("disconnection at the patient", OptionalDouble.empty()).row().orElseThrow();
        double rescueS = row.rescueByS().orElseThrow();
        assertThat(lowest(trace("disconnection at the patient", OptionalDouble.of(rescueS - 15)).trace())).isGreaterThan(0.85);
        assertThat(lowest(trace("disconnection at the patient", OptionalDouble.of(rescueS + 15)).trace())).isLessThan(0.85);
    }

    private static double lowest(Trace trace) { return trace.rows().stream().mapToDouble(Row::sao2).min().orElseThrow(); }

    @Test
    void anAlarmThatSoundedLongBeforeTheFaultIsListed() {
        // the limit lies below what every breath comes to, so that it sounds from the first minutes on
        String text = TEXT.replace("policy: default", "alarms: {airway pressure high: {high: 10 cmH2O}}");
        Trace trace = ANSWERS.trace(text, "tube slipped out", OptionalDouble.of(20), OptionalDouble.empty(), 30, 1_800, Hands.ALONE).good().orElseThrow().trace();
        assertThat(trace.rows().get(0).tS()).isGreaterThanOrEqualTo(-30);
        for (String language : Words.LANGUAGES) {
            assertThat(Alarms.until(Words.in(language), trace, 0)).extracting(Alarms.Line::text).anyMatch(l -> l.contains(language.equals("de") ? "schon vor 0:00 aktiv" : "already sounding before 0:00"));
        }
        Trace quiet = ANSWERS.trace(TEXT, "tube slipped out", OptionalDouble.of(20), OptionalDouble.empty(), 30, 1_800, Hands.ALONE).good().orElseThrow().trace();
        assertThat(Alarms.until(Words.in("en"), quiet, 0)).isEmpty();
    }

    @Test
    void whatIsShownFallsLaterThanWhatIsTrue() {
        Trace trace = trace("disconnection at the patient", OptionalDouble.empty()).trace();
        double trueS = trace.rows().stream().filter(r -> r.tS() > 0 && r.sao2() < 0.90).findFirst().orElseThrow().tS();
        double shownS = trace.rows().stream().filter(r -> r.tS() > 0 && r.monitor().spo2() < 0.90).findFirst().orElseThrow().tS();
        assertThat(shownS).isGreaterThan(trueS);
    }
}
