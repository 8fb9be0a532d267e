package leeway.core.transport;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A stretch of the journey.
 *
 * @param takesMin         the median of a lognormal duration
 * @param atWorstMin       its 95th percentile
 * @param oxygen           names of stores, used in that order
 * @param power            name of a power store; empty: the device's own pack
 * @param altitudeM        cabin or ground altitude
 * @param unpressurised    true where the altitude is the aircraft's own
 * @param climbMin         over how long the altitude is reached
 * @param temperatureCel   around the kit
 * @param noise            name of the noise, which says how likely an alarm is heard
 * @param sedation         from its start on, where it differs from before
 */
public record Leg(String name, double takesMin, double atWorstMin, List<String> oxygen, Optional<String> power, double altitudeM,
                  boolean unpressurised, double climbMin, OptionalDouble temperatureCel, Optional<String> noise, Optional<Diversion> diversion,
                  int crew, boolean waiting, boolean charging, Optional<Double> aircraftAltitudeM, Optional<Sedation> sedation) {
    public Leg { oxygen = List.copyOf(oxygen); }

    /** A leg on which sedation stays as it is. */
    public Leg(String name, double takesMin, double atWorstMin, List<String> oxygen, Optional<String> power, double altitudeM, boolean unpressurised, double climbMin,
               OptionalDouble temperatureCel, Optional<String> noise, Optional<Diversion> diversion, int crew, boolean waiting, boolean charging, Optional<Double> aircraftAltitudeM) {
        this(name, takesMin, atWorstMin, oxygen, power, altitudeM, unpressurised, climbMin, temperatureCel, noise, diversion, crew, waiting, charging, aircraftAltitudeM, Optional.empty());
    }

    /** A detour that may come. */
    public record Diversion(double chance, double addsMin) { }
}
