package leeway.app.web;

import java.util.List;
import java.util.Optional;

/**
 * What the comparison shows.
 *
 * @param was    the journey as it stands, packed
 * @param pinned the journey that was pinned, packed
 * @param wrong  what is wrong with the journey as it stands
 */
public record CompareView(String was, String pinned, Optional<AnswerView> before, Optional<AnswerView> now, List<Slider> sliders, List<Difference> differences, List<String> wrong) {
    public boolean same() { return was.equals(pinned); }
}
