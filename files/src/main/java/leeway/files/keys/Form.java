package leeway.files.keys;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.quantity.Kind;
import leeway.files.yaml.Node;

/** What may stand behind a key. */
public interface Form {
    /**
     * The value, or empty after at least one complaint.
     *
     * @param name the key's name, for sentences
     */
    Optional<Object> read(Node node, String name, TableReader reader);

    /** With its article and an example, for sentences: {@code a height, for example "170 cm"}. */
    String words();

    /** As one would write it. */
    String example();

    /** This form as JSON Schema 2020-12. */
    Map<String, Object> schema();

    /** The same where values may name their source, as in sheets. */
    default Map<String, Object> schema(boolean sourced) { return schema(); }

    /** The same form with nothing required in it: for what continues something else. */
    default Form loosened() { return this; }

    /** The table inside, where there is one. */
    default Optional<Table> inner() { return Optional.empty(); }

    /** The kind of quantity, where it is one; a form on a page offers its units. */
    default Optional<Kind> quantity() { return Optional.empty(); }

    /** The closed list of words to choose from; empty where there is none. */
    default List<String> choices() { return List.of(); }

    /** What it is the name of, such as a ventilator. */
    default Optional<String> names() { return Optional.empty(); }

    /** What its items are, where it is a list. */
    default Optional<Form> items() { return Optional.empty(); }

    /** True where one item may stand without a list around it. */
    default boolean oneOrMany() { return false; }

    /** A quantity between two values in the kind's unit, both included. */
    static Form of(Kind kind, double least, double most) { return new QuantityForm(kind, least, most, QuantityForm.example(kind, least, most)); }

    static Form of(Kind kind, double least, double most, String example) { return new QuantityForm(kind, least, most, example); }

    /** A value with the range in which 19 of 20 of its kind lie: a plain value, or {@code {is: 0.8, from: 0.5, to: 1.1}}. */
    static Form band(Kind kind, double least, double most, String example) { return new BandForm(new QuantityForm(kind, least, most, example)); }

    /** A plain number. */
    static Form number(double least, double most) { return new QuantityForm(Kind.NUMBER, least, most, QuantityForm.plain((least + most) / 2)); }

    static Form number(double least, double most, String example) { return new QuantityForm(Kind.NUMBER, least, most, example); }

    static Form whole(int least, int most, String example) { return new Forms.Whole(least, most, example); }

    static Form whole(int least, int most) { return new Forms.Whole(least, most, Integer.toString(Math.max(least, Math.min(most, 2)))); }

    static Form yesNo() { return new Forms.YesNo(); }

    /** One of these words. */
    static Form choice(String what, List<String> words) { return new Forms.Choice(what, words, Map.of()); }

    static Form choice(String what, String... words) { return new Forms.Choice(what, List.of(words), Map.of()); }

    /** One of these words; other words that people use lead to a suggestion. */
    static Form choice(String what, List<String> words, Map<String, List<String>> also) { return new Forms.Choice(what, words, also); }

    /** Any text on one line of at most so many characters. */
    static Form text(int most, String example) { return new Forms.Words(most, example); }

    /** The name of something else, whose existence is looked up later. */
    static Form name(String of, String example) { return new Forms.Name(of, example); }

    /** A mapping. */
    static Form section(Table table) { return new Forms.InSection(() -> table); }

    /** A mapping whose table is made when it is first needed. */
    static Form section(java.util.function.Supplier<Table> table) { return new Forms.InSection(table); }

    /** A list of at most so many. */
    static Form list(Form of, int most) { return new Forms.Several(of, most, false); }

    /** One, or a list. */
    static Form oneOrMany(Form of, int most) { return new Forms.Several(of, most, true); }

    /** A name, or a mapping that begins with {@code like: NAME}. */
    static Form nameOrSection(String of, String example, Table table) { return new Forms.NameOrSection(new Forms.Name(of, example), table); }

    /** A text of its own grammar. */
    static Form written(String words, String example, String pattern, java.util.function.Function<String, Forms.Parsed> parse) {
        return new Forms.Written(words, example, pattern, parse);
    }
}
