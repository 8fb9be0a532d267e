package leeway.core.supply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import leeway.core.gas.Barometer;
import leeway.core.gas.Blend;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Battery;
import leeway.core.kit.Ventilator;
import leeway.core.run.Change;
import leeway.core.run.Claims;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Flux;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.Event;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/**
 * Stores and packs as they move: what the breaths take, what leaks, what the inlet and the pack then show.
 * <p>The store in use is the first in the leg's order ({@link Knob#INLET} 1, 2, 3) that still holds gas; if that one is
 * closed ({@link Knob#STORE_OPEN} 0) nothing feeds, for turning to another cylinder is the crew's act. The hose between
 * holds its gas a while. Below the device's least inlet pressure a gas-driven ventilator stops and another goes on with
 * air; both end when gas is back. Without outside power and charge the ventilator stops. Leaves out: the time of a planned
 * changeover, the cooling of a cylinder, a screen dimmed to save charge.
 */
public final class SupplyPart implements Part {
    /** Events, with the store or pack as value: a store ran down, the inlet starves, is fed again; power is gone, is back. */
    public static final int STORE_EMPTY = 201;
    public static final int GAS_GONE = 202;
    public static final int GAS_BACK = 203;
    public static final int POWER_GONE = 204;
    public static final int POWER_BACK = 205;

    /** Supply pressure of regulators and pipelines, bar gauge: nominally 4 to 5, from memory. */
    static final double SUPPLY_BAR = 4.5;
    /** Hose, regulator and the device's own reservoir, L: 3 m of 8 mm and 0.1 L; common practice, no source. */
    static final double HOSE_L = 0.25;
    /** Free gas in the hose at supply pressure, above ambient. */
    static final double HOSE_FREE_L = HOSE_L * SUPPLY_BAR / 1.01325;
    private static final double LONGEST_S = 2;
    private static final double J_PER_CMH2O_ML = 98.0665e-6;

    private final Route route;
    private final Transport transport;
    private final Ventilator.Gas gas;
    private final Ventilator.Load load;
    private final double[] legEndS;
    private final double[] startL;
    private final double[] startWh;
    private final double[] flowLPerMin; // of stores that give a flow; NaN at the high pressure inlet
    private final int stores;
    private final int packs;
    private final List<Event> uses;
    private final double leastBar;
    // offsets in the state
    private int level;
    private int charge;
    private int more;
    private static final int LINE = 0;
    private static final int DRAWN = 1;
    private static final int VENTED = 2;
    private static final int ROW_L = 3;
    private static final int ROW_J = 4;
    private static final int ROW_S = 5;
    private static final int STARVED_AT = 6; // -1: fed
    private static final int POWERLESS_AT = 7; // -1: powered
    private static final int IN_USE = 8;
    private static final int MORE = 9;
    // worked out from the knobs
    private final int[] rank = new int[16];
    private final double[] heldL;
    private final double[][] coldL; // by store and leg, worked out once
    private double drained;
    private double freePer;

    private SupplyPart(Route route, double[] legEndS, double[] startL, double[] startWh) {
        this.route = route;
        this.legEndS = legEndS.clone();
        this.startL = startL;
        this.startWh = startWh;
        transport = route.transport;
        gas = transport.ventilator().gas();
        uses = transport.events().stream().filter(e -> e.use().isPresent()).toList();
        load = transport.ventilator().load().orElse(null);
        stores = route.stores;
        packs = route.powered ? route.packs : 0;
        if (stores > Knob.STORE_OPEN.copies || packs > Knob.BATTERY.copies) {
            throw new IllegalArgumentException("%s stores and %s packs are more than %s and %s".formatted(stores, packs, Knob.STORE_OPEN.copies, Knob.BATTERY.copies));
        }
        leastBar = Math.max(0.05, gas.minimumInletBar());
        flowLPerMin = new double[stores];
        heldL = new double[stores];
        coldL = new double[stores][legEndS.length];
        for (double[] ofLeg : coldL) Arrays.fill(ofLeg, Double.NaN);
        for (int s = 0; s < stores; s++) {
            Store store = transport.oxygen().get(s);
            boolean flow = transport.ventilator().drive() == Ventilator.Drive.HAND || store.type() == Store.Type.CONCENTRATOR || !store.inlet().highPressure();
            flowLPerMin[s] = flow && !transport.ventilator().alone() ? route.draw[0][0][s] : Double.NaN;
        }
    }

