package leeway.core.supply;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the stores of a journey hold, what it needs, and with what chance that is not enough.
 *
 * @param power   absent for what needs none
 * @param home    what is left when the kit is back; absent where the file says nothing of the way home
 * @param reasons why the supply does not hold, a sentence each; empty where it does
 * @param remarks what to know all the same
 * @param assumed defaults that this room took
 */
public record SupplyResult(Oxygen oxygen, Optional<Power> power, Optional<Home> home, List<String> reasons, List<String> remarks, List<String> assumed) {
    public SupplyResult {
        reasons = List.copyOf(reasons);
        remarks = List.copyOf(remarks);
        assumed = List.copyOf(assumed);
    }

    /**
     * Oxygen; litres of free gas. Words as in the transport file's contract.
     *
     * @param neededL           demand on stores that can end, not cut by supply, without reserve
     * @param usableL           what the stores that the legs name give down to their residual pressure, endless ones left out
     * @param emptyChance       chance that in some leg its stores end before the leg does
     * @param emptyChanceError  standard error of that chance, from the number of draws
     * @param marginMin         the least over the legs of what the leg's own stores still hold at its end, divided by its draw; absent where all are endless
     * @param leftAtEndMin      at medians, what the last leg's stores still hold at the far end, in minutes of its draw; absent where they are endless
     * @param withoutLargestMin minutes from departure, at medians, until some leg is dry without the largest cylinder, the last leg without end
     * @param at100Min          the same with all stores at FiO2 1.0
     * @param handBagMin        the same by hand bag
     * @param turnBackByMin     at medians, the latest moment from which the way back is still supplied; absent where it always is
     * @param reserveL          the policy's reserve at the last leg's draw
     * @param take              the lightest kit that meets the policy, where one does; {@code nextBest} the next three
     * @param savings           what one change would save, the most first
     * @param analytic          quantiles by moments beside those by draws; absent where the journey is not a plain sum of lognormal legs
     * @param series            what each store still holds along the journey
     * @param beforeL           taken after the gauges were read and before departure: start-up check and standing by
     * @param high              the same at the high side of the ventilator's FiO2 error; absent where it changes nothing
     * @param wall              minutes by gauge reading and draw for the cylinders of the legs, one of each kind
     */
    public record Oxygen(List<OxygenLeg> byLeg, List<OxygenStore> stores, Needed neededL, double usableL, double emptyChance, double emptyChanceError,
                         Optional<Margin> marginMin, OptionalDouble leftAtEndMin, List<Changeover> changeovers, List<Handover> handovers,
                         OptionalDouble withoutLargestMin, OptionalDouble at100Min, OptionalDouble handBagMin, OptionalDouble turnBackByMin,
                         double reserveL, Optional<Take> take, List<Take> nextBest, List<Saving> savings, Optional<Needed> analytic, List<Series> series, double beforeL,
                         Optional<High> high, List<WallTable> wall) {
        public Oxygen {
            byLeg = List.copyOf(byLeg);
            stores = List.copyOf(stores);
            changeovers = List.copyOf(changeovers);
            handovers = List.copyOf(handovers);
            nextBest = List.copyOf(nextBest);
            savings = List.copyOf(savings);
            series = List.copyOf(series);
            wall = List.copyOf(wall);
        }
    }

    /** Draws, need and chance where a ventilator gives more oxygen than is set, by its sheet's error, all the way. */
    public record High(double fio2Error, List<Double> drawLPerMin, Needed neededL, double emptyChance) {
        public High { drawLPerMin = List.copyOf(drawLPerMin); }
    }

    /** One leg: its draw from its first store, the median need, its stores in order, the FiO2 that comes of it, the draw at FiO2 1.0, the working. */
    public record OxygenLeg(String leg, double drawLPerMin, double neededL, List<String> from, double fio2, double at100LPerMin, List<String> working) {
        public OxygenLeg {
            from = List.copyOf(from);
            working = List.copyOf(working);
        }
    }

