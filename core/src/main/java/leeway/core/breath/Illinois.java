package leeway.core.breath;

/**
 * A root between two ends at which a value misses it on either side: the secant, with the weight of an end halved that stays
 * twice (the Illinois method; Dowell and Jarratt, BIT 1971;11:168, from memory).
 * <p>Who seeks asks for the {@link #next} place, hands back what is missed there by {@link #took}, and says when it is near enough.
 * Leaves out ends on the same side: they are the caller's to see.
 */
final class Illinois {
    /** What brackets the root, as narrow as it has become. */
    double low, high;
    private double lowMiss, highMiss, place;
    private int side;
    private boolean falls;

    void begin(double low, double high, double lowMiss, double highMiss) {
        this.low = low;
        this.high = high;
        this.lowMiss = lowMiss;
        this.highMiss = highMiss;
        side = 0;
        falls = highMiss < 0 || highMiss == 0 && lowMiss > 0;
    }

    /** Where to look next. */
    double next() {
        place = low - lowMiss / (highMiss - lowMiss) * (high - low);
        if (!(place > low && place < high)) place = 0.5 * (low + high);
        return place;
    }

    /** Narrows the bracket by what is missed at the place last asked for; true where it is nothing, and {@link #high} the root. */
    boolean took(double miss) {
        if (miss == 0 || miss < 0 == falls) {
            high = place;
            highMiss = miss;
            if (side > 0) lowMiss *= 0.5;
            side = 1;
        } else {
            low = place;
            lowMiss = miss;
            if (side < 0) highMiss *= 0.5;
            side = -1;
        }
        return miss == 0;
    }

    /** Whether the bracket is wider than this share of itself and its place. */
    boolean wide(double share) {
        return high - low > share * (1 + high);
    }
}