    /**
     * The stores of a transport in one draw of the uncertain world (draw 0: as read).
     *
     * @param legEndS when each leg ends in this run, s from departure
     */
    public static SupplyPart of(Transport transport, List<LegNeed> needs, double[] legEndS, Draw draw) {
        Route route = new Route(transport, needs);
        Trial trial = new Trial(route);
        new Chances(route, draw.seed()).contents(draw.draw(), trial);
        return new SupplyPart(route, legEndS, trial.levelL.clone(), trial.chargeWh.clone());
    }

    /** Minutes of each leg in one draw, diversions and what late legs share included: the same as in the chances of running out. */
    public static double[] legMinutes(Transport transport, List<LegNeed> needs, Draw draw) {
        double[] minutes = new double[transport.legs().size()];
        new Chances(new Route(transport, needs), draw.seed()).durations(draw.draw(), minutes);
        return minutes;
    }

    /** Oxygen that nebuliser and suction take at this time, L/min. */
    private double usedLPerMin(double tS, int store) {
        double sum = 0;
        if (transport.oxygen().get(store).type() == Store.Type.CONCENTRATOR) return 0;
        for (Event e : uses) if (tS >= e.atMin() * 60 - 1e-9 && tS < untilS(e) - 1e-9) sum += e.use().orElseThrow().flowLPerMin();
        return sum;
    }

    private static double untilS(Event e) { return e.forS().isPresent() ? e.atMin() * 60 + e.forS().getAsDouble() : Double.POSITIVE_INFINITY; }

    /** Layers for the legs' own stores, power and charging, and for the planned changeovers. */
    public static void plan(Transport transport, double[] legEndS, Script script) {
        List<String> names = transport.oxygen().stream().map(Store::name).toList();
        double fromS = 0;
        for (int l = 0; l < legEndS.length; l++) {
            Leg leg = transport.legs().get(l);
            double untilS = l + 1 == legEndS.length ? Double.POSITIVE_INFINITY : legEndS[l];
            List<String> order = new ArrayList<>(leg.oxygen());
            for (int i = 0; i < order.size(); i++) {
                script.add(new Change(fromS, untilS, 0, Knob.INLET, names.indexOf(order.get(i)), How.SET, Math.min(3, i + 1)));
            }
            power(transport, leg, fromS, untilS, script);
            for (var event : transport.events()) {
                double at = event.atMin() * 60;
                if (event.changeOver().isEmpty() || at < fromS || at >= untilS) continue;
                int to = names.indexOf(event.changeOver().get());
                for (String other : order) {
                    int s = names.indexOf(other);
                    if (s != to) script.add(new Change(at, untilS, 0, Knob.INLET, s, How.SET, Math.min(3, order.indexOf(other) + 2)));
                }
                script.add(new Change(at, untilS, 0, Knob.INLET, to, How.SET, 1));
            }
            fromS = legEndS[l];
        }
    }

    private static void power(Transport transport, Leg leg, double fromS, double untilS, Script script) {
        boolean outside = false;
        List<Boolean> gives = new ArrayList<>();
        String last = "";
        for (var p : transport.power()) {
            boolean mine = leg.power().map(p.name()::equals).orElse(!p.mains() && gives.isEmpty());
            if (p.mains()) {
                outside |= mine;
                continue;
            }
            boolean follows = !last.isEmpty() && p.after().filter(last::equals).isPresent(); // it stands after the one that it follows
            gives.add(mine || follows);
            if (mine || follows) last = p.name();
        }
        script.add(new Change(fromS, untilS, 0, Knob.MAINS, 0, How.SET, outside ? 1 : 0));
        script.add(new Change(fromS, untilS, 0, Knob.CHARGING, 0, How.SET, leg.charging() ? 1 : 0));
        boolean any = gives.contains(true);
        for (int b = 0; b < Math.min(gives.size(), Knob.BATTERY.copies); b++) {
            script.add(new Change(fromS, untilS, 0, Knob.BATTERY, b, How.SET, gives.get(b) || !any && b == 0 ? 1 : 0)); // the own pack bridges a dead socket
        }
    }

