package leeway.core.expression;

import java.util.Collection;
import java.util.Optional;

/** What a formula may name, for the check before anything is computed. */
public interface Names {
    /** What the name stands for; empty where there is no such name. */
    Optional<Type> type(String name);

    /** The table of that name. */
    Optional<Table> table(String name);

    /** Every name, for the nearest one to offer. */
    Collection<String> known();
}
