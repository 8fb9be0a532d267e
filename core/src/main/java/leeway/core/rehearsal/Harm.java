package leeway.core.rehearsal;

/**
 * The first harm threshold that is crossed.
 *
 * @param threshold the value crossed, in {@code unit}
 * @param afterS    after the fault
 */
public record Harm(Measure measure, double threshold, double afterS) {
    /**
     * A measure that came near to harm and did not reach it.
     *
     * @param value where it was nearest, in the measure's unit
     * @param share of its room at the start that was left there
     */
    public record Near(Measure measure, double value, double share) { }

    /** What harm is measured by, in the words and units of results. */
    public enum Measure {
        SATURATION("saturation", "1"), PACO2("paco2", "mmHg"), PH("ph", "1"), AIRWAY_PRESSURE("airway pressure", "cmH2O"),
        TRANSPULMONARY_PRESSURE("transpulmonary pressure", "cmH2O"), VOLUME("volume", "mL"), CIRCULATION("circulation", "L/min"),
        NO_VENTILATION("no ventilation", "s"), SUPPLY("supply", "min");

        private final String words;
        private final String unit;

        Measure(String words, String unit) {
            this.words = words;
            this.unit = unit;
        }

        public String words() { return words; }

        public String unit() { return unit; }
    }

    public String unit() { return measure.unit(); }
}
