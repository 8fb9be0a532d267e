package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PackedTest {
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void whatWasPackedOpensToTheSame(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 300; i++) {
            StringBuilder text = new StringBuilder();
            int n = random.nextInt(3_000);
            for (int k = 0; k < n; k++) text.appendCodePoint(random.nextInt(20) == 0 ? random.nextInt(0x1F600, 0x1F650) : random.nextInt(10, 0x180));
            assertThat(Packed.open(Packed.of(text.toString()))).contains(text.toString());
        }
    }

    @Test
    void aDamagedAddressOpensToNothing() {
        String packed = Packed.of("transport: a journey\n".repeat(20));
        assertThat(Packed.open(packed.substring(0, packed.length() / 2))).isEmpty();
        assertThat(Packed.open("2" + packed.substring(1))).isEmpty();
        assertThat(Packed.open("1&%$")).isEmpty();
        assertThat(Packed.open("")).isEmpty();
        assertThat(Packed.open(null)).isEmpty();
    }

    @Test
    void anAddressThatOpensToFarTooMuchOpensToNothing() {
        String bomb = Packed.of("a".repeat(Packed.MAX_TEXT_BYTES + 1));
        assertThat(bomb.length()).isLessThan(500);
        assertThat(Packed.open(bomb)).isEmpty();
        assertThat(Packed.open(Packed.of("a".repeat(Packed.MAX_TEXT_BYTES)))).isPresent();
    }

    @Test
    void aTransportFileMakesAnAddressShortEnoughToMail() {
        String text = """
                transport: Night transfer
                patient:
                  sex: female
                  height: 170 cm
                  illness: moderate pneumonia
                ventilator: example pneumatic
                oxygen:
                  - {name: portable, cylinder: 2 L, pressure: 185 bar, count: 2}
                legs:
                  - {leg: ward to ambulance, takes: 12 min, at worst: 25 min, oxygen: portable}
                """;
        assertThat(Packed.of(text).length()).isLessThan(200);
    }
}
