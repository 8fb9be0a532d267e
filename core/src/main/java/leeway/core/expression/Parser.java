package leeway.core.expression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import leeway.core.quantity.Dimension;

/** Precedence climbing over the tokens of one formula. */
final class Parser {
    /** The longest formula, in characters. */
    static final int LONGEST = 600;
    /** The deepest nesting of brackets, choices and signs. */
    static final int DEEPEST = 40;
    /** The most nodes. */
    static final int MOST = 200;
    private final List<Token> tokens;
    private int i;
    private int depth;
    private int nodes;

    private Parser(List<Token> tokens) { this.tokens = tokens; }

    static Node parse(String text) {
        if (text.length() > LONGEST) throw new SlipException(0, "the formula has " + text.length() + " characters", "At most " + LONGEST + "; give parts a name of their own.");
        Parser parser = new Parser(Lexer.cut(text));
        if (parser.peek().sort() == Token.Sort.END) throw new SlipException(0, "the formula is empty", "Write a value, for example 6 mL/kg * predicted body weight.");
        Node node = parser.expression(0);
        Token rest = parser.peek();
        if (rest.sort() != Token.Sort.END) throw new SlipException(rest.at(), rest.shown() + " is not expected here", rest.is("=") ? "Equal is written with one =."
                : "An operator or the end belongs here; a number and its unit stand together, as in 6 mL/kg.");
        return node;
    }

    private Token peek() { return tokens.get(i); }

    private Token take() { return tokens.get(i++); }

    private boolean accept(String symbol) {
        if (!peek().is(symbol)) return false;
        i++;
        return true;
    }

    private void expect(String symbol, String where) {
        if (!accept(symbol)) throw new SlipException(peek().at(), "\"" + symbol + "\" is missing " + where + ", before " + peek().shown(), "Add " + symbol + ".");
    }

    private <N extends Node> N count(N node) {
        if (++nodes > MOST) throw new SlipException(node.at(), "the formula has more than " + MOST + " parts", "Give parts a name of their own.");
        return node;
    }

    private Node expression(int weakest) {
        if (++depth > DEEPEST) throw new SlipException(peek().at(), "the formula is nested more than " + DEEPEST + " deep", "Give parts a name of their own.");
        Node left = prefix();
        for (Optional<Node.Operator> operator = operator(); operator.isPresent() && operator.get().binding > weakest; operator = operator()) {
            Token at = take();
            Node right = expression(operator.get().binding);
            if (operator.get().binding == 3 && operator().filter(o -> o.binding == 3).isPresent()) throw new SlipException(peek().at(),
                    "comparisons do not chain", "Write a < b and b < c.");
            left = count(new Node.Pair(at.at(), operator.get(), left, right));
        }
        depth--;
        return left;
    }

    private Optional<Node.Operator> operator() {
        Token t = peek();
        if (t.sort() != Token.Sort.SYMBOL && t.sort() != Token.Sort.KEYWORD) return Optional.empty();
        return Arrays.stream(Node.Operator.values()).filter(o -> o.symbol.equals(t.text())).findFirst();
    }

    private Node prefix() {
        Token t = take();
        if (t.is("-")) return count(new Node.Minus(t.at(), expression(Node.Operator.TIMES.binding)));
        if (t.is("not")) return count(new Node.Not(t.at(), expression(Node.Operator.AND.binding)));
        if (t.is("if")) return choice(t);
        return power(primary(t));
    }

    private Node choice(Token t) {
        Node condition = expression(0);
        expect("then", "after the condition");
        Node yes = expression(0);
        expect("else", "after what holds if so");
        return count(new Node.Choice(t.at(), condition, yes, expression(0)));
    }

    private Node power(Node base) {
        if (!peek().is("^")) return base;
        Token hat = take();
        boolean negative = accept("-");
        Token e = take();
        boolean whole = e.sort() == Token.Sort.NUMBER && e.dimension().equals(Dimension.NONE) && e.si() == Math.rint(e.si()) && e.si() >= 1 && e.si() <= 4;
        if (!whole) throw new SlipException(e.at(), e.shown() + " cannot be an exponent", "Only the whole numbers 1 to 4, and their negatives.");
        return count(new Node.Power(hat.at(), base, (int) (negative ? -e.si() : e.si())));
    }

    private Node primary(Token t) {
        switch (t.sort()) {
            case NUMBER -> { return count(new Node.Number(t.at(), t.si(), t.dimension())); }
            case QUOTED -> { return count(new Node.Word(t.at(), t.text())); }
            case NAME -> { return peek().is("(") ? call(t) : count(new Node.Name(t.at(), t.text())); }
            case SYMBOL, KEYWORD, END -> { }
        }
        if (t.is("yes") || t.is("no")) return count(new Node.Truth(t.at(), t.is("yes")));
        if (t.is("(")) {
            Node inside = expression(0);
            expect(")", "to close the bracket at character " + (t.at() + 1));
            return inside;
        }
        throw new SlipException(t.at(), "a value is missing before " + t.shown(), "A value is a number with its unit, a name, a call, or an expression in brackets.");
    }

    private Node call(Token name) {
        expect("(", "after the name");
        List<Node> arguments = new ArrayList<>();
        if (!peek().is(")")) {
            do arguments.add(expression(0));
            while (accept(","));
        }
        expect(")", "to close the call of " + name.text());
        return count(new Node.Call(name.at(), name.text(), List.copyOf(arguments)));
    }
}
