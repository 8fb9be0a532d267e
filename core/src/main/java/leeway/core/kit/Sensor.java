package leeway.core.kit;

import java.util.OptionalDouble;

/**
 * How a device measures one thing: shown = gain × true, delayed, smoothed, averaged, with bias, drift and noise.
 *
 * @param delayS      transport delay
 * @param lagS        first-order time constant
 * @param averageS    length of a moving mean; 0 for none
 * @param noiseSd     standard deviation of the noise, in the quantity's unit
 * @param biasBand    half-width of a constant error, in the quantity's unit
 * @param resolution  smallest step shown; 0 for continuous
 * @param driftPerHour how far it goes off in an hour of use, in the quantity's unit, up or down
 * @param weakBelow   of an oximeter: share of the usual cardiac output under which its pulse is too weak to read; 0 for never
 */
public record Sensor(Measured measured, Place place, double delayS, double lagS, double averageS, double noiseSd, double biasBand,
                     double resolution, OptionalDouble sampleFlowMlPerMin, double driftPerHour, double weakBelow) {
    /** What can be measured, with the unit it is held in. */
    public enum Measured {
        AIRWAY_PRESSURE("airway pressure", "cmH2O"), FLOW("flow", "L/min"), INSPIRED_VOLUME("inspired tidal volume", "mL"),
        EXPIRED_VOLUME("expired tidal volume", "mL"), END_TIDAL_CO2("end-tidal CO2", "mmHg"), INSPIRED_CO2("inspired CO2", "mmHg"),
        INSPIRED_OXYGEN("inspired oxygen", "1"), SATURATION("saturation", "1"), SUPPLY_PRESSURE("supply pressure", "bar"), CHARGE("charge", "1");

        private final String words;
        private final String unit;

        Measured(String words, String unit) {
            this.words = words;
            this.unit = unit;
        }

        public String words() { return words; }

        public String unit() { return unit; }
    }

    /** Where it measures. */
    public enum Place { PATIENT, PATIENT_LINE, VENTILATOR, SIDE_STREAM, MAIN_STREAM, FINGER, EAR, FOREHEAD, INLET, PACK }
}
