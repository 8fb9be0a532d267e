package leeway.core.plan;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whether the plan holds, and why not.
 *
 * @param reasons what speaks against it, a sentence each with its figures; empty where it holds
 * @param remarks what a reader should know all the same
 */
public record Verdict(List<String> reasons, List<String> remarks) {
    public Verdict {
        reasons = List.copyOf(reasons);
        remarks = List.copyOf(remarks);
    }

    /** The same with one more remark, before the others. */
    Verdict with(Optional<String> remark) { return new Verdict(reasons, Stream.concat(remark.stream(), remarks.stream()).toList()); }

    public boolean holds() { return reasons.isEmpty(); }

    /** One of three. */
    public String word() { return !holds() ? "does not hold" : remarks.isEmpty() ? "holds" : "holds with remarks"; }
}
