package leeway.core.body;

import static leeway.core.body.GasSlot.*;

import leeway.core.gas.Blend;
import leeway.core.gas.GasVolume;

/**
 * The gas side of {@link GasExchange}: what a breath brings and takes, what each compartment holds, what passes the mouth.
 * <p>Works on the state of {@link GasSlot}; its fields are coefficients only. Exactly conservative: every amount that leaves
 * one place is added at another or written to the ledger of the mouth.
 */
final class LungGas {
    private final PatientModel patient;
    private final Compartments parts;
    private final Airspace air = new Airspace();
    private final double[] inlet = new double[3], toDead = new double[3], lung = new double[3];
    int at;
    /** Ambient pressure without water vapour, mmHg; mL STPD in a mL BTPS; series dead space; gas at the open mouth; share of rebreathed gas. */
    double dry, perMl, deadMl, mouthGas, rebreathed;
    /** Oxygen at the open mouth where nobody breathes. */
    double roomO2 = Blend.AIR;
    // a breath's effective dead space is worked out once for the same breath
    private double knownTidalMl = Double.NaN, knownDeadMl = Double.NaN, knownBackMl;

    LungGas(PatientModel patient, Compartments parts) {
        this.patient = patient;
        this.parts = parts;
    }

    /** The lung at the end of an expiration in the steady state, and the dead space in its own periodic state. */
    void begin(double[] y, Ventilation first, SteadyGases steady, double above) {
        SteadyGases.Start s = steady.start();
        double startDry = first.barometerMmHg() - GasVolume.BODY_WATER_MMHG;
        boolean living = patient.living();
        double a = living ? patient.alveolarDeadSpaceAt(first.tidalMl()) : 0;
        for (int k = 0; k < parts.count; k++) {
            fill(y, at + parts.gas[k], target(y, k, above, a), living ? s.partO2MmHg()[k] / startDry : first.fio2(), living ? s.partCo2MmHg()[k] / startDry : 0);
        }
        fill(y, at + DEAD, bloodless(above, a), first.fio2(), 0);
        for (int k = 0; k < SeriesDeadSpace.TANKS; k++) fill(y, at + TANK + 3 * k, deadMl * perMl / SeriesDeadSpace.TANKS, s.expiredO2(), s.expiredCo2());
        y[at + MIXED_O2] = s.expiredO2();
        y[at + MIXED_CO2] = s.expiredCo2();
        y[at + INLET_O2] = first.fio2();
        for (int i = 0; i < 50 && first.tidalMl() > 0; i++) {
            share(inlet, first.tidalMl() * perMl, first.fio2(), 0);
            air.in(y, at + TANK, first.tidalMl(), deadMl, inlet);
            share(lung, first.tidalMl() * perMl, s.expiredO2(), s.expiredCo2());
            air.out(y, at + TANK, first.tidalMl(), deadMl, lung);
        }
        y[at + END_TIDAL] = tension(y, at + TANK);
    }

    /** A breath of this volume and oxygen comes in; the share a of it meets no blood. */
    void inspire(double[] y, double in, double deviceO2, double a) {
        double o2 = (1 - rebreathed) * deviceO2 + rebreathed * y[at + MIXED_O2], co2 = rebreathed * y[at + MIXED_CO2];
        y[at + INLET_O2] = o2;
        y[at + INLET_CO2] = co2;
        share(inlet, in * perMl, o2, co2);
        ledger(y, inlet, 1);
        y[at + ROW_OUTPUT] -= inlet[1];
        air.in(y, at + TANK, in, deadMl, inlet);
        if (in != knownTidalMl || deadMl != knownDeadMl) {
            knownBackMl = SeriesDeadSpace.effectiveMl(in, deadMl);
            knownTidalMl = in;
            knownDeadMl = deadMl;
        }
        double wanted = a * in, pure = Math.min(wanted, in - knownBackMl);
        double pureShare = pure / in, mixed = in > pure ? (wanted - pure) / (in - pure) : 0;
        for (int gas = 0; gas < 3; gas++) {
            // the last and freshest gas goes where no blood is; the rest in the order it comes
            double p = Math.min(pureShare * inlet[gas], air.moved[gas]);
            toDead[gas] = p + mixed * (air.moved[gas] - p);
            double perfused = air.moved[gas] - toDead[gas];
            y[at + DEAD + gas] += toDead[gas];
            double rest = perfused;
            for (int k = 1; k < parts.count; k++) {
                double share = parts.ventilation[k] * perfused;
                y[at + parts.gas[k] + gas] += share;
                rest -= share;
            }
            y[at + MAIN + gas] += rest;
        }
    }

