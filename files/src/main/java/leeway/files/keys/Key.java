package leeway.files.keys;

import java.util.List;
import java.util.Optional;

/**
 * One key of a table.
 *
 * @param otherwise what holds when it is absent, in words; absent where nothing does
 * @param meaning   a short sentence for schema, commented file and form
 * @param also      what people write instead, for the nearest name
 * @param later     read and checked, but not used yet
 */
public record Key(String name, Form form, boolean required, Optional<String> otherwise, String meaning, List<String> also, boolean later) {
    public Key { also = List.copyOf(also); }

    public static Key must(String name, Form form, String meaning) { return new Key(name, form, true, Optional.empty(), meaning, List.of(), false); }

    public static Key may(String name, Form form, String meaning) { return new Key(name, form, false, Optional.empty(), meaning, List.of(), false); }

    /** With the default in words. */
    public Key otherwise(String words) { return new Key(name, form, required, Optional.of(words), meaning, also, later); }

    /** With other words that people use for it. */
    public Key also(String... words) { return new Key(name, form, required, otherwise, meaning, List.of(words), later); }

    public Key notYetUsed() { return new Key(name, form, required, otherwise, meaning, also, true); }
}
