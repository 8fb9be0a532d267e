package leeway.core.supply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Battery;
import leeway.core.kit.Ventilator;
import leeway.core.transport.Leg;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/**
 * A journey as plain numbers: durations, draws by leg and store, what each store holds at medians, loads and packs.
 * <p>Stores and packs keep the order of the transport; a draw of a store is the draw on that store, whatever the order.
 */
final class Route {
    /** 0.95 quantile of the standard normal. */
    static final double Z95 = 1.6448536269514722;
    /** Free gas in a litre of liquid oxygen at its boiling point: 1141.2 kg/m³ (clinical algorithm collection) over 1.3544 kg/m³. */
    static final double FREE_PER_LIQUID_L = 1141.2 / 1.3544;
    /** What a portable liquid store loses while it is not used, L/min: 0.7 kg a day, from memory, the cautious end of 0.3 to 0.7. */
    static final double LIQUID_LOSS_L_PER_MIN = 0.7 / 1.3544e-3 / 1440;
    /** Read temperature known to, K either way: where the file gives it, and where it is assumed. Common practice, no source. */
    static final double GIVEN_CEL = 2;
    static final double ASSUMED_CEL = 5;
    /** Around the kit where a leg says nothing, °C; common practice, no source. */
    static final double ROOM_CEL = 20;

    final Transport transport;
    final List<LegNeed> needs;
    final int legs;
    final int stores;
    final double[] medianMin;
    final double[] worstMin;
    final double[] sigma;
    final double[] diversionChance;
    final double[] diversionMin;
    final Acts acts;
    /** Stores of a leg in the order of use. */
    final int[][] order;
    /** L/min, by stretch of the acts, leg and store. */
    final double[][][] draw;
    /** What a litre lasts, min; without end on a store that nothing is drawn from. */
    final double[][][] minPerL;
    final boolean[] endless;
    final boolean[] named;
    /** Usable litres of one cylinder, and of all, at medians. */
    final double[] oneL;
    final double[] usableL;
    /** Taken after the gauge was read and before departure: the start-up check, and standing by. What is there at departure, at medians. */
    final double[] beforeL;
    final double[] startL;
    final double[] readAtCel;
    final double[] legCel;
    /** Lost by a store in a minute in which it is not the one in use. */
    final double[] lossLPerMin;
    final boolean lossy;
    // power
    final boolean powered;
    final int packs;
    final int[] packOfStore;
    /** The pack that a leg runs on; -1 on an outside source. */
    final int[] packOfLeg;
    final double[] loadW;
    /** What a minute of a leg takes: delivered, and from the first pack as at 25 °C. */
    final double[] whPerMin;
    final double[] chargePerMin;
    final double[] chargingW;
    final double[][] shareAt;
    final double[] capacityWh;
    /** Above the cut-off at 25 °C, full. */
    final double[] fullWh;
    final double[] startWh;
    /** Taken from a pack while the ventilator stands by before departure, as at 25 °C. */
    final double[] beforeWh;
    final int ownPack;
    /** The pack that follows when one is empty; -1 for none. */
    final int[] nextPack;

    Route(Transport t, List<LegNeed> needs) { this(t, needs, UnaryOperator.identity(), null, false); }

    /** With the draws at the high side of the ventilator's FiO2 error. */
    static Route high(Transport t, List<LegNeed> needs) { return new Route(t, needs, UnaryOperator.identity(), null, true); }

    Route(Transport t, List<LegNeed> given, UnaryOperator<LegNeed> alter, Double flat) { this(t, given, alter, flat, false); }

