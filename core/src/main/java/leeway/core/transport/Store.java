package leeway.core.transport;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Something that holds or gives oxygen.
 *
 * @param waterL       water capacity of one cylinder
 * @param size         the size as written, "US E" or "2 L"
 * @param pressureBar  gauge pressure as read
 * @param readAtCel    temperature of the gas when the gauge was read
 * @param liquidL      of liquid oxygen
 * @param flowLPerMin  the most that a concentrator gives
 * @param residualBar  gauge pressure that stays inside
 * @param massKg       of one
 */
public record Store(String name, Type type, Optional<String> size, OptionalDouble waterL, OptionalDouble pressureBar, OptionalDouble readAtCel,
                    OptionalDouble liquidL, OptionalDouble flowLPerMin, int count, double residualBar, Gauge gauge, OptionalDouble massKg, Inlet inlet) {
    /** What kind of store. */
    public enum Type { CYLINDER, WALL, LIQUID, CONCENTRATOR }

    /**
     * How well its pressure is known.
     *
     * @param accuracyClass permissible error in percent of the span (EN 837-1)
     * @param readToBar     half-width of the reading
     */
    public record Gauge(double accuracyClass, double spanBar, double readToBar) { }

    /** How it is connected: at the high pressure inlet, or by a flowmeter set to a flow. */
    public record Inlet(boolean highPressure, OptionalDouble flowmeterLPerMin) { }
}