    @Override
    public void claim(Claims claims) {
        level = claims.state(stores);
        charge = claims.state(packs);
        more = claims.state(MORE);
        claims.reads(Knob.INLET, Knob.STORE_OPEN, Knob.EXTRA_DRAIN, Knob.MAINS, Knob.CHARGING, Knob.BATTERY, Knob.FIO2_SET, Knob.BAROMETER, Knob.VENTILATOR_ON, Knob.STANDBY,
                Knob.DRAINED, Knob.SOAKED);
    }

    @Override
    public void begin(Now n) {
        for (int s = 0; s < stores; s++) n.y[level + s] = startL[s];
        for (int b = 0; b < packs; b++) n.y[charge + b] = startWh[b];
        n.y[more + STARVED_AT] = -1;
        n.y[more + POWERLESS_AT] = -1;
        int s = inUse(n);
        n.y[more + IN_USE] = s;
        n.y[more + LINE] = s >= 0 && open(n, s) ? HOSE_FREE_L : 0;
        show(n);
    }

    @Override
    public void retune(Now n) {
        for (int s = 0; s < stores; s++) {
            rank[s] = (int) Math.rint(n.get(Knob.INLET, s));
            double soaked = n.get(Knob.SOAKED, s);
            heldL[s] = soaked == 0 ? 0 : soaked * heldByCold(s, leg(n.tS));
        }
        drained = n.get(Knob.DRAINED);
        freePer = OxygenDraw.freePer(Ventilator.VolumeBasis.BTPS, Barometer.hPa(n.get(Knob.BAROMETER))); // what flows in the loop is BTPS whatever the sheet shows
    }

    /** What a store's residual pressure holds back more when it is as cold as the leg than when it was read, L. */
    private double heldByCold(int s, int leg) {
        if (Double.isNaN(coldL[s][leg])) coldL[s][leg] = workOutHeldByCold(s, leg);
        return coldL[s][leg];
    }

    private double workOutHeldByCold(int s, int leg) {
        Store store = transport.oxygen().get(s);
        if (store.type() != Store.Type.CYLINDER || transport.legs().get(leg).temperatureCel().isEmpty()) return 0;
        double water = store.waterL().orElseThrow() * store.count();
        double residual = Math.min(store.residualBar(), store.pressureBar().orElse(0));
        double cold = RealOxygen.freeGasL(water, residual, Math.min(route.readAtCel[s], transport.legs().get(leg).temperatureCel().getAsDouble()));
        return Math.max(0, cold - RealOxygen.freeGasL(water, residual, route.readAtCel[s]));
    }

    /** The first store of the order that still holds gas; -1 for none. Equal ranks in the order of the file. */
    private int inUse(Now n) {
        int best = -1;
        for (int s = 0; s < stores; s++) {
            if (rank[s] > 0 && levelL(n, s) > 0 && (best < 0 || rank[s] < rank[best])) best = s;
        }
        return best;
    }

    private boolean open(Now n, int s) { return n.p[Knob.STORE_OPEN.slot(s)] >= 0.5; }

    private boolean starving(Now n) { return inletBar(n) < leastBar; }

    /** Gauge pressure at the ventilator's inlet, bar. */
    public double inletBar(Now n) { return SUPPLY_BAR * n.y[more + LINE] / HOSE_FREE_L; }

    /** Litres that a store still gives. */
    public double levelL(Now n, int store) { return Math.max(0, n.y[level + store] - heldL[store]); }

    /** The store that feeds or would feed; -1 for none. */
    public int storeInUse(Now n) { return (int) n.y[more + IN_USE]; }

    /** All that went to the ventilator, and all that leaked before it, since departure, L. */
    public double drawnL(Now n) { return n.y[more + DRAWN]; }

    public double ventedL(Now n) { return n.y[more + VENTED]; }

    /** In the hose at this moment, L of free gas above ambient. */
    public double hoseL(Now n) { return n.y[more + LINE]; }

    /** Wh left in a pack above its cut-off, as at 25 °C. */
    public double chargeWh(Now n, int pack) { return Math.max(0, n.y[charge + pack] - drained * route.fullWh[pack]); }

    /** How many packs there are. */
    public int packs() { return packs; }

    /** Usable litres in all stores of a leg together; {@code NaN} where one of them has no end or the leg has none. */
    public double oxygenL(Now n, int leg) {
        double sum = route.order[leg].length == 0 ? Double.NaN : 0;
        for (int s : route.order[leg]) sum += route.endless[s] ? Double.NaN : levelL(n, s);
        return sum;
    }

