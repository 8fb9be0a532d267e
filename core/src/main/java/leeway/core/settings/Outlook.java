package leeway.core.settings;

import java.util.OptionalDouble;

/** What settings lead to in the steady state; a measure that the model does not know is absent. */
@FunctionalInterface
public interface Outlook {
    OptionalDouble of(Measure measure);
}
