package leeway.core.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Ventilator;
import leeway.core.supply.SupplyResult.Home;
import leeway.core.supply.SupplyResult.HomePack;
import leeway.core.supply.SupplyResult.HomeStore;
import leeway.core.transport.KitAlone.Back;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;

/**
 * The way home of the kit without the patient, at medians: standing by takes its oxygen and charge, truly off takes neither.
 * <p>What stands by draws on the last leg's stores, in their order, and on the pack that the stretch names. Leaves out a pack that loses charge
 * by itself, and what the crew uses on the way.
 */
final class Homeward {
    private final Route route;
    private final double[] levelL;
    private final double[] chargeWh;

    Homeward(Route route, Trial end) {
        this.route = route;
        levelL = end.levelL.clone();
        chargeWh = end.chargeWh.clone();
    }

    Optional<Home> home() {
        List<Back> back = route.transport.alone().back();
        if (back.isEmpty()) return Optional.empty();
        double atMin = route.totalMedianMin();
        OptionalDouble flat = OptionalDouble.empty();
        for (Back b : back) {
            if (b.standby()) oxygen(b);
            double unfedMin = route.powered ? charge(b) : 0;
            atMin += b.takesMin();
            if (unfedMin > 0 && flat.isEmpty()) flat = OptionalDouble.of(atMin - unfedMin);
        }
        List<HomeStore> stores = new ArrayList<>();
        for (int s = 0; s < route.stores; s++) if (!route.endless[s] && route.named[s]) stores.add(new HomeStore(route.transport.oxygen().get(s).name(), levelL[s], gauge(s)));
        List<HomePack> packs = new ArrayList<>();
        for (int b = 0; b < route.packs && route.powered; b++) {
            double cut = route.capacityWh[b] - route.fullWh[b];
            packs.add(new HomePack(route.packName(b), chargeWh[b], route.capacityWh[b] > 0 ? (chargeWh[b] + cut) / route.capacityWh[b] : 0));
        }
        return Optional.of(new Home(atMin, stores, packs, flat));
    }

    private void oxygen(Back b) {
        double takes = route.transport.ventilator().gas().standbyLPerMin() * b.takesMin();
        for (int s : route.order[route.legs - 1]) {
            double gives = Math.min(takes, levelL[s]);
            if (!route.endless[s]) levelL[s] -= gives;
            takes -= gives;
        }
    }

    /** Minutes that no pack fed. */
    private double charge(Back b) {
        Ventilator.Load load = route.transport.ventilator().load().orElseThrow();
        double cel = b.temperatureCel().orElse(Route.ROOM_CEL);
        double watt = b.standby() ? load.standbyW() : 0;
        Optional<PowerStore> source = b.power().flatMap(name -> route.transport.power().stream().filter(p -> p.name().equals(name)).findFirst());
        if (source.isPresent() && source.get().mains()) {
            if (route.ownPack < 0) return 0;
            double into = Charge.chargingW(route.pack(0).battery().orElseThrow(), load, watt, cel) * b.takesMin() / 60;
            chargeWh[0] = Math.min(route.fullWh[0], chargeWh[0] + into);
            return 0;
        }
        if (watt <= 0 || route.ownPack < 0) return 0;
        double rest = b.takesMin();
        int first = route.ownPack;
        for (int k = 0; k < route.packs; k++) if (source.isPresent() && route.packName(k).equals(source.get().name())) first = k;
        for (int k = first; k >= 0 && rest > 0; k = route.nextPack[k]) {
            double perMin = watt / 60 / Charge.shareAt(route.pack(k).battery().orElseThrow(), cel);
            double gives = Math.min(rest, chargeWh[k] / perMin);
            chargeWh[k] = Math.max(0, chargeWh[k] - gives * perMin);
            rest -= gives;
        }
        return rest > 1e-9 ? rest : 0;
    }

    private OptionalDouble gauge(int s) {
        Store store = route.transport.oxygen().get(s);
        if (store.type() != Store.Type.CYLINDER) return OptionalDouble.empty();
        Gauge gauge = new Gauge(route);
        return OptionalDouble.of(gauge.barAt(s, levelL[s], Route.ROOM_CEL, gauge.cylinder(s, levelL[s])));
    }
}
