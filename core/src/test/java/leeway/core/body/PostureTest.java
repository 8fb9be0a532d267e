package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import leeway.core.transport.PatientEntry.Sex;
import org.junit.jupiter.api.Test;

/** Positions keep the order that was measured. */
class PostureTest {
    @Test
    void everyWordOfTheFileIsKnownAndTheOrderIsTheMeasuredOne() {
        for (String word : Posture.WORDS) assertThat(Posture.lungVolumeTimes(word)).isBetween(0.85, 1.4);
        assertThat(Posture.lungVolumeTimes("sitting")).isGreaterThan(Posture.lungVolumeTimes("semi-recumbent"));
        assertThat(Posture.lungVolumeTimes("semi-recumbent")).isGreaterThan(Posture.lungVolumeTimes("head up"));
        assertThat(Posture.lungVolumeTimes("prone")).isEqualTo(Posture.lungVolumeTimes("left side"));
        assertThat(Posture.lungVolumeTimes("head down")).isLessThan(1);
    }

    /** Lumb & Nunn 1991: sitting less supine 806 mL, prone less supine 350 mL, in men of unknown size; ours in a man of 175 cm and 30 years, awake. */
    @Test
    void theDifferencesAreAboutThoseMeasured() {
        double supine = LungVolume.supineAdultMl(Sex.MALE, 175, 30);
        assertThat(supine * (Posture.lungVolumeTimes("sitting") - 1)).isCloseTo(806, within(150.0));
        assertThat(supine * (Posture.lungVolumeTimes("prone") - 1)).isCloseTo(350, within(70.0));
    }
}
