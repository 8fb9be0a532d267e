package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import leeway.core.alarm.Ahead;
import leeway.core.alarm.Speaking;
import leeway.core.gas.Blend;
import leeway.core.kit.Setting;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.supply.SupplyPart;

/**
 * The journey without any fault: the moment of each leg with the least reserve, and the alarms that speak anyway.
 * <p>Reserve is the oxygen of the alveoli (its partial pressure), the store that every stop of ventilation is paid from; without
 * one, the lowest saturation. For a fault that only drains stores, reserve is what they hold beyond the rest of the leg, and least
 * where the drain has longest to run: as the leg begins. Where gas or power ends by itself, only moments before that are taken.
 */
public final class Nominal {
    /** A reserve this much lower counts as lower; 1 %. */
    private static final double LESS = 0.99;
    /** A leg's first half minute still carries the change to it. */
    private static final double SETTLE_S = 30;
    /** What the stores hold is kept so often, straight between; s. */
    private static final double HELD_S = 60;

    private final Stage stage;
    private final Checkpoint[] least;
    private final Checkpoint[] begins;
    private final List<double[]> heard = new ArrayList<>();
    private final int[] count;
    private final double endS;
    private final double[] oxygenAtEndL;
    private final double[] chargeAtEndWh;
    private final List<Double> ends = new ArrayList<>();
    private final List<double[]> rows = new ArrayList<>();
    /** Time, then for each leg what its stores hold, then its charge. */
    private final List<double[]> held = new ArrayList<>();
    private final boolean keepsRows;
    private final Ahead ahead;
    private boolean gone;

    /** At medians, with the rows of the journey; for all who rehearse it and for who draws its course. */
    public static Nominal of(Voyage voyage) { return new Nominal(voyage.stage(new Draw(0, 0)), Double.NaN, true); }

    /** @param fixedS the moment of the fault where one is given; {@code NaN} for the least reserve of each leg */
    Nominal(Stage stage, double fixedS) { this(stage, fixedS, false); }

    private Nominal(Stage stage, double fixedS, boolean keepsRows) {
        this.stage = stage;
        this.keepsRows = keepsRows;
        ahead = new Ahead(stage.speaking().sensing());
        least = new Checkpoint[stage.legs()];
        begins = new Checkpoint[stage.legs()];
        count = new int[stage.speaking().limits().size()];
        oxygenAtEndL = new double[stage.legs()];
        chargeAtEndWh = new double[stage.legs()];
        Script script = stage.script().copy();
        Now n = stage.loop().begin(script);
        double windowS = stage.transport().policy().harm().searchMin() * 60;
        hold(n);
        for (int leg = 0; leg < stage.legs(); leg++) {
            Seeker seeker = new Seeker(leg, script);
            boolean here = !Double.isNaN(fixedS) && fixedS >= stage.legStartS()[leg] && (fixedS < stage.legEndS(leg) || leg == stage.legs() - 1);
            if (here) {
                stage.loop().to(Math.min(fixedS, stage.legEndS(leg)), n, script, seeker);
                least[leg] = Checkpoint.of(n, script);
            }
            stage.loop().to(stage.legEndS(leg), n, script, seeker);
            hold(n);
            oxygenAtEndL[leg] = stage.supplies().oxygenL(n, leg);
            chargeAtEndWh[leg] = stage.supplies().charge(n, leg);
            begins[leg] = Double.isNaN(fixedS) ? seeker.first : least[leg];
            if (Double.isNaN(fixedS)) least[leg] = seeker.least == null && !gone ? Checkpoint.of(n, script) : seeker.least;
        }
        endS = n.tS;
        stage.loop().to(endS + windowS, n, script, new Seeker(-1, script));
    }

    /** The moment on a leg at which faults strike; null where the given moment lies on another leg. */
    Checkpoint moment(int leg, boolean drains) { return drains && begins[leg] != null ? begins[leg] : least[leg]; }

    /** When each limit is next heard at or after a time; infinite for never. */
    double[] heardFromS(double tS) {
        double[] next = new double[count.length];
        Arrays.fill(next, Double.POSITIVE_INFINITY);
        for (double[] h : heard) {
            int limit = (int) h[0];
            if (h[1] >= tS && h[1] < next[limit]) next[limit] = h[1];
        }
        return next;
    }

