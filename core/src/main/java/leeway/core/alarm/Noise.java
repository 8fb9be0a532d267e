package leeway.core.alarm;

import leeway.core.kit.AlarmRow.Priority;

/** What a leg sounds like: the chance that one repetition of an alarm's sound is heard, by priority; 0 to 1. */
public record Noise(String name, double heardHigh, double heardMedium, double heardLow, String source) {
    public Noise {
        for (double p : new double[] {heardHigh, heardMedium, heardLow}) {
            if (!(p >= 0 && p <= 1)) throw new IllegalArgumentException("noise \"%s\": chance %s".formatted(name, p));
        }
    }

    public double heard(Priority priority) {
        return switch (priority) {
            case HIGH -> heardHigh;
            case MEDIUM -> heardMedium;
            case LOW -> heardLow;
        };
    }
}
