package leeway.core.settings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;

/** The {@code why} of a rule: text with {@code {name}} or {@code {name in unit}} in it. */
final class Sentence {
    private Sentence() { }

    /** A gap in the text to be filled. */
    record Gap(int offset, String name, Optional<Unit> unit, String unitWritten) { }

    static List<Gap> gaps(String text) {
        List<Gap> gaps = new ArrayList<>();
        for (int from = text.indexOf('{'); from >= 0; from = text.indexOf('{', from + 1)) {
            int to = text.indexOf('}', from);
            if (to < 0) break;
            String inside = text.substring(from + 1, to).strip();
            int in = inside.lastIndexOf(" in ");
            String unit = in < 0 ? "" : inside.substring(in + 4).strip();
            gaps.add(new Gap(from, in < 0 ? inside : inside.substring(0, in).strip(), Units.find(unit).filter(u -> in >= 0), unit));
        }
        return gaps;
    }

    static String filled(String text, Function<Gap, String> filling) {
        StringBuilder out = new StringBuilder();
        int from = 0;
        for (Gap gap : gaps(text)) {
            out.append(text, from, gap.offset()).append(filling.apply(gap));
            from = text.indexOf('}', gap.offset()) + 1;
        }
        return out.append(text.substring(from)).toString();
    }
}
