package leeway.core.alarm;

import leeway.core.run.Draw;
import leeway.core.run.Normal;

/**
 * Noise of a sensor at a breath: depends only on (seed, draw, sensor, breath), so that branches and threads share it.
 * Counter-based, the finaliser of SplitMix64 as in {@link Draw}.
 */
final class Chance {
    private Chance() { }

    static double normal(Draw draw, int sensor, long breath) {
        long z = mix(draw.seed() + 0x9e3779b97f4a7c15L * (draw.draw() + 1));
        z = mix(z ^ 0xd1b54a32d192ed03L * (sensor + 1));
        z = mix(z + 0x8cb92ba72f3d8dd7L * (breath + 1));
        return Normal.quantile(((z >>> 12) + 0.5) * 0x1.0p-52);
    }

    private static long mix(long z) {
        z = (z ^ z >>> 30) * 0xbf58476d1ce4e5b9L;
        z = (z ^ z >>> 27) * 0x94d049bb133111ebL;
        return z ^ z >>> 31;
    }
}
