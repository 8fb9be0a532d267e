package leeway.core.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import leeway.core.supply.SupplyResult.Changeover;
import leeway.core.supply.SupplyResult.Handover;
import leeway.core.transport.Store;

/** The journey at medians: changeovers with gauge readings, handovers, how far what is left would reach. */
final class Nominal {
    /** Longer than any journey: the last leg without end, min. */
    private static final double ENDLESS_MIN = 1e7;
    private final Route route;
    private final Gauge gauge;
    private final List<Piece> pieces = new ArrayList<>();
    final Trial end;

    private record Piece(int leg, double fromMin, double toMin, int store, double beforeL, double afterL) { }

    Nominal(Route route) {
        this.route = route;
        gauge = new Gauge(route);
        end = new Trial(route);
        end.fill();
        end.walk(route.medianMin, 1, null, (leg, from, to, store, before, after) -> pieces.add(new Piece(leg, from, to, store, before, after)));
    }

    /** Every moment at which somebody turns to another cylinder, in order. */
    List<Changeover> changeovers() {
        List<Changeover> out = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece p = pieces.get(i);
            Store store = route.transport.oxygen().get(p.store());
            boolean stops = route.transport.ventilator().gas().stopsWithoutGas();
            double one = route.oneL[p.store()];
            if (!route.endless[p.store()] && one > 0) {
                for (int full = (int) Math.ceil(p.beforeL() / one - 1e-9) - 1; full >= 1 && full * one >= p.afterL() - 1e-9; full--) {
                    double at = p.fromMin() + (p.toMin() - p.fromMin()) * (p.beforeL() - full * one) / (p.beforeL() - p.afterL());
                    out.add(new Changeover(store.name(), store.count() - full, residual(store), at, store.name(), "run down", stops));
                }
            }
            if (i + 1 == pieces.size()) break;
            Piece next = pieces.get(i + 1);
            if (next.store() == p.store()) continue;
            String to = route.transport.oxygen().get(next.store()).name();
            boolean ranDown = !route.endless[p.store()] && p.afterL() <= 1e-9;
            String why = ranDown ? "run down" : next.leg() != p.leg() ? "next leg" : "planned";
            out.add(new Changeover(store.name(), gauge.cylinder(p.store(), p.afterL()), ranDown ? residual(store) : shown(p.store(), p.afterL(), p.leg()),
                    p.toMin(), to, why, stops && ranDown));
        }
        return out;
    }

    /** The gauge expected at each leg's end, for the stores that were opened and can end. */
    List<Handover> handovers(Journey journey) {
        List<Handover> out = new ArrayList<>();
        double atMin = 0;
        for (int l = 0; l < route.legs; l++) {
            atMin += route.medianMin[l];
            for (int s : route.order[l]) {
                int store = s;
                int leg = l;
                boolean used = pieces.stream().anyMatch(p -> p.leg() <= leg && p.store() == store);
                if (!used || route.endless[s] || route.transport.oxygen().get(s).type() != Store.Type.CYLINDER) continue;
                double likely = Math.max(0, route.startL[s] - journey.usedP50L[l][s]);
                int cylinder = gauge.cylinder(s, likely);
                // the low reading is that of the same cylinder: it shows its residual pressure where 1 of 20 journeys has turned to the next
                double low = Math.max(route.startL[s] - journey.usedP95L[l][s], (route.transport.oxygen().get(s).count() - cylinder) * route.oneL[s]);
                out.add(new Handover(route.transport.legs().get(l).name(), atMin, route.transport.oxygen().get(s).name(), cylinder,
                        gauge.bar(s, likely, l, cylinder), gauge.bar(s, low, l, cylinder)));
            }
        }
        return out;
    }

    /** Minutes from departure until some leg is dry, the last one without end; empty where none ever is. */
    static OptionalDouble untilDry(Route route, int without) {
        Trial trial = new Trial(route);
        trial.fill();
        if (without >= 0) trial.levelL[without] -= route.oneL[without];
        trial.walk(endless(route), 1, null, null);
        return Double.isInfinite(trial.dryAtMin) || trial.dryAtMin >= ENDLESS_MIN / 2 ? OptionalDouble.empty() : OptionalDouble.of(trial.dryAtMin);
    }

    /** Minutes from departure until a pack is empty, with all sources as the legs name them or with none outside. */
    static OptionalDouble untilFlat(Route route, boolean outside) {
        if (!route.powered || route.ownPack < 0) return OptionalDouble.empty();
        double[] wh = route.startWh.clone();
        for (int b = 0; b < wh.length; b++) wh[b] = Math.max(0, wh[b] - route.beforeWh[b]);
        double[] minutes = endless(route);
        double nowMin = 0;
        for (int l = 0; l < route.legs; l++) {
            int b = route.packOfLeg[l] >= 0 ? route.packOfLeg[l] : outside ? -1 : route.ownPack;
            if (b >= 0) {
                double unfedMin = route.drain(l, b, minutes[l], wh);
                double endMin = nowMin + minutes[l] - unfedMin;
                if (unfedMin > 0) return endMin >= ENDLESS_MIN / 2 ? OptionalDouble.empty() : OptionalDouble.of(endMin);
            } else if (route.ownPack >= 0) {
                wh[route.ownPack] = Math.min(route.fullWh[route.ownPack], wh[route.ownPack] + route.chargingW[l] * minutes[l] / 60);
            }
            nowMin += minutes[l];
        }
        return OptionalDouble.empty();
    }

    private static double[] endless(Route route) {
        double[] minutes = route.medianMin.clone();
        minutes[minutes.length - 1] = ENDLESS_MIN;
        return minutes;
    }

    /** The latest whole minute from which the way back, over the same legs and stores, is still supplied; empty where it always is. */
    OptionalDouble turnBackByMin() {
        double total = route.totalMedianMin();
        double latest = 0;
        for (double t = 1; t < total; t++) {
            if (!returns(t)) return OptionalDouble.of(latest);
            latest = t;
        }
        return returns(total) ? OptionalDouble.empty() : OptionalDouble.of(latest);
    }

    private boolean returns(double turnMin) {
        double[] level = route.startL.clone();
        double outMin = 0;
        int reached = 0;
        double part = 0;
        for (int l = 0; l < route.legs && outMin < turnMin; l++) {
            part = Math.min(route.medianMin[l], turnMin - outMin);
            if (!take(level, l, part)) return false;
            outMin += part;
            reached = l;
        }
        for (int l = reached; l >= 0; l--) if (!take(level, l, l == reached ? part : route.medianMin[l])) return false;
        return true;
    }

    private boolean take(double[] level, int leg, double minutes) {
        double rest = minutes;
        for (int s : route.order[leg]) {
            double rate = route.draw[0][leg][s];
            if (route.endless[s] || rate <= 0) return true;
            double gives = Math.min(rest, level[s] / rate);
            level[s] -= gives * rate;
            rest -= gives;
            if (rest <= 1e-9) return true;
        }
        return rest <= 1e-9;
    }

    /** At medians, what the last leg's stores still hold, in minutes of its draw; empty where they are endless. */
    OptionalDouble leftAtEndMin() {
        int last = route.legs - 1;
        double left = 0;
        for (int s : route.order[last]) {
            double rate = route.draw[0][last][s];
            if (route.endless[s] || rate <= 0) return OptionalDouble.empty();
            left += end.levelL[s] / rate;
        }
        return OptionalDouble.of(left);
    }

    private OptionalDouble residual(Store store) {
        return store.type() == Store.Type.CYLINDER ? OptionalDouble.of(store.residualBar()) : OptionalDouble.empty();
    }

    private OptionalDouble shown(int s, double leftL, int leg) {
        if (route.endless[s] || route.transport.oxygen().get(s).type() != Store.Type.CYLINDER) return OptionalDouble.empty();
        return OptionalDouble.of(gauge.bar(s, leftL, leg));
    }

}
