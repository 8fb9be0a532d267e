package leeway.core.calc;

import java.util.List;
import java.util.Optional;

/** The catalogue, as far as a calc needs it. */
public interface Sheets {
    /** Without any sheet. */
    Sheets NONE = new Sheets() {
        @Override public Optional<Object> find(String kind, String name) { return Optional.empty(); }

        @Override public List<String> names(String kind) { return List.of(); }
    };

    /** The record of a sheet of {@code leeway.core.kit}. */
    Optional<Object> find(String kind, String name);

    List<String> names(String kind);
}