    /** With every need altered, and with the draws of all stores replaced by one where {@code flat} is given. */
    private Route(Transport t, List<LegNeed> given, UnaryOperator<LegNeed> alter, Double flat, boolean high) {
        if (given.size() != t.legs().size()) throw new IllegalArgumentException("%s needs for %s legs".formatted(given.size(), t.legs().size()));
        transport = t;
        needs = given.stream().map(alter).toList();
        legs = t.legs().size();
        stores = t.oxygen().size();
        medianMin = t.legs().stream().mapToDouble(Leg::takesMin).toArray();
        worstMin = t.legs().stream().mapToDouble(Leg::atWorstMin).toArray();
        sigma = new double[legs];
        diversionChance = new double[legs];
        diversionMin = new double[legs];
        legCel = new double[legs];
        order = new int[legs][];
        named = new boolean[stores];
        List<String> names = t.oxygen().stream().map(Store::name).toList();
        for (int l = 0; l < legs; l++) {
            Leg leg = t.legs().get(l);
            if (!(medianMin[l] > 0 && worstMin[l] >= medianMin[l])) throw new IllegalArgumentException("leg %s takes %s, at worst %s min".formatted(leg.name(), medianMin[l], worstMin[l]));
            sigma[l] = StrictMath.log(worstMin[l] / medianMin[l]) / Z95;
            diversionChance[l] = leg.diversion().map(Leg.Diversion::chance).orElse(0.0);
            diversionMin[l] = leg.diversion().map(Leg.Diversion::addsMin).orElse(0.0);
            legCel[l] = leg.temperatureCel().orElse(ROOM_CEL);
            order[l] = leg.oxygen().stream().mapToInt(names::indexOf).toArray();
            for (int s : order[l]) named[s] = true;
        }
        acts = new Acts(t.events(), names);
        for (int s : acts.changeTo) named[s] = true;
        draw = new double[acts.during.size()][legs][stores];
        for (int j = 0; j < draw.length; j++) {
            for (int l = 0; l < legs; l++) {
                LegNeed need = alter.apply(Acts.changed(given.get(l), acts.during.get(j)));
                for (int s = 0; s < stores; s++) {
                    Store store = t.oxygen().get(s);
                    OxygenDraw of = OxygenDraw.figures(t.ventilator(), need, store);
                    draw[j][l][s] = flat != null ? flat : (high ? of.highLPerMin(t.ventilator()) : of.oxygenLPerMin()) + Acts.usedLPerMin(store, acts.during.get(j));
                }
            }
        }
        minPerL = new double[draw.length][legs][stores];
        for (int j = 0; j < draw.length; j++) for (int l = 0; l < legs; l++) for (int s = 0; s < stores; s++) minPerL[j][l][s] = draw[j][l][s] > 0 ? 1 / draw[j][l][s] : Double.POSITIVE_INFINITY;
        endless = new boolean[stores];
        oneL = new double[stores];
        usableL = new double[stores];
        beforeL = new double[stores];
        startL = new double[stores];
        readAtCel = new double[stores];
        lossLPerMin = new double[stores];
        for (int s = 0; s < stores; s++) {
            Store store = t.oxygen().get(s);
            readAtCel[s] = store.readAtCel().orElse(Math.max(ROOM_CEL, t.legs().get(0).temperatureCel().orElse(ROOM_CEL)));
            switch (store.type()) {
                case WALL, CONCENTRATOR -> endless[s] = true;
                case LIQUID -> {
                    oneL[s] = store.liquidL().orElse(0) * FREE_PER_LIQUID_L;
                    lossLPerMin[s] = LIQUID_LOSS_L_PER_MIN;
                }
                case CYLINDER -> oneL[s] = RealOxygen.usableL(store.waterL().orElse(0), store.pressureBar().orElse(0), readAtCel[s], store.residualBar());
            }
            usableL[s] = endless[s] ? Double.POSITIVE_INFINITY : oneL[s] * store.count();
            if (!endless[s] && store.inlet().highPressure() && order[0].length > 0 && order[0][0] == s) {
                beforeL[s] = t.ventilator().gas().checkL() + t.ventilator().gas().standbyLPerMin() * t.alone().standbyMin();
            }
            startL[s] = Math.max(0, usableL[s] - beforeL[s]);
        }
        lossy = Arrays.stream(lossLPerMin).anyMatch(loss -> loss > 0);

        List<PowerStore> power = t.power();
        Ventilator.Load load = t.ventilator().load().orElse(null);
        List<Integer> packIndex = new ArrayList<>();
        packOfStore = new int[power.size()];
        for (int i = 0; i < power.size(); i++) {
            packOfStore[i] = power.get(i).mains() || power.get(i).battery().isEmpty() ? -1 : packIndex.size();
            if (packOfStore[i] >= 0) packIndex.add(i);
        }
        packs = packIndex.size();
        powered = load != null && !power.isEmpty();
        ownPack = packs > 0 ? 0 : -1;
        capacityWh = new double[packs];
        fullWh = new double[packs];
        startWh = new double[packs];
        beforeWh = new double[packs];
        nextPack = new int[packs];
        Arrays.fill(nextPack, -1);
        shareAt = new double[packs][legs];
        packOfLeg = new int[legs];
        loadW = new double[legs];
        whPerMin = new double[legs];
        chargePerMin = new double[legs];
        chargingW = new double[legs];
        for (int b = 0; b < packs; b++) {
            PowerStore p = power.get(packIndex.get(b));
            Battery battery = p.battery().orElseThrow();
            capacityWh[b] = Charge.capacityWh(battery, p.ageYears(), p.cycles());
            fullWh[b] = capacityWh[b] * (1 - battery.cutOff());
            startWh[b] = capacityWh[b] * Math.max(0, p.charge() - battery.cutOff());
            for (int l = 0; l < legs; l++) shareAt[b][l] = Charge.shareAt(battery, legCel[l]);
            for (int i = 0; i < power.size(); i++) {
                if (packOfStore[i] >= 0 && p.after().filter(power.get(i).name()::equals).isPresent()) nextPack[packOfStore[i]] = b;
            }
        }
        for (int l = 0; l < legs && powered; l++) {
            Leg leg = t.legs().get(l);
            int i = leg.power().map(name -> indexOf(power, name)).orElse(ownPack >= 0 ? packIndex.get(0) : 0);
            packOfLeg[l] = packOfStore[i];
            loadW[l] = Charge.loadW(load, needs.get(l));
            whPerMin[l] = loadW[l] / 60;
            if (packOfLeg[l] >= 0) {
                chargePerMin[l] = whPerMin[l] / shareAt[packOfLeg[l]][l];
            }
            if (packOfLeg[l] < 0 && ownPack >= 0 && leg.charging()) {
                chargingW[l] = Charge.chargingW(power.get(packIndex.get(0)).battery().orElseThrow(), load, loadW[l], legCel[l]);
            }
        }
        if (powered && packOfLeg[0] >= 0) beforeWh[packOfLeg[0]] = load.standbyW() * t.alone().standbyMin() / 60 / shareAt[packOfLeg[0]][0];
    }

