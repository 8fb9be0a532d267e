package leeway.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Airway;
import leeway.core.transport.PatientEntry;
import org.junit.jupiter.api.Test;

/** A tube too deep or too shallow is said, with what is usual. */
class TubeDepthTest {
    private static Optional<String> caution(double heightCm, double depthCm, double mm) {
        PatientEntry p = new PatientEntry(PatientEntry.Sex.FEMALE, heightCm > 0 ? OptionalDouble.of(heightCm) : OptionalDouble.empty(), false, OptionalDouble.empty(), OptionalDouble.of(heightCm > 0 ? 40 : 2),
                OptionalDouble.of(depthCm), Optional.empty(), PatientEntry.Lungs.NONE, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), false, false, OptionalDouble.empty(), Optional.empty());
        return TubeDepth.caution(p, new Airway("tube", Airway.Type.TRACHEAL_TUBE, mm, 30, 2, 0.9, 14, true, 0, "invented"));
    }

    @Test
    void aWomanOf170CmIsUsuallyAt20() {
        // 13.555 + 0.056 × 170 = 23.1 cm to the division, 20.1 cm usual
        assertThat(caution(170, 20, 7.5)).isEmpty();
        assertThat(caution(170, 22, 7.5).orElseThrow()).contains("close to where the windpipe divides").contains("20 cm are usual");
        assertThat(caution(170, 26, 7.5).orElseThrow()).contains("likely in one bronchus");
        assertThat(caution(170, 15, 7.5).orElseThrow()).contains("shallow");
    }

    @Test
    void aChildIsMeasuredByItsTube() {
        assertThat(caution(0, 13.5, 4.5)).isEmpty();
        assertThat(caution(0, 16, 4.5).orElseThrow()).contains("deep for its size").contains("13.5 cm");
        assertThat(caution(0, 11, 4.5).orElseThrow()).contains("shallow");
    }
}
