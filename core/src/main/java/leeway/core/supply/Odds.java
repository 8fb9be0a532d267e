package leeway.core.supply;

import java.util.List;
import leeway.core.supply.SupplyResult.Needed;
import leeway.core.transport.Transport;

/**
 * What a journey needs and how likely it is not enough, without bands, kits and remarks: for sweeps and sensitivity.
 *
 * @param neededL     quantiles of the demand on stores that can end, L of free gas
 * @param emptyChance that in some leg its stores end before the leg does
 * @param flatChance  the same of charge
 */
public record Odds(Needed neededL, double emptyChance, double flatChance) {
    /** The same figures as {@link Supply#of} gives for the same seed and number of draws. */
    public static Odds of(Transport transport, List<LegNeed> needs, long seed, int draws) {
        Route route = new Route(transport, needs);
        Journey journey = new Journey(route, new Chances(route, seed), draws, false);
        return new Odds(journey.needed(), journey.dryChance(), journey.flatChance());
    }
}