    /** Each compartment goes to the volume that the breath left it; too much goes out, too little is drawn from outside. */
    void expire(double[] y, double above, double a, boolean breathing, boolean expired) {
        if (y[at + CLOSED] >= 0.5 && !breathing || y[at + MOUTH_GAS] < 0.5 && !breathing) return;
        double outAll = 0, missing = 0;
        lung[0] = lung[1] = lung[2] = 0;
        for (int k = 0; k <= parts.count; k++) {
            int g = at + slot(k);
            double all = y[g] + y[g + 1] + y[g + 2], more = all - target(y, k, above, a);
            if (more > 0) {
                double part = more / all;
                for (int gas = 0; gas < 3; gas++) {
                    double leaves = part * y[g + gas];
                    y[g + gas] -= leaves;
                    lung[gas] += leaves;
                }
                outAll += more;
            } else {
                missing -= more;
            }
        }
        if (missing > 1e-12) {
            double inside = Math.min(1, outAll / missing), fromOutside = missing - inside * missing;
            // neighbours give first
            double given = outAll > 0 ? Math.min(1, missing / outAll) : 0;
            for (int gas = 0; gas < 3; gas++) {
                inlet[gas] = given * lung[gas];
                lung[gas] -= inlet[gas];
            }
            outAll -= given * outAll;
            if (fromOutside > 1e-12) {
                double o2 = breathing ? y[at + INLET_O2] : mouthGas < 1.5 ? roomO2 : 1, co2 = breathing ? y[at + INLET_CO2] : 0;
                share(toDead, fromOutside, o2, co2);
                ledger(y, toDead, 1);
                y[at + ROW_OUTPUT] -= toDead[1];
                air.in(y, at + TANK, fromOutside / perMl, deadMl, toDead);
                for (int gas = 0; gas < 3; gas++) inlet[gas] += air.moved[gas];
            }
            for (int k = 0; k <= parts.count; k++) {
                int g = at + slot(k);
                double less = target(y, k, above, a) - (y[g] + y[g + 1] + y[g + 2]);
                if (less > 0) for (int gas = 0; gas < 3; gas++) y[g + gas] += less / missing * inlet[gas];
            }
        }
        if (outAll > 1e-12) {
            air.out(y, at + TANK, outAll / perMl, deadMl, lung);
            ledger(y, air.moved, -1);
            y[at + ROW_OUTPUT] += air.moved[1];
            double all = air.moved[0] + air.moved[1] + air.moved[2];
            if (expired && all > 0) {
                y[at + MIXED_O2] = air.moved[0] / all;
                y[at + MIXED_CO2] = air.moved[1] / all;
            }
            if (expired) y[at + END_TIDAL] = tension(y, at + TANK);
        }
    }

    private int slot(int k) {
        return k < parts.count ? parts.gas[k] : DEAD;
    }

    /** Amount that compartment k, the last one without blood, holds when the lung stands this far above its resting volume, mL STPD. */
    private double target(double[] y, int k, double above, double a) {
        if (k == parts.count) return bloodless(above, a);
        double frc = patient.frcMl() * y[at + REACHED];
        double ml = parts.perfusion[k] * frc + parts.ventilation[k] * (above - a * Math.max(0, above));
        return Math.max(0.02 * parts.perfusion[k] * frc, ml) * perMl;
    }

    private double bloodless(double above, double a) {
        return Math.max(0, a * Math.max(0, above)) * perMl;
    }

    /** The dead space holds what its volume holds at this pressure: the rest leaves, or comes from the mouth. */
    void fit(double[] y) {
        double each = deadMl * perMl / 3;
        for (int k = 0; k < 3; k++) {
            int g = at + TANK + 3 * k;
            double all = y[g] + y[g + 1] + y[g + 2];
            if (Math.abs(all - each) < 1e-12 * each) continue;
            if (all > each) {
                double part = 1 - each / all;
                for (int gas = 0; gas < 3; gas++) {
                    double leaves = part * y[g + gas];
                    y[g + gas] -= leaves;
                    y[at + LEDGER + gas] -= leaves;
                    if (gas == 1) y[at + ROW_OUTPUT] += leaves;
                }
            } else {
                share(toDead, each - all, y[at + INLET_O2], y[at + INLET_CO2]);
                ledger(y, toDead, 1);
                for (int gas = 0; gas < 3; gas++) y[g + gas] += toDead[gas];
            }
        }
    }

    /** The tube reaches another share of the lung: gas is cut off behind the block, or set free. */
    void reach(double[] y, double reached) {
        double was = y[at + REACHED];
        if (reached == was) return;
        if (reached < was) {
            double part = 1 - reached / was;
            for (int gas = 0; gas < 3; gas++) {
                for (int k = 0; k < parts.count; k++) {
                    int slot = at + parts.gas[k] + gas;
                    double cut = part * y[slot];
                    y[slot] -= cut;
                    y[at + BLOCKED + gas] += cut;
                }
            }
        } else {
            double part = (reached - was) / (1 - was);
            for (int gas = 0; gas < 3; gas++) {
                double freed = part * y[at + BLOCKED + gas];
                y[at + BLOCKED + gas] -= freed;
                double rest = freed;
                for (int k = 2; k < parts.count; k++) {
                    double share = freed * parts.perfusion[k] / (1 - parts.perfusion[1]);
                    y[at + parts.gas[k] + gas] += share;
                    rest -= share;
                }
                y[at + MAIN + gas] += rest;
            }
        }
    }

    private void ledger(double[] y, double[] amounts, int sign) {
        for (int gas = 0; gas < 3; gas++) y[at + LEDGER + gas] += sign * amounts[gas];
    }

    private double tension(double[] y, int g) {
        return dry * y[g + 1] / (y[g] + y[g + 1] + y[g + 2]);
    }

    private static void share(double[] into, double amount, double o2, double co2) {
        into[0] = amount * o2;
        into[1] = amount * co2;
        into[2] = amount - into[0] - into[1];
    }

    private static void fill(double[] y, int g, double amount, double o2, double co2) {
        y[g] = amount * o2;
        y[g + 1] = amount * co2;
        y[g + 2] = amount * (1 - o2 - co2);
    }
}
