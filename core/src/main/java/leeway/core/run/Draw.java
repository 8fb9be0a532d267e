package leeway.core.run;

/**
 * One draw of the uncertain world: every named number in it depends only on (seed, draw, name).
 * <p>So faults, kits, threads and clusters share their random numbers, and adding a name changes no other. Draw 0 is the
 * world of all medians: uniform 0.5, normal 0. Counter-based: 64-bit FNV-1a of the name, mixed with seed and draw by the
 * finaliser of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014, variant 13 of Stafford; constants from memory).
 */
public record Draw(long seed, long draw) {
    /** The 0.95 quantile of the standard normal. */
    private static final double Z95 = 1.6448536269514722;

    public Draw {
        if (draw < 0) throw new IllegalArgumentException("draw (" + draw + ") counts from 0");
    }

    /** In the open interval (0, 1). */
    public double uniform(String name) {
        return uniform(seed, draw, key(name));
    }

    /** The hash of a name, for {@link #uniform(long, long, long)} where the same name is drawn many times. */
    public static long key(String name) {
        long h = 0xcbf29ce484222325L;
        for (int i = 0; i < name.length(); i++) h = (h ^ name.charAt(i)) * 0x100000001b3L;
        return h;
    }

    /** The same as {@code new Draw(seed, draw).uniform(name)} for the {@link #key} of the name. */
    public static double uniform(long seed, long draw, long key) {
        return draw == 0 ? 0.5 : uniform(stream(seed, draw), key);
    }

    /** What all names of one draw share, for {@link #uniform(long, long)} where many names are drawn; not for draw 0. */
    public static long stream(long seed, long draw) {
        return mix(draw * 0x9e3779b97f4a7c15L + mix(seed));
    }

    /** The same again, of a {@link #stream} and a {@link #key}. */
    public static double uniform(long stream, long key) {
        return (bits(stream, key) + 0.5) * 0x1.0p-52;
    }

    /** The 52 bits behind it, 0 to 2^52 − 1. */
    public static long bits(long stream, long key) {
        return mix(key ^ stream) >>> 12;
    }

    /** Standard normal, by the quantile of {@link #uniform}. */
    public double normal(String name) {
        return draw == 0 ? 0 : Normal.quantile(uniform(name));
    }

    /** Lognormal, given by its median and its 95th percentile. */
    public double lognormal(String name, double median, double p95) {
        if (!(median > 0) || !(p95 >= median)) throw new IllegalArgumentException("%s: median %s, 95th percentile %s".formatted(name, median, p95));
        return draw == 0 || p95 == median ? median : median * StrictMath.exp(normal(name) * StrictMath.log(p95 / median) / Z95);
    }

    private static long mix(long z) {
        z = (z ^ z >>> 30) * 0xbf58476d1ce4e5b9L;
        z = (z ^ z >>> 27) * 0x94d049bb133111ebL;
        return z ^ z >>> 31;
    }
}
