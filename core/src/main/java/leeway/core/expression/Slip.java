package leeway.core.expression;

/**
 * One thing wrong in a formula.
 *
 * @param offset where in the formula's text, from 0
 * @param what   what is wrong, in the writer's words, without a full stop
 * @param right  what would be right, a sentence
 */
public record Slip(int offset, String what, String right) {
    @Override public String toString() { return what + ". " + right; }
}
