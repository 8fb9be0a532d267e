package leeway.core.plan;

import java.util.function.Supplier;

/** Something worked out when it is first asked for, and kept. Two who ask at once may both work; they get the same. */
final class Later<T> implements Supplier<T> {
    private final Supplier<T> work;
    private T value;

    Later(Supplier<T> work) { this.work = work; }

    @Override public T get() {
        if (value == null) value = work.get();
        return value;
    }
}
