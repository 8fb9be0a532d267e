package leeway.core.calc;

import java.util.List;

/** A result, or everything that is wrong with what was given. */
public sealed interface Outcome {
    record Done(CalcResult result) implements Outcome { }

    record Wrong(List<CalcComplaint> complaints) implements Outcome {
        public Wrong { complaints = List.copyOf(complaints); }
    }
}
