package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class AddressesTest {
    /** Letters that hardly pack. */
    private static String text(long seed, int chars) {
        SplittableRandom random = new SplittableRandom(seed);
        StringBuilder out = new StringBuilder("# ");
        while (out.length() < chars) out.append((char) random.nextInt('!', '~'));
        return out.toString();
    }

    @Test
    void aTextStandsInItsAddressAsLongAsItFits() {
        Addresses some = new Addresses(1_000_000);
        String state = some.of(text(1, 4_000));
        assertThat(Addresses.lasts(state)).isTrue();
        assertThat(new Addresses(0).open(state)).as("opened by another server").contains(text(1, 4_000));
    }

    @Test
    void aLongerTextIsNamedAndRemembered() {
        Addresses some = new Addresses(1_000_000);
        String state = some.of(text(2, 30_000));
        assertThat(state).hasSize(44).matches("2[A-Za-z0-9_-]+");
        assertThat(Addresses.lasts(state)).isFalse();
        assertThat(some.open(state)).contains(text(2, 30_000));
        assertThat(some.of(text(2, 30_000))).isEqualTo(state);
        assertThat(new Addresses(1_000_000).open(state)).as("opened by another server").isEmpty();
        assertThat(some.open("2" + "A".repeat(43))).isEmpty();
    }

    @Test
    void whatIsRememberedHasABound() {
        Addresses some = new Addresses(100_000);
        String first = some.of(text(3, 30_000));
        String second = some.of(text(4, 30_000));
        for (long seed = 5; seed < 7; seed++) {
            some.of(text(seed, 30_000));
            assertThat(some.open(first)).as("used again and again").isPresent();
        }
        assertThat(some.open(second)).as("the one not used for longest").isEmpty();
        String longest = new Addresses(10).of(text(9, 30_000));
        assertThat(longest).startsWith("2");
    }
}
