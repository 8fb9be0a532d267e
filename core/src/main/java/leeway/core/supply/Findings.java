package leeway.core.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import leeway.core.kit.Kit;
import leeway.core.kit.Policy;
import leeway.core.kit.Ventilator;
import leeway.core.supply.SupplyResult.Home;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.Power;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;

/** What the policy says to a supply: reasons against, remarks, assumptions, a sentence each. */
final class Findings {
    final List<String> reasons = new ArrayList<>();
    final List<String> remarks = new ArrayList<>();
    final List<String> assumed = new ArrayList<>();
    private final Route route;

    Findings(Route route) {
        this.route = route;
    }

    void judge(Oxygen oxygen, Optional<Power> power, Optional<Home> home, Optional<Kit> kit) {
        oxygen(oxygen);
        power.ifPresent(this::power);
        stores();
        legs(oxygen);
        high(oxygen);
        before(oxygen);
        uses();
        home.ifPresent(this::home);
        kit.ifPresent(k -> kit(k, oxygen));
        if (power.isPresent() && power.get().take().isEmpty() && kit.filter(k -> !k.packs().isEmpty()).isPresent()) remarks.add(say("Not even all packs of %s together meet the policy.", kit.get().name()));
    }

    /** A kit that cannot meet the policy, and what of it has no place on this journey. */
    private void kit(Kit kit, Oxygen oxygen) {
        List<String> homeless = new ArrayList<>();
        List<String> places = new ArrayList<>();
        for (Kit.Item item : kit.items()) {
            if (item.count() == 0 || carried(item)) continue;
            homeless.add(item.name());
            item.as().filter(as -> !places.contains(as)).ifPresent(places::add);
        }
        if (!homeless.isEmpty()) {
            remarks.add(places.isEmpty()
                ? say("The cylinders of %s are left out: no leg uses a cylinder in whose place they could go.", kit.name())
                : say("Of %s these are left out: %s. They go in the place of %s, and no leg uses a cylinder of that name.", kit.name(), String.join(", ", homeless), String.join(", ", places)));
        }
        if (oxygen.take().isEmpty() && homeless.size() < kit.items().stream().filter(i -> i.count() > 0).count()) {
            remarks.add(say("Not even all cylinders of %s together meet the policy.", kit.name()));
        }
    }

    private boolean carried(Kit.Item item) {
        for (int s = 0; s < route.stores; s++) {
            Store store = route.transport.oxygen().get(s);
            if (route.named[s] && store.type() == Store.Type.CYLINDER && item.as().map(store.name()::equals).orElse(true)) return true;
        }
        return false;
    }

    /** What the error of the delivered FiO2 may cost. */
    private void high(Oxygen o) {
        o.high().ifPresent(h -> {
            assumed.add(say("FiO2 as set; %s may give %.0f points more, then %.0f L are needed at the median and %.0f L in 19 of 20 journeys", route.transport.ventilator().name(),
                    h.fio2Error() * 100, Math.ceil(h.neededL().p50()), Math.ceil(h.neededL().p95())));
            double risk = route.transport.policy().oxygenRisk();
            if (h.emptyChance() > risk && o.emptyChance() <= risk) {
                remarks.add(say("Where the ventilator gives %.0f points more oxygen than is set, within its error, it runs out in %s of journeys; %s is tolerated.", h.fio2Error() * 100,
                        share(h.emptyChance()), share(risk)));
            }
        });
    }

    /** What is taken between the reading of the gauge and the departure. */
    private void before(Oxygen o) {
        if (o.beforeL() <= 0) return;
        double check = route.transport.ventilator().gas().checkL();
        double standby = route.transport.alone().standbyMin();
        assumed.add(say("the start-up check%s takes %.1f L after the gauge was read, not counted as needed", standby > 0 ? say(" and %.0f min of standby", standby) : "", o.beforeL()));
        if (o.beforeL() > 10 * Math.max(1, check)) remarks.add(say("Standing by before departure takes %.0f L of oxygen.", o.beforeL() - check));
    }

    /** Nebuliser and suction: what they add, and where nothing can drive them. */
    private void uses() {
        for (var e : route.transport.events()) {
            if (e.use().isEmpty()) continue;
            double min = e.forS().orElse(0) / 60;
            assumed.add(say("%s at %.0f min: %.0f L/min for %.1f min, %.0f L, beside the ventilator's draw", e.use().get().what(), e.atMin(), e.use().get().flowLPerMin(), min, e.use().get().flowLPerMin() * min));
            double endMin = 0;
            int l = 0;
            while (l + 1 < route.legs && (endMin += route.medianMin[l]) <= e.atMin()) l++;
            boolean flowOnly = route.order[l].length > 0;
            for (int s : route.order[l]) flowOnly &= route.transport.oxygen().get(s).type() == Store.Type.CONCENTRATOR;
            if (flowOnly) remarks.add(say("%s: a concentrator has no pressure to drive %s.", route.transport.legs().get(l).name(), e.use().get().what()));
        }
    }

    private void home(Home h) {
        if (h.flatMin().isPresent()) remarks.add(say("On the way home the charge ends in standby, %.0f min after departure; switch the ventilator truly off.", Math.floor(h.flatMin().getAsDouble())));
    }

    private void oxygen(Oxygen o) {
        Policy policy = route.transport.policy();
        if (o.emptyChance() > policy.oxygenRisk()) {
            reasons.add(say("Oxygen runs out on the way in %s of journeys; %s is tolerated.", share(o.emptyChance()), share(policy.oxygenRisk())));
        }
        o.leftAtEndMin().ifPresent(left -> {
            if (left < policy.reserveMin()) reasons.add(say("At the far end %.0f min of oxygen are left at the median; the reserve is %.0f min.", Math.floor(left), policy.reserveMin()));
        });
        o.withoutLargestMin().ifPresent(min -> {
            if (min >= route.totalMedianMin()) return;
            String text = only() ? "There is one cylinder only: where it fails nothing is left."
                    : say("Without its largest cylinder the journey of %.0f min is dry after %.0f min.", route.totalMedianMin(), Math.floor(min));
            if (policy.surviveOneLoss()) reasons.add(text); else remarks.add(text);
        });
    }

