package leeway.core.expression;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leeway.core.quantity.Dimension;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;

/**
 * Cuts a formula into numbers with their units, names of one or more words, keywords, quoted words and symbols.
 * <p>A unit is the longest known spelling that follows its number with at most one space and that no letter, digit or
 * bracket continues; so {@code 20 /min} is a rate and {@code 20 / min(a, b)} a division.
 */
final class Lexer {
    private static final Set<String> KEYWORDS = Set.of("if", "then", "else", "and", "or", "not", "yes", "no");
    private static final int LONGEST_UNIT = Units.spellings().keySet().stream().mapToInt(String::length).max().orElse(0);
    private final String text;
    private int i;

    private Lexer(String text) { this.text = text; }

    static List<Token> cut(String text) {
        Lexer lexer = new Lexer(text);
        List<Token> tokens = new ArrayList<>();
        do tokens.add(lexer.next());
        while (tokens.get(tokens.size() - 1).sort() != Token.Sort.END);
        return tokens;
    }

    private Token next() {
        while (i < text.length() && Character.isWhitespace(text.charAt(i))) i++;
        if (i == text.length()) return new Token(Token.Sort.END, i, "", 0, Dimension.NONE);
        char c = text.charAt(i);
        if (digit(c) || c == '.' && i + 1 < text.length() && digit(text.charAt(i + 1))) return number();
        if (letter(c)) return words();
        if (c == '"') return quoted();
        for (String symbol : List.of("<=", ">=", "!=", "<", ">", "=", "+", "-", "*", "/", "^", "(", ")", ",")) {
            if (text.startsWith(symbol, i)) {
                i += symbol.length();
                return new Token(Token.Sort.SYMBOL, i - symbol.length(), symbol, 0, Dimension.NONE);
            }
        }
        throw new SlipException(i, "\"" + new String(Character.toChars(text.codePointAt(i))) + "\" means nothing in a formula", hint(c));
    }

    private static String hint(char c) {
        return switch (c) {
            case '×', '·' -> "Times is written *.";
            case '÷' -> "Divided by is written /.";
            case '≤', '≥' -> "Write <= or >=.";
            case '&', '|', '!' -> "Write and, or, not.";
            case '\'' -> "A word stands in double quotes, for example \"A/C-VC\".";
            default -> "Formulas have + - * / ^, comparisons, and, or, not, if … then … else, names, numbers with units, brackets.";
        };
    }

    private Token number() {
        int from = i;
        while (i < text.length() && digit(text.charAt(i))) i++;
        if (i < text.length() && text.charAt(i) == '.') {
            i++;
            while (i < text.length() && digit(text.charAt(i))) i++;
        }
        exponent();
        double number = Double.parseDouble(text.substring(from, i));
        if (!Double.isFinite(number)) throw new SlipException(from, "that number is too large", "Write one below 1e300.");
        Optional<Unit> unit = unit();
        String shown = text.substring(from, i);
        Unit u = unit.orElse(Units.ONE);
        return new Token(Token.Sort.NUMBER, from, shown, number * u.factor() + u.offset(), u.dimension());
    }

    private void exponent() {
        if (i >= text.length() || text.charAt(i) != 'e' && text.charAt(i) != 'E') return;
        int j = i + 1;
        if (j < text.length() && (text.charAt(j) == '-' || text.charAt(j) == '+')) j++;
        if (j >= text.length() || !digit(text.charAt(j))) return;
        while (j < text.length() && digit(text.charAt(j))) j++;
        i = j;
    }

    private Optional<Unit> unit() {
        int from = i < text.length() && text.charAt(i) == ' ' ? i + 1 : i;
        for (int to = Math.min(text.length(), from + LONGEST_UNIT); to > from; to--) {
            Optional<Unit> unit = Units.find(text.substring(from, to));
            if (unit.isEmpty() || !ends(text.charAt(to - 1), to)) continue;
            i = to;
            return unit;
        }
        return Optional.empty();
    }

    /** True where a unit that ends before {@code to} is not continued by a letter, a digit or the bracket of a call. */
    private boolean ends(char last, int to) {
        if (to == text.length()) return true;
        char next = text.charAt(to);
        return !(letter(next) || digit(next) || next == '(') || last == '%' || last == '°';
    }

    private Token words() {
        int from = i;
        String first = word();
        if (KEYWORDS.contains(first)) return new Token(Token.Sort.KEYWORD, from, first, 0, Dimension.NONE);
        StringBuilder name = new StringBuilder(first);
        while (true) {
            int back = i;
            int j = i;
            while (j < text.length() && text.charAt(j) == ' ') j++;
            if (j == i || j >= text.length() || !letter(text.charAt(j))) break;
            i = j;
            String more = word();
            if (KEYWORDS.contains(more)) {
                i = back;
                break;
            }
            name.append(' ').append(more);
        }
        return new Token(Token.Sort.NAME, from, name.toString(), 0, Dimension.NONE);
    }

    private String word() {
        int from = i;
        while (i < text.length() && (letter(text.charAt(i)) || digit(text.charAt(i)) || text.charAt(i) == '-' && hyphen())) i++;
        return text.substring(from, i);
    }

    /** A hyphen between two letters, without spaces, belongs to the word ("end-tidal"); a minus needs a space. */
    private boolean hyphen() { return i > 0 && letter(text.charAt(i - 1)) && i + 1 < text.length() && letter(text.charAt(i + 1)); }

    private Token quoted() {
        int from = i;
        int to = text.indexOf('"', from + 1);
        if (to < 0) throw new SlipException(from, "the quote is not closed", "End it with a second \".");
        i = to + 1;
        return new Token(Token.Sort.QUOTED, from, text.substring(from + 1, to), 0, Dimension.NONE);
    }

    private static boolean digit(char c) { return c >= '0' && c <= '9'; }

    private static boolean letter(char c) { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'; }
}
