package leeway.core.expression;

/** What the names of a formula come to; asked only for names that passed the check. */
@FunctionalInterface
public interface Values {
    Value of(String name);
}
