package leeway.core.kit;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a service can carry: the cylinders and packs to choose from.
 *
 * @param packs  charged packs that follow the ventilator's own
 * @param source where the values come from, or "invented"
 */
public record Kit(String name, List<Item> items, List<Pack> packs, String source) {
    public Kit {
        items = List.copyOf(items);
        packs = List.copyOf(packs);
        if (items.size() > 12) throw new IllegalArgumentException("kit %s has %s kinds; the smallest kit is proven for at most 12".formatted(name, items.size()));
        if (packs.size() > 12) throw new IllegalArgumentException("kit %s has %s kinds of pack; at most 12".formatted(name, packs.size()));
    }

    /** A kit without packs. */
    public Kit(String name, List<Item> items, String source) { this(name, items, List.of(), source); }

    /**
     * A kind of cylinder.
     *
     * @param waterL      water capacity of one
     * @param pressureBar gauge pressure when full
     * @param massKg      of one, full, with its valve
     * @param count       how many there are to choose from
     * @param as          name of the store of the transport file in whose place it goes; empty: of any cylinder store that is carried
     */
    public record Item(String name, double waterL, double pressureBar, double massKg, int count, Optional<String> as) {
        public Item {
            if (!(waterL > 0 && pressureBar > 0 && massKg > 0 && count >= 0)) {
                throw new IllegalArgumentException("item %s: %s L, %s bar, %s kg, count %s".formatted(name, waterL, pressureBar, massKg, count));
            }
        }
    }

    /**
     * A kind of pack.
     *
     * @param sheet   name of its battery sheet
     * @param battery that sheet, once somebody has looked it up
     * @param massKg  of one; empty: as in its sheet
     * @param count   how many there are to choose from
     */
    public record Pack(String name, String sheet, Optional<Battery> battery, OptionalDouble massKg, int count) { }
}
