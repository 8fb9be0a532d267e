package leeway.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TextPageTest {
    @Test void nothingIsWiderThanThePage() {
        TextPage page = new TextPage(40, false);
        page.heading("Oxygen", "litres of free gas").paragraph("word ".repeat(60)).items(List.of("x".repeat(100), "short"))
                .table(List.of("leg", "draw", "why"), List.of(List.of("a very long name of a leg that will not end", "3.5", "because it is so and not otherwise at all")));
        assertThat(page.toString().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(40)).allSatisfy(l -> assertThat(l).isEqualTo(l.stripTrailing()));
    }

    @Test void withoutColourTheSameWordsStand() {
        String plain = new TextPage(80, false).strong(TextPage.Tone.BAD, "Does not hold").heading("a", "b").toString();
        String coloured = new TextPage(80, true).strong(TextPage.Tone.BAD, "Does not hold").heading("a", "b").toString();
        assertThat(plain).doesNotContain("\u001b");
        assertThat(coloured).contains("\u001b[31m");
        assertThat(coloured.replaceAll("\u001b\\[[0-9]+m", "")).isEqualTo(plain);
    }

    @Test void numbersStandToTheRight() {
        assertThat(new TextPage(80, false).table(List.of("leg", "litres", ""), List.of(List.of("road", "120.5", ""), List.of("flight", "9.5", ""))).toString())
                .isEqualTo("leg     litres\nroad     120.5\nflight     9.5\n");
    }
}
