package leeway.core.expression;

import java.util.Arrays;
import java.util.Optional;

/** The closed list of functions. */
enum Function {
    /** The least of its arguments, all of one dimension. */
    MIN("min", 2, 8, "min(a, b)"),
    MAX("max", 2, 8, "max(a, b)"),
    /** The first, kept between the second and the third. */
    CLAMP("clamp", 3, 3, "clamp(value, from, to)"),
    /** To the nearest multiple of a step; halves away from zero. */
    ROUND("round", 2, 2, "round(value, step)"),
    FLOOR("floor", 2, 2, "floor(value, step)"),
    CEIL("ceil", 2, 2, "ceil(value, step)"),
    ABS("abs", 1, 1, "abs(value)"),
    /** Of a plain number. */
    EXP("exp", 1, 1, "exp(number)"),
    /** Natural logarithm of a plain number above zero. */
    LN("ln", 1, 1, "ln(number)");

    final String word;
    final int least;
    final int most;
    final String example;

    Function(String word, int least, int most, String example) {
        this.word = word;
        this.least = least;
        this.most = most;
        this.example = example;
    }

    static Optional<Function> of(String word) { return Arrays.stream(values()).filter(f -> f.word.equals(word)).findFirst(); }

    double value(int at, double... x) {
        return switch (this) {
            case MIN -> Arrays.stream(x).min().getAsDouble();
            case MAX -> Arrays.stream(x).max().getAsDouble();
            case CLAMP -> {
                if (x[1] > x[2]) throw new SlipException(at, "clamp has its lower end above its upper one", "Write clamp(value, from, to) with from below to.");
                yield Math.max(x[1], Math.min(x[2], x[0]));
            }
            case ROUND -> (x[0] < 0 ? -1 : 1) * Math.floor(steps(at, Math.abs(x[0]), x[1]) + 0.5) * x[1];
            case FLOOR -> Math.floor(steps(at, x[0], x[1]) + 1e-9) * x[1];
            case CEIL -> Math.ceil(steps(at, x[0], x[1]) - 1e-9) * x[1];
            case ABS -> Math.abs(x[0]);
            case EXP -> StrictMath.exp(x[0]);
            case LN -> {
                if (!(x[0] > 0)) throw new SlipException(at, "ln of a number that is not above zero", "Its argument must be above zero.");
                yield StrictMath.log(x[0]);
            }
        };
    }

    private double steps(int at, double value, double step) {
        if (!(step > 0)) throw new SlipException(at, word + " has a step that is not above zero", "Write " + example + " with a step above zero.");
        return Value.tidy(value / step);
    }
}
