package leeway.core.calc;

import java.util.Optional;

/** One thing wrong in what a calc was given: at which key, what, what would be right, the nearest name. */
public record CalcComplaint(String key, String what, String right, Optional<String> nearest) {
    /** In one line. */
    public String line() {
        return what + ". " + nearest.map(n -> "Did you mean \"" + n + "\"? ").orElse("") + right;
    }
}
