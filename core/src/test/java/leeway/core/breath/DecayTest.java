package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DecayTest {
    @Test
    void itIsTheExponentialToAboutTheLastPlace() {
        SplittableRandom random = new SplittableRandom(4);
        double worst = 0;
        for (int i = 0; i < 2_000_000; i++) {
            double x = i % 3 == 0 ? random.nextDouble(0, 700) : i % 3 == 1 ? random.nextDouble(0, 5) : StrictMath.exp(random.nextDouble(-40, 1)), e = StrictMath.exp(-x);
            worst = Math.max(worst, Math.abs(Decay.of(x) - e) / Math.ulp(e));
        }
        assertThat(worst).isLessThanOrEqualTo(2);
        assertThat(Decay.of(0)).isEqualTo(1);
        assertThat(Decay.of(1000)).isEqualTo(0);
        assertThat(Decay.of(-1)).isEqualTo(StrictMath.exp(1));
        assertThat(Decay.of(Double.NaN)).isNaN();
    }
}
