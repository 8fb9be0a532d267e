package leeway.core.calc;

import java.util.List;

/** One calculation: what it is called, what it needs, what it answers. */
public interface Calc {
    /** As on the command line. */
    String name();

    /** What it works out, in a sentence. */
    String plain();

    /** What may be given, in order of importance. */
    List<Key> keys();

    /** An example as typed after the name, which works. */
    String example();

    /** Works it out. What only the values together get wrong goes to {@link Given#wrong}; the answer is then not used. */
    CalcResult of(Given given);
}
