package leeway.core.expression;

import java.util.Set;

/** Collects the names of a formula, and what it calls. */
record Uses(Set<String> into, Set<String> called) implements Node.Cases<Void> {
    private Void all(Node... nodes) {
        for (Node n : nodes) n.match(this);
        return null;
    }

    @Override public Void number(Node.Number n) { return null; }

    @Override public Void word(Node.Word n) { return null; }

    @Override public Void truth(Node.Truth n) { return null; }

    @Override public Void name(Node.Name n) {
        into.add(n.name());
        return null;
    }

    @Override public Void minus(Node.Minus n) { return all(n.of()); }

    @Override public Void not(Node.Not n) { return all(n.of()); }

    @Override public Void pair(Node.Pair n) { return all(n.left(), n.right()); }

    @Override public Void power(Node.Power n) { return all(n.base()); }

    @Override public Void choice(Node.Choice n) { return all(n.condition(), n.yes(), n.no()); }

    @Override public Void call(Node.Call n) {
        called.add(n.name());
        return all(n.arguments().toArray(Node[]::new));
    }
}