    /** How well the temperature of a store's reading is known, K either way. */
    static double known(Store store) { return store.readAtCel().isPresent() ? GIVEN_CEL : ASSUMED_CEL; }

    /** Name of a pack. */
    String packName(int b) {
        for (int i = 0; i < packOfStore.length; i++) if (packOfStore[i] == b) return transport.power().get(i).name();
        throw new AssertionError("pack " + b);
    }

    PowerStore pack(int b) {
        for (int i = 0; i < packOfStore.length; i++) if (packOfStore[i] == b) return transport.power().get(i);
        throw new AssertionError("pack " + b);
    }

    /** How long what these packs hold lasts in a leg, min: the one it runs on and those that follow. */
    double lastsMin(int l, double[] wh) {
        double min = 0;
        for (int b = packOfLeg[l]; b >= 0; b = nextPack[b]) min += wh[b] * shareAt[b][l] / whPerMin[l];
        return min;
    }

    /** Takes so many minutes of a leg's load from a pack and those that follow it; the minutes that nothing fed. */
    double drain(int l, int first, double minutes, double[] wh) {
        double rest = minutes;
        for (int b = first; b >= 0; b = nextPack[b]) {
            double perMin = whPerMin[l] / shareAt[b][l];
            if (wh[b] >= perMin * rest) {
                wh[b] -= perMin * rest;
                return 0;
            }
            rest -= wh[b] / perMin;
            wh[b] = 0;
        }
        return rest;
    }

    double totalMedianMin() { return Arrays.stream(medianMin).sum(); }

    /** Whether nothing happens on the way but the legs, no store loses anything by itself, no pack follows another: then a stride is a walk. */
    boolean simple() { return acts.during.size() == 1 && acts.changeTo.length == 0 && !lossy && Arrays.stream(nextPack).allMatch(next -> next < 0); }

    /** Whether the need is a plain sum of lognormal legs: no acts that alter the draw, no diversion. */
    boolean plain() {
        for (int l = 0; l < legs; l++) if (diversionChance[l] > 0) return false;
        for (int j = 1; j < draw.length; j++) if (!Arrays.deepEquals(draw[j], draw[0])) return false;
        return acts.changeTo.length == 0;
    }

    private static int indexOf(List<PowerStore> power, String name) {
        for (int i = 0; i < power.size(); i++) if (power.get(i).name().equals(name)) return i;
        throw new IllegalArgumentException("no power store " + name);
    }
}
