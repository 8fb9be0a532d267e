package leeway.core.expression;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;

/** A formula of a sheet: its text and what it means. Parsed once, checked against the names there are, then computed. */
public final class Formula {
    private final String text;
    private final Node root;
    private final Set<String> uses;
    private final Set<String> calls;

    private Formula(String text, Node root) {
        this.text = text;
        this.root = root;
        this.uses = new LinkedHashSet<>();
        this.calls = new LinkedHashSet<>();
        root.match(new Uses(uses, calls));
    }

    /** A formula, or what is wrong with it; exactly one of the two. */
    public record Parsed(Optional<Formula> formula, Optional<Slip> slip) { }

    /** Reads a formula; its names are not looked at yet. */
    public static Parsed parse(String text) {
        try {
            return new Parsed(Optional.of(new Formula(text, Parser.parse(text))), Optional.empty());
        } catch (SlipException e) {
            return new Parsed(Optional.empty(), Optional.of(e.slip()));
        }
    }

    /** Reads a formula that is known to be right, as those written in code are. */
    public static Formula of(String text) {
        Parsed parsed = parse(text);
        return parsed.formula().orElseThrow(() -> new IllegalArgumentException(text + ": " + parsed.slip().get()));
    }

    /** What is wrong with it among these names; empty where nothing is. */
    public Optional<Slip> check(Names names, Type wanted) {
        try {
            Type type = root.match(new Check(names));
            return type.equals(wanted) ? Optional.empty()
                    : Optional.of(new Slip(0, "this is " + type.words() + ", " + wanted.words() + " belongs here", "Check the units of its parts."));
        } catch (SlipException e) {
            return Optional.of(e.slip());
        }
    }

    /** What it stands for among these names. */
    public Type type(Names names) { return root.match(new Check(names)); }

    /** Its value; throws a {@link SlipException} where it divides by zero or the like. */
    public Value value(Names names, Values values) { return root.match(new Evaluation(names, values)); }

    /** The names that it uses, tables and functions left out, in order of appearance. */
    public Set<String> uses() { return java.util.Collections.unmodifiableSet(uses); }

    /** True where it calls that table or function. */
    public boolean looksUpIn(String table) { return calls.contains(table); }

    public String text() { return text; }

    @Override public boolean equals(Object other) { return other instanceof Formula f && f.text.equals(text); }

    @Override public int hashCode() { return text.hashCode(); }

    @Override public String toString() { return text; }
}
