package leeway.core.expression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import leeway.core.quantity.Dimension;
import leeway.core.quantity.Units;

/** Works out what a formula stands for and refuses what does not fit: unknown names, mixed dimensions, wrong arguments. */
final class Check implements Node.Cases<Type> {
    private final Names names;

    Check(Names names) { this.names = names; }

    private Type amount(Node node, String whose) {
        Type type = node.match(this);
        if (!type.amount()) throw new SlipException(node.at(), whose + " needs an amount, this is " + type.words(), "Give a number with its unit or a name that stands for one.");
        return type;
    }

    private void truth(Node node, String whose) {
        Type type = node.match(this);
        if (type.sort() != Type.Sort.TRUTH) throw new SlipException(node.at(), whose + " needs a yes or no, this is " + type.words(), "Write a comparison, for example age < 1 year.");
    }

    @Override public Type number(Node.Number n) { return Type.of(n.dimension()); }

    @Override public Type word(Node.Word n) { return Type.WORD; }

    @Override public Type truth(Node.Truth n) { return Type.TRUTH; }

    @Override public Type name(Node.Name n) {
        return names.type(n.name()).orElseThrow(() -> new SlipException(n.at(), "there is no \"" + shortened(n.name()) + "\" here", offer(n.name())));
    }

    private String offer(String name) {
        if (Units.find(name).isPresent()) return "That is a unit; it stands right after its number, as in 6 " + name + ".";
        if (names.table(name).isPresent()) return "That is a table; look up in it with " + name + "(…).";
        return nearest(name, names.known()).map(n -> "Did you mean \"" + n + "\"?").orElse("Names are those of the patient, the settings and this sheet.");
    }

    @Override public Type minus(Node.Minus n) { return amount(n.of(), "minus"); }

    @Override public Type not(Node.Not n) {
        truth(n.of(), "not");
        return Type.TRUTH;
    }

    @Override public Type pair(Node.Pair n) {
        String symbol = n.operator().symbol;
        switch (n.operator()) {
            case OR, AND -> {
                truth(n.left(), symbol);
                truth(n.right(), symbol);
                return Type.TRUTH;
            }
            case EQUAL, UNEQUAL -> {
                same(n, n.left().match(this), n.right().match(this), "compared with");
                return Type.TRUTH;
            }
            case LESS, AT_MOST, MORE, AT_LEAST -> {
                same(n, amount(n.left(), symbol), amount(n.right(), symbol), "compared with");
                return Type.TRUTH;
            }
            case PLUS, MINUS -> { return same(n, amount(n.left(), symbol), amount(n.right(), symbol), n.operator() == Node.Operator.PLUS ? "added to" : "subtracted with"); }
            case TIMES -> { return Type.of(amount(n.left(), symbol).dimension().times(amount(n.right(), symbol).dimension())); }
            case OVER -> { return Type.of(amount(n.left(), symbol).dimension().over(amount(n.right(), symbol).dimension())); }
        }
        throw new AssertionError(n.operator());
    }

    private static Type same(Node n, Type left, Type right, String verb) {
        if (!left.equals(right)) throw new SlipException(n.at(), left.words() + " cannot be " + verb + " " + right.words(), right.equals(Type.NUMBER) || left.equals(Type.NUMBER)
                ? "Give the plain number its unit." : "Both sides must measure the same thing.");
        return left;
    }

    @Override public Type power(Node.Power n) {
        Dimension base = amount(n.base(), "^").dimension();
        return Type.of(base.power(n.exponent()));
    }

    @Override public Type choice(Node.Choice n) {
        truth(n.condition(), "if");
        Type yes = n.yes().match(this);
        Type no = n.no().match(this);
        if (!yes.equals(no)) throw new SlipException(n.at(), "then gives " + yes.words() + ", else gives " + no.words(), "Both must measure the same thing.");
        return yes;
    }

    @Override public Type call(Node.Call n) {
        if (names.table(n.name()).isPresent()) {
            Table table = names.table(n.name()).get();
            if (n.arguments().size() != 1) throw new SlipException(n.at(), "the table \"" + table.name() + "\" is looked up by one value, not " + n.arguments().size(), "Write " + table.name() + "(value).");
            Type by = amount(n.arguments().get(0), table.name());
            if (!by.equals(table.of())) throw new SlipException(n.arguments().get(0).at(), "the table \"" + table.name() + "\" is looked up by " + table.of().words() + ", not by " + by.words(), "Give " + table.of().words() + ".");
            return table.gives();
        }
        Function f = Function.of(n.name()).orElseThrow(() -> new SlipException(n.at(), "there is no function or table \"" + shortened(n.name()) + "\"",
                nearest(n.name(), Arrays.stream(Function.values()).map(x -> x.word).toList()).map(w -> "Did you mean \"" + w + "\"?")
                        .orElse("Functions are " + String.join(", ", Arrays.stream(Function.values()).map(x -> x.word).toList()) + ".")));
        int given = n.arguments().size();
        if (given < f.least || given > f.most) throw new SlipException(n.at(), f.word + " with " + given + (given == 1 ? " argument" : " arguments"), "Write " + f.example + ".");
        List<Type> types = new ArrayList<>();
        for (Node a : n.arguments()) types.add(amount(a, f.word));
        if (f == Function.EXP || f == Function.LN) {
            if (!types.get(0).equals(Type.NUMBER)) throw new SlipException(n.arguments().get(0).at(), f.word + " needs a plain number, this is " + types.get(0).words(), "Divide it by a quantity of the same kind first.");
            return Type.NUMBER;
        }
        for (int i = 1; i < types.size(); i++) {
            if (!types.get(i).equals(types.get(0))) throw new SlipException(n.arguments().get(i).at(), f.word + " mixes " + types.get(0).words() + " with " + types.get(i).words(), "All must measure the same thing.");
        }
        return types.get(0);
    }

    static String shortened(String name) { return name.length() > 40 ? name.substring(0, 40) + "…" : name; }

    /** The nearest known name by edits, where it is near enough to be meant. */
    static java.util.Optional<String> nearest(String name, Collection<String> known) {
        String best = null;
        int least = Math.max(1, Math.min(4, name.length() / 3)) + 1;
        for (String k : known) {
            int edits = edits(name, k);
            if (edits < least) {
                least = edits;
                best = k;
            }
        }
        return java.util.Optional.ofNullable(best);
    }

    private static int edits(String a, String b) {
        if (a.length() > 60 || b.length() > 60) return 99;
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) row[j] = j;
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int up = row[j];
                row[j] = Math.min(Math.min(row[j] + 1, row[j - 1] + 1), diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1));
                diagonal = up;
            }
        }
        return row[b.length()];
    }
}
