package leeway.core.expression;

import java.util.List;
import leeway.core.quantity.Dimension;

/** A parsed formula; {@code at} is where in the text a complaint about it points. */
sealed interface Node {
    int at();

    /** What one does with each kind of node. */
    interface Cases<R> {
        R number(Number n);

        R word(Word n);

        R truth(Truth n);

        R name(Name n);

        R minus(Minus n);

        R not(Not n);

        R pair(Pair n);

        R power(Power n);

        R choice(Choice n);

        R call(Call n);
    }

    <R> R match(Cases<R> cases);

    record Number(int at, double si, Dimension dimension) implements Node { @Override public <R> R match(Cases<R> c) { return c.number(this); } }

    record Word(int at, String text) implements Node { @Override public <R> R match(Cases<R> c) { return c.word(this); } }

    record Truth(int at, boolean truth) implements Node { @Override public <R> R match(Cases<R> c) { return c.truth(this); } }

    record Name(int at, String name) implements Node { @Override public <R> R match(Cases<R> c) { return c.name(this); } }

    record Minus(int at, Node of) implements Node { @Override public <R> R match(Cases<R> c) { return c.minus(this); } }

    record Not(int at, Node of) implements Node { @Override public <R> R match(Cases<R> c) { return c.not(this); } }

    record Pair(int at, Operator operator, Node left, Node right) implements Node { @Override public <R> R match(Cases<R> c) { return c.pair(this); } }

    /** Only whole exponents written as digits, so that the dimension is known. */
    record Power(int at, Node base, int exponent) implements Node { @Override public <R> R match(Cases<R> c) { return c.power(this); } }

    record Choice(int at, Node condition, Node yes, Node no) implements Node { @Override public <R> R match(Cases<R> c) { return c.choice(this); } }

    record Call(int at, String name, List<Node> arguments) implements Node { @Override public <R> R match(Cases<R> c) { return c.call(this); } }

    /** Operators between two values, weakest binding first. */
    enum Operator {
        OR("or", 1), AND("and", 2), EQUAL("=", 3), UNEQUAL("!=", 3), LESS("<", 3), AT_MOST("<=", 3), MORE(">", 3), AT_LEAST(">=", 3),
        PLUS("+", 4), MINUS("-", 4), TIMES("*", 5), OVER("/", 5);

        final String symbol;
        final int binding;

        Operator(String symbol, int binding) {
            this.symbol = symbol;
            this.binding = binding;
        }
    }
}