    /** Whether all that the legs name is one cylinder. */
    private boolean only() {
        int cylinders = 0;
        for (int s = 0; s < route.stores; s++) if (route.named[s]) cylinders += route.endless[s] ? 2 : route.transport.oxygen().get(s).count();
        return cylinders == 1;
    }

    private void power(Power p) {
        Policy policy = route.transport.policy();
        if (p.emptyChance() > policy.powerRisk()) {
            reasons.add(say("The charge runs out on the way in %s of journeys; %s is tolerated.", share(p.emptyChance()), share(policy.powerRisk())));
        }
        p.marginMin().ifPresent(min -> {
            if (min < policy.powerReserveMin()) {
                reasons.add(say("The charge lasts %.0f min beyond a leg at the median; the reserve is %.0f min.", Math.floor(min), policy.powerReserveMin()));
            }
        });
        p.withoutExternalMin().ifPresent(min -> {
            if (min < route.totalMedianMin()) remarks.add(say("Without outside power the charge ends %.0f min after departure.", Math.floor(min)));
        });
        for (int l = 0; l < route.legs; l++) {
            Leg leg = route.transport.legs().get(l);
            if (route.packOfLeg[l] >= 0 || route.ownPack < 0 || !leg.charging()) continue;
            if (route.chargingW[l] == 0) remarks.add(say("%s: plugged in, but nothing charges at %.0f °C and a load of %.0f W.", leg.name(), route.legCel[l], route.loadW[l]));
            if (leg.waiting()) remarks.add(say("%s: a vehicle's socket is often dead with the ignition off; look whether it feeds.", leg.name()));
        }
        for (int b = 0; b < route.packs; b++) {
            var store = route.pack(b);
            var battery = store.battery().orElseThrow();
            if (store.ageYears() > battery.lifeYears()) remarks.add(say("%s: %.1f years old, its sheet gives it %.0f.", store.name(), store.ageYears(), battery.lifeYears()));
            for (int l = 0; l < route.legs; l++) {
                if (route.packOfLeg[l] == b && !battery.temperature().isEmpty() && route.legCel[l] < battery.temperature().get(0).temperatureCel()) {
                    remarks.add(say("%s: %.0f °C is colder than the sheet of %s knows; it may give less than reckoned.", route.transport.legs().get(l).name(), route.legCel[l], battery.name()));
                }
            }
        }
    }

    private void stores() {
        Ventilator v = route.transport.ventilator();
        for (int s = 0; s < route.stores; s++) {
            Store store = route.transport.oxygen().get(s);
            if (!route.named[s]) remarks.add(say("Store %s is used by no leg.", store.name()));
            if (store.type() == Store.Type.CYLINDER && store.readAtCel().isEmpty()) {
                assumed.add(say("%s: gauge read at %.0f °C, the warmer of %.0f °C and the first leg", store.name(), route.readAtCel[s], Route.ROOM_CEL));
            }
            if (store.type() == Store.Type.CYLINDER && route.oneL[s] <= 0) remarks.add(say("Store %s stands at its residual pressure: it gives nothing.", store.name()));
            if (store.type() == Store.Type.LIQUID) remarks.add(say("%s: liquid oxygen gives a limited flow and loses about %.1f L/min while it is not used.", store.name(), Route.LIQUID_LOSS_L_PER_MIN));
            if (!route.named[s] || !v.machine()) continue;
            boolean flow = store.type() == Store.Type.CONCENTRATOR || !store.inlet().highPressure();
            if (flow && v.gas().stopsWithoutGas()) reasons.add(say("%s gives a flow, and %s needs its gas at high pressure: it does not run on it.", store.name(), v.name()));
            else if (flow && !v.gas().inlets().contains(Ventilator.Inlet.FLOWMETER)) reasons.add(say("%s has no inlet for the flow of %s.", v.name(), store.name()));
            else if (!flow && !v.gas().inlets().contains(Ventilator.Inlet.HIGH_PRESSURE)) reasons.add(say("%s has no high pressure inlet for %s.", v.name(), store.name()));
        }
    }

    private void legs(Oxygen o) {
        for (int l = 0; l < route.legs; l++) {
            double wish = route.needs.get(l).fio2();
            double gets = o.byLeg().get(l).fio2();
            if (!route.transport.ventilator().machine()) continue;
            if (gets < wish - 0.005) remarks.add(say("%s: FiO2 %.2f instead of %.2f, for the oxygen does not follow the demand.", o.byLeg().get(l).leg(), gets, wish));
            if (gets > wish + 0.005) remarks.add(say("%s: FiO2 %.2f instead of %.2f.", o.byLeg().get(l).leg(), gets, wish));
        }
        if (o.changeovers().stream().anyMatch(SupplyResult.Changeover::handBag)) {
            remarks.add("A changeover on one regulator stops the ventilator: the hand bag bridges it.");
        }
    }

    /** A chance in words that stay true when rounded. */
    static String share(double chance) {
        if (chance == 0) return "none";
        double percent = chance * 100;
        return percent < 0.01 ? "under 0.01 %" : String.format(Locale.ROOT, percent < 1 ? "%.2f %%" : percent < 10 ? "%.1f %%" : "%.0f %%", percent);
    }

    private static String say(String text, Object... values) {
        return String.format(Locale.ROOT, text, values);
    }
}