    /** One store, all its cylinders together; an endless one has no contents. {@code emptyChance}: that it is run down to its residual pressure on the way. */
    public record OxygenStore(String name, int count, OptionalDouble freeGasL, OptionalDouble usableL, OptionalDouble z, OptionalDouble emptyChance) { }

    /** Quantiles of a demand. */
    public record Needed(double p50, double p95, double p99) { }

    /** Minutes left: the median, and what 19 of 20 journeys have at least. */
    public record Margin(double p50, double p05) { }

    /**
     * A moment, at medians, to turn to another cylinder.
     *
     * @param store       the store whose cylinder is left
     * @param cylinder    which of its cylinders, from 1
     * @param atGaugeBar  what its gauge then shows; absent for a store without a gauge
     * @param to          the store to turn to; the same name means its next cylinder
     * @param why         "run down", "next leg" or "planned"
     * @param handBag     whether ventilation stops meanwhile, so that the hand bag bridges it
     */
    public record Changeover(String store, int cylinder, OptionalDouble atGaugeBar, double aboutMin, String to, String why, boolean handBag) { }

    /** What a gauge is expected to show where a leg ends: the median and what 19 of 20 journeys show at least; of the cylinder in use. */
    public record Handover(String leg, double atMin, String store, int cylinder, double gaugeBar, double gaugeLowBar) { }

    /** A kit: what to take. */
    public record Take(List<TakeItem> items, double massKg, double emptyChance) {
        public Take { items = List.copyOf(items); }

        public int count() { return items.stream().mapToInt(TakeItem::count).sum(); }
    }

    public record TakeItem(String name, int count) { }

    /** One change and what it would save: litres at the median, and the chance of running dry after it. */
    public record Saving(String what, double savesL, double emptyChance) { }

    /** A quantity along the journey, at the legs' medians: quantiles 0.05, 0.5, 0.95. */
    public record Series(String name, String unit, List<Point> points) {
        public Series { points = List.copyOf(points); }
    }

    public record Point(double atMin, double p05, double p50, double p95) { }

    /**
     * Charge.
     *
     * @param neededWh           median demand on packs
     * @param usableWh           what the packs that the legs name give, at the coldest leg on them
     * @param marginMin          at medians, the least over the legs on a pack of what it still gives at the leg's end, divided by the load; absent without such a leg
     * @param marginP05Min       what 19 of 20 journeys have at least
     * @param take               the lightest packs of the kit that meet the policy after the own one; absent where no kit names packs or none is enough
     * @param withoutExternalMin minutes from departure, at medians, until the pack is empty where no outside source works, the last leg without end
     */
    public record Power(double neededWh, double usableWh, double emptyChance, double emptyChanceError, OptionalDouble marginMin, OptionalDouble marginP05Min,
                        OptionalDouble withoutExternalMin, List<PowerLeg> byLeg, List<PowerPack> stores, List<Series> series,
                        Optional<Take> take) {
        public Power {
            byLeg = List.copyOf(byLeg);
            stores = List.copyOf(stores);
            series = List.copyOf(series);
        }
    }

    /** One leg: load, median need, and what feeds it. */
    public record PowerLeg(String leg, double loadW, double neededWh, String from) { }

    /** One pack: what it holds when full at its age, and what it gives from the charge it shows at the coldest leg on it. */
    public record PowerPack(String name, double capacityWh, double usableWh) { }

    /**
     * The kit at home again, at medians.
     *
     * @param atMin   from departure
     * @param stores  what each store still holds, and what its gauge shows at 20 °C
     * @param packs   what each pack still gives as at 25 °C, and what it shows
     * @param flatMin when the pack ends on the way; absent where it does not
     */
    public record Home(double atMin, List<HomeStore> stores, List<HomePack> packs, OptionalDouble flatMin) {
        public Home {
            stores = List.copyOf(stores);
            packs = List.copyOf(packs);
        }
    }

    public record HomeStore(String name, double leftL, OptionalDouble gaugeBar) { }

    public record HomePack(String name, double leftWh, double charge) { }
}