    /** Usable charge of the pack that a leg runs on, at its temperature, Wh; {@code NaN} on an outside source and for what needs none. */
    public double chargeWhOfLeg(Now n, int leg) {
        int b = packs > 0 ? route.packOfLeg[leg] : -1;
        return b < 0 ? Double.NaN : chargeWh(n, b) * route.shareAt[b][leg];
    }

    /** What the gauge of the cylinder in use of this store shows at the leg's temperature, bar. */
    public double gaugeBar(Now n, int store) { return new Gauge(route).bar(store, n.y[level + store], leg(n.tS)); }

    private int leg(double tS) {
        int l = 0;
        while (l + 1 < legEndS.length && tS >= legEndS[l]) l++;
        return l;
    }

    private int pack(Now n) {
        for (int b = 0; b < packs; b++) if (n.p[Knob.BATTERY.slot(b)] >= 0.5 && chargeWh(n, b) > 0) return b;
        return -1;
    }

    private boolean powerless(Now n) { return load != null && route.powered && !n.on(Knob.MAINS) && pack(n) < 0; }

    @Override
    public double nextS(Now n, double latestS) {
        boolean turn = starving(n) != (n.y[more + STARVED_AT] >= 0) || powerless(n) != (n.y[more + POWERLESS_AT] >= 0) || inUse(n) != (int) n.y[more + IN_USE];
        if (turn) return n.tS;
        double next = n.tS + LONGEST_S;
        for (Event e : uses) {
            if (e.atMin() * 60 > n.tS + 1e-9) next = Math.min(next, e.atMin() * 60);
            if (untilS(e) > n.tS + 1e-9) next = Math.min(next, untilS(e));
        }
        return next;
    }

    @Override
    public void pass(Now n, double dtS) {
        if (dtS <= 0) return;
        double min = dtS / 60;
        oxygen(n, min);
        if (load != null && route.powered) power(n, dtS);
        n.y[more + ROW_S] += dtS;
        show(n);
    }

    private void oxygen(Now n, double min) {
        double took = 0;
        int s = inUse(n);
        double need = s >= 0 && !Double.isNaN(flowLPerMin[s]) ? flowLPerMin[s] * min : demand(n, min);
        double want = need + (s >= 0 && open(n, s) ? HOSE_FREE_L - n.y[more + LINE] : 0);
        while (want > 0 && s >= 0 && open(n, s)) {
            double gives = Math.min(want, levelL(n, s));
            n.y[level + s] -= gives;
            took += gives;
            want -= gives;
            s = want > 0 ? inUse(n) : s;
        }
        // what came goes to the device first, the rest fills the hose; what did not come is taken from the hose
        double line = n.y[more + LINE] + took;
        double given = Math.min(need, line);
        n.y[more + LINE] = line - given;
        n.y[more + DRAWN] += given;
        n.y[more + ROW_L] += given;
        int open = uses.isEmpty() ? -1 : inUse(n);
        if (open >= 0 && open(n, open)) {
            double used = Math.min(usedLPerMin(n.tS, open) * min, levelL(n, open));
            n.y[level + open] -= used;
            n.y[more + VENTED] += used;
        }
        for (int k = 0; k < stores; k++) {
            double drain = n.p[Knob.EXTRA_DRAIN.slot(k)];
            if (drain <= 0 || !open(n, k)) continue;
            double lost = Math.min(drain * min, levelL(n, k));
            n.y[level + k] -= lost;
            n.y[more + VENTED] += lost;
        }
    }

    /** What the device takes through its high pressure inlet in these minutes, L. */
    private double demand(Now n, double min) {
        if (transport.ventilator().drive() == Ventilator.Drive.HAND) return OxygenDraw.handBagLPerMin(transport.ventilator()) * min;
        if (transport.ventilator().alone()) return n.y[more + STARVED_AT] >= 0 ? 0 : n.get(Knob.BIAS_FLOW_SET) * min;
        if (n.y[more + POWERLESS_AT] >= 0) return 0;
        if (n.on(Knob.STANDBY)) return gas.standbyLPerMin() * min;
        if (!n.on(Knob.VENTILATOR_ON) || n.y[more + STARVED_AT] >= 0) return 0;
        double mixed = n.get(Flux.DELIVERED_ML) / 1000 * freePer + n.get(Flux.BIAS_ML) / 1000;
        double fio2 = OxygenDraw.deliveredFio2(transport.ventilator(), n.get(Knob.FIO2_SET));
        double purge = fio2 > Blend.AIR + 1e-9 ? gas.purgeLPerMin() : 0;
        return Blend.oxygenFlow(mixed, Math.max(Blend.AIR, fio2), 1) + gas.driveShare() * mixed + (gas.driveLPerMin() + purge) * min;
    }