    /** What the journey and the search after it still bring. */
    Ahead ahead() { return ahead; }

    /** How often each limit was heard while the journey lasted. */
    int[] heardOnJourney() {
        int[] n = new int[count.length];
        for (double[] h : heard) if (h[1] < endS) n[(int) h[0]]++;
        return n;
    }

    /** Usable litres that the leg's stores hold at its end if nothing happens. */
    double oxygenAtEndL(int leg) { return oxygenAtEndL[leg]; }

    private void hold(Now n) {
        int legs = stage.legs();
        double[] now = new double[1 + 2 * legs];
        now[0] = n.tS;
        for (int leg = 0; leg < legs; leg++) {
            now[1 + leg] = stage.supplies().oxygenL(n, leg);
            now[1 + legs + leg] = stage.supplies().charge(n, leg);
        }
        held.add(now);
    }

    /** What a leg's stores (0: litres of oxygen) or pack (1: Wh) hold at a time of the journey if nothing happens; {@code NaN} where that has no end. */
    double held(int what, int leg, double tS) {
        int low = 0, high = held.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (held.get(middle)[0] <= tS) low = middle; else high = middle;
        }
        double[] a = held.get(low), b = held.get(high);
        int at = 1 + what * stage.legs() + leg;
        double share = b[0] > a[0] ? Math.max(0, Math.min(1, (tS - a[0]) / (b[0] - a[0]))) : 0;
        return a[at] + share * (b[at] - a[at]);
    }

    /** Usable charge at the leg's end if nothing happens. */
    double chargeAtEndWh(int leg) { return chargeAtEndWh[leg]; }

    double journeyS() { return endS; }

    /** Start of each leg and, last, the end of the journey, s. */
    public double[] legStartS() { return stage.legStartS().clone(); }

    /** What the loop's columns held at each row of the journey; empty where they were not asked for. */
    public List<double[]> rows() { return List.copyOf(rows); }

    /** When gas or power next ends at or after a time for want of stores, without any fault; infinite for never within the search after the journey. */
    double suppliesEndS(double tS) {
        for (double endS : ends) if (endS >= tS) return endS;
        return Double.POSITIVE_INFINITY;
    }

    /** Whether the end of gas is felt on a leg; after the journey, on the last one. */
    private boolean needsGas(int leg) {
        int on = leg < 0 ? stage.legs() - 1 : leg;
        boolean above = stage.settings().get(Setting.FIO2, Blend.AIR) > Blend.AIR + 0.01;
        return !stage.transport().legs().get(on).oxygen().isEmpty() && (above || stage.transport().ventilator().gas().stopsWithoutGas());
    }

    private final class Seeker implements Sink {
        private final int leg;
        private double lowest = Double.POSITIVE_INFINITY;
        private final Script script;
        private Checkpoint least;
        private Checkpoint first;

        Seeker(int leg, Script script) {
            this.leg = leg;
            this.script = script;
        }

        @Override
        public void row(Now n) {
            ahead.row(n);
            if (keepsRows && leg >= 0) rows.add(n.row.clone());
            if (leg >= 0 && n.tS >= held.get(held.size() - 1)[0] + HELD_S) hold(n);
            // what ends by itself is the plan's to say; faults are rehearsed before it
            if (gone && (leg > 0 || first != null)) return;
            if (leg < 0 || n.tS < Math.min(stage.legStartS()[leg] + SETTLE_S, stage.legEndS(leg) - 1)) return;
            if (first == null) first = Checkpoint.of(n, script);
            double reserve = n.get(Column.PALVO2_MMHG);
            if (Double.isNaN(reserve)) reserve = n.get(Column.SAO2);
            if (Double.isNaN(reserve)) reserve = 1;
            if (reserve < lowest * LESS) {
                lowest = reserve;
                least = Checkpoint.of(n, script);
            }
        }

        @Override
        public void event(double tS, int what, double value) {
            if (what == SupplyPart.POWER_GONE || what == SupplyPart.GAS_GONE && needsGas(leg)) {
                gone = true;
                ends.add(tS);
            } else if (what == SupplyPart.POWER_BACK || what == SupplyPart.GAS_BACK) {
                gone = false;
            }
            if (what >= Speaking.FIRST_EVENT && Speaking.whatOf(what) == Speaking.HEARD) heard.add(new double[] {Speaking.limitOf(what), tS});
        }
    }
}
