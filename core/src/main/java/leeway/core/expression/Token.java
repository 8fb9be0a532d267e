package leeway.core.expression;

import leeway.core.quantity.Dimension;

/**
 * A piece of a formula's text.
 *
 * @param at   its offset
 * @param text as written; of a name, its words with single spaces
 * @param si   of a number, with its unit
 */
record Token(Sort sort, int at, String text, double si, Dimension dimension) {
    enum Sort { NUMBER, NAME, KEYWORD, QUOTED, SYMBOL, END }

    boolean is(String symbol) { return (sort == Sort.SYMBOL || sort == Sort.KEYWORD) && text.equals(symbol); }

    String shown() { return sort == Sort.END ? "the end" : '"' + (text.length() > 40 ? text.substring(0, 40) + "…" : text) + '"'; }
}
