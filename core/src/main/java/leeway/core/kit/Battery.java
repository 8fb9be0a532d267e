package leeway.core.kit;

import java.util.List;

/**
 * A battery pack.
 *
 * @param nominalWh          when new, at 25 Cel
 * @param lifeYears          after which its maker wants it replaced
 * @param fadeShelfPerYear   share of capacity lost in the first year on the charger; the loss grows with the root of time
 * @param fadePerCycle       share lost per full cycle
 * @param temperature        share available at a temperature, in rising order of temperature
 * @param cutOff             share at which the device stops
 * @param gaugeSd            standard deviation of the shown charge, as a share of full
 * @param chargeW            the largest charging power
 * @param chargesFromCel     below this it refuses to charge
 */
public record Battery(String name, double nominalWh, double lifeYears, double fadeShelfPerYear, double fadePerCycle, List<Point> temperature,
                      double cutOff, double gaugeSd, double chargeW, double chargesFromCel, double chargesToCel, double massKg, String source) {
    /** A share of capacity at a temperature. */
    public record Point(double temperatureCel, double share) { }

    public Battery { temperature = List.copyOf(temperature); }
}
