package leeway.files.yaml;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** A value, or every complaint at once. */
public sealed interface Read<T> {
    /** It could be read. */
    record Good<T>(T value) implements Read<T> { }

    /** It could not; never without a complaint. */
    record Bad<T>(List<Complaint> complaints) implements Read<T> {
        public Bad {
            complaints = List.copyOf(complaints);
            if (complaints.isEmpty()) throw new IllegalArgumentException("bad without a complaint");
        }
    }

    default List<Complaint> problems() { return this instanceof Bad<T> bad ? bad.complaints() : List.of(); }

    default Optional<T> good() { return this instanceof Good<T> g ? Optional.of(g.value()) : Optional.empty(); }

    default <U> Read<U> then(Function<T, Read<U>> next) {
        return this instanceof Good<T> g ? next.apply(g.value()) : new Bad<>(problems());
    }
}