    private void power(Now n, double dtS) {
        boolean working = n.on(Knob.VENTILATOR_ON) && !n.on(Knob.STANDBY);
        double pneumaticJ = J_PER_CMH2O_ML * Math.max(0, n.get(Flux.WORK_CMH2O_ML));
        double joule = (working ? load.steadyW() : load.standbyW()) * dtS
                + (working && load.blowerIdleW() > 0 ? pneumaticJ / load.blowerEfficiency() : 0);
        int l = leg(n.tS);
        int b = pack(n);
        if (n.on(Knob.MAINS)) {
            if (packs > 0 && n.on(Knob.CHARGING)) {
                Battery battery = route.pack(0).battery().orElseThrow();
                double into = Charge.chargingW(battery, load, joule / dtS, route.legCel[l]) * dtS / 3600;
                n.y[charge] = Math.min(route.fullWh[0], n.y[charge] + into);
            }
        } else if (b >= 0) {
            n.y[charge + b] = Math.max(0, n.y[charge + b] - joule / 3600 / route.shareAt[b][l]);
        } else {
            joule = 0;
        }
        n.y[more + ROW_J] += joule;
    }

    private void show(Now n) {
        n.level[Level.INLET_BAR.ordinal()] = inletBar(n);
        int b = pack(n);
        int shown = b >= 0 ? b : packs > 0 ? 0 : -1;
        n.level[Level.CHARGE.ordinal()] = shown < 0 || route.capacityWh[shown] <= 0 ? 0
                : (chargeWh(n, shown) + route.capacityWh[shown] - route.fullWh[shown]) / route.capacityWh[shown];
        n.level[Level.POWERLESS.ordinal()] = powerless(n) ? 1 : 0;
    }

    @Override
    public void hit(Now n, Script script, Sink out) {
        int s = inUse(n);
        int was = (int) n.y[more + IN_USE];
        if (s != was) {
            if (was >= 0 && levelL(n, was) <= 0) out.event(n.tS, STORE_EMPTY, was);
            n.y[more + IN_USE] = s;
        }
        boolean starved = n.y[more + STARVED_AT] >= 0;
        Knob stopped = gas.stopsWithoutGas() ? Knob.VENTILATOR_ON : Knob.SOURCE_OXYGEN;
        double without = gas.stopsWithoutGas() ? 0 : Blend.AIR;
        if (starving(n) != starved) turn(n, script, out, STARVED_AT, stopped, without, starved ? GAS_BACK : GAS_GONE, was);
        boolean dark = n.y[more + POWERLESS_AT] >= 0;
        if (powerless(n) != dark) turn(n, script, out, POWERLESS_AT, Knob.VENTILATOR_ON, 0, dark ? POWER_BACK : POWER_GONE, pack(n));
    }

    /** Opens the layer of a want, or ends the very one that was opened. */
    private void turn(Now n, Script script, Sink out, int since, Knob knob, double value, int event, int which) {
        double at = n.y[more + since];
        if (at < 0) {
            script.add(Change.at(n.tS, knob, How.SET, value));
            n.y[more + since] = n.tS;
        } else {
            for (Change c : script.layers()) {
                if (c.knob() == knob && c.how() == How.SET && c.atS() == at && c.value() == value && Double.isInfinite(c.untilS())) {
                    script.end(c, n.tS);
                    break;
                }
            }
            n.y[more + since] = -1;
        }
        out.event(n.tS, event, which);
    }

    @Override
    public void row(Now n, Script script, Sink out) {
        double s = n.y[more + ROW_S];
        if (s > 0) {
            n.set(Column.OXYGEN_DRAW_L_MIN, n.y[more + ROW_L] / s * 60);
            if (load != null && route.powered) n.set(Column.LOAD_W, n.y[more + ROW_J] / s);
        }
        n.y[more + ROW_L] = 0;
        n.y[more + ROW_J] = 0;
        n.y[more + ROW_S] = 0;
    }
}
