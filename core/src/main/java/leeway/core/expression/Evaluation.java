package leeway.core.expression;

/** Works out a checked formula. Both arms of a choice are checked, only one is computed. */
final class Evaluation implements Node.Cases<Value> {
    private final Names names;
    private final Values values;

    Evaluation(Names names, Values values) {
        this.names = names;
        this.values = values;
    }

    private static Value finite(int at, double si, leeway.core.quantity.Dimension dimension) {
        if (!Double.isFinite(si)) throw new SlipException(at, "the result is too large to be a number", "Check the units and the divisor.");
        return Value.amount(si == 0 ? 0 : si, dimension);
    }

    @Override public Value number(Node.Number n) { return Value.amount(n.si(), n.dimension()); }

    @Override public Value word(Node.Word n) { return Value.of(n.text()); }

    @Override public Value truth(Node.Truth n) { return Value.of(n.truth()); }

    @Override public Value name(Node.Name n) { return values.of(n.name()); }

    @Override public Value minus(Node.Minus n) {
        Value v = n.of().match(this);
        return finite(n.at(), -v.si(), v.type().dimension());
    }

    @Override public Value not(Node.Not n) { return Value.of(!n.of().match(this).truth()); }

    @Override public Value pair(Node.Pair n) {
        Value a = n.left().match(this);
        switch (n.operator()) {
            case OR -> { return a.truth() ? a : n.right().match(this); }
            case AND -> { return a.truth() ? n.right().match(this) : a; }
            default -> { }
        }
        Value b = n.right().match(this);
        double near = 1e-12 * Math.max(Math.abs(a.si()), Math.abs(b.si()));
        boolean equal = a.type().amount() ? Math.abs(a.si() - b.si()) <= near : a.truth() == b.truth() && a.word().equals(b.word());
        return switch (n.operator()) {
            case EQUAL -> Value.of(equal);
            case UNEQUAL -> Value.of(!equal);
            case LESS -> Value.of(!equal && a.si() < b.si());
            case AT_MOST -> Value.of(equal || a.si() < b.si());
            case MORE -> Value.of(!equal && a.si() > b.si());
            case AT_LEAST -> Value.of(equal || a.si() > b.si());
            case PLUS -> finite(n.at(), a.si() + b.si(), a.type().dimension());
            case MINUS -> finite(n.at(), a.si() - b.si(), a.type().dimension());
            case TIMES -> finite(n.at(), a.si() * b.si(), a.type().dimension().times(b.type().dimension()));
            case OVER -> {
                if (b.si() == 0) throw new SlipException(n.at(), "division by zero", "The divisor must not be zero for any patient; max(…) keeps it above.");
                yield finite(n.at(), a.si() / b.si(), a.type().dimension().over(b.type().dimension()));
            }
            case OR, AND -> throw new AssertionError(n.operator());
        };
    }

    @Override public Value power(Node.Power n) {
        Value base = n.base().match(this);
        if (base.si() == 0 && n.exponent() < 0) throw new SlipException(n.at(), "division by zero", "The base must not be zero.");
        double product = 1;
        for (int k = 0; k < Math.abs(n.exponent()); k++) product *= base.si();
        return finite(n.at(), n.exponent() < 0 ? 1 / product : product, base.type().dimension().power(n.exponent()));
    }

    @Override public Value choice(Node.Choice n) { return n.condition().match(this).truth() ? n.yes().match(this) : n.no().match(this); }

    @Override public Value call(Node.Call n) {
        var table = names.table(n.name());
        if (table.isPresent()) return Value.amount(table.get().at(n.arguments().get(0).match(this).si()), table.get().gives().dimension());
        Function f = Function.of(n.name()).orElseThrow(() -> new AssertionError(n.name()));
        double[] x = new double[n.arguments().size()];
        leeway.core.quantity.Dimension dimension = null;
        for (int i = 0; i < x.length; i++) {
            Value v = n.arguments().get(i).match(this);
            if (i == 0) dimension = v.type().dimension();
            x[i] = v.si();
        }
        return finite(n.at(), f.value(n.at(), x), dimension);
    }
}
