package leeway.core.body;

import static leeway.core.body.GasSlot.*;

import leeway.core.gas.Blend;
import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;
import leeway.core.gas.Exp;
import leeway.core.gas.GasVolume;
import leeway.core.run.Claims;
import leeway.core.run.Column;
import leeway.core.run.Flux;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * Gas exchange in time: oxygen, carbon dioxide and nitrogen by mass balance through dead space, lung, blood and tissue.
 * <p>One stretch a breath, or every 2 s without one: what came in mixes, lung and blood come into equilibrium with all that
 * passes meanwhile, what is too much goes out. First order in time, exactly conservative, and at rest where
 * {@link SteadyGases} is.
 * <p>Leaves out: waves of the gases within a breath, scatter of ventilation over perfusion but for one poorly ventilated
 * compartment (where the patient has no spread), hypoxic vasoconstriction, nitrogen in blood and tissue, the pull of the chest on a closed lung that shrinks
 * (it closes unit by unit below a third of its resting gas), stirring by the heart, and the patient's own answer to carbon dioxide.
 */
public final class GasExchange implements Part {
    /** A breath that lasts longer is passed in pieces. */
    private static final double LONGEST_S = 10;
    /** Time constant by which the heart's output follows the pressure in the chest, s. Common practice, no source. */
    private static final double PRESSURE_S_TIME = 20;
    /** A lung that holds less than this share of its gas has collapsed: blood passes it as a shunt. */
    private static final double COLLAPSED = 0.03;
    /**
     * Share of its resting gas below which a lung that shrinks closes, unit by unit, each at this volume: blood passes what is closed as a shunt.
     * A lung left to itself keeps about a tenth of its total capacity (4.8 L in a woman of 160 cm, 7.0 L in a man of 175 cm) as trapped gas,
     * a third of what it holds at rest under anaesthesia. From memory; nobody has measured saturation with the airway closed to this point.
     */
    private static final double CLOSES = 1.0 / 3;
    private static final double MOST_SHUNT = 0.95;

    private final PatientModel patient;
    private final Ventilation first;
    private final boolean coupled;
    private final double longestS;
    private final BloodStream stream;
    private final LungGas lung;
    private final Compartments parts;
    private final BloodPoint point = new BloodPoint();
    private Blood blood;
    private int at;
    // coefficients
    private double dry, perMl, deadShare, shunt, shuntNow, fresh, output, vo2, vco2, mouthGas, reached;
    private boolean closed, oesophagus;

    /**
     * Of a patient who has been ventilated so for long.
     *
     * @param coupled false: pressure in the chest leaves the cardiac output alone, whatever the patient's own word on it
     */
    public GasExchange(PatientModel patient, Ventilation first, boolean coupled) {
        this(patient, first, coupled, LONGEST_S);
    }

    /** Less than this out of a lung in a stretch is the tail of an expiration that has ended: what is taken up then comes from the mouth; mL. */
    private static final double TAIL_ML = 1;

    GasExchange(PatientModel patient, Ventilation first, boolean coupled, double longestS) {
        this.longestS = longestS;
        this.patient = patient;
        this.first = first;
        this.coupled = coupled;
        stream = new BloodStream(patient);
        parts = new Compartments(patient);
        lung = new LungGas(patient, parts);
    }

    /** Writes the patient's values as base values of a run. */
    public static Script base(Script script, PatientModel p) {
        script.base(Knob.SHUNT, p.shunt()).base(Knob.ALVEOLAR_DEAD_SPACE, p.measuredDeadSpaceMl().isPresent() ? 0 : p.alveolarDeadSpace())
                .base(Knob.APPARATUS_DEAD_SPACE, p.apparatusMl()).base(Knob.CARDIAC_OUTPUT, p.cardiacOutputLPerMin()).base(Knob.OXYGEN_UPTAKE, p.vo2MlPerMin())
                .base(Knob.CO2_PRODUCTION, p.vco2MlPerMin()).base(Knob.TEMPERATURE, p.temperatureCel()).base(Knob.HAEMOGLOBIN, 10 * Math.max(1, p.haemoglobinGPerDl()))
                .base(Knob.BASE_EXCESS, p.baseExcessMmolL());
        return script;
    }

    @Override
    public void claim(Claims claims) {
        at = claims.state(COUNT + parts.extra);
        lung.at = at;
        claims.reads(Knob.CARDIAC_OUTPUT, Knob.OXYGEN_UPTAKE, Knob.CO2_PRODUCTION, Knob.HAEMOGLOBIN);
    }

    @Override
    public void retune(Now n) {
        dry = n.get(Knob.BAROMETER) - GasVolume.BODY_WATER_MMHG;
        perMl = dry / GasVolume.STPD_DIVISOR;
        lung.deadMl = Math.max(1, patient.seriesDeadSpaceMl() - patient.apparatusMl() + n.get(Knob.APPARATUS_DEAD_SPACE));
        deadShare = n.get(Knob.ALVEOLAR_DEAD_SPACE);
        shunt = n.get(Knob.SHUNT);
        double source = n.get(Knob.SOURCE_OXYGEN), set = n.get(Knob.FIO2_SET);
        fresh = source >= 0.98 ? set : Blend.AIR + Math.max(0, set - Blend.AIR) / (1 - Blend.AIR) * (source - Blend.AIR);
        output = n.get(Knob.CARDIAC_OUTPUT) / 6;
        vo2 = n.get(Knob.OXYGEN_UPTAKE) / 60;
        vco2 = n.get(Knob.CO2_PRODUCTION) / 60;
        lung.rebreathed = n.get(Knob.REBREATHED);
        closed = n.on(Knob.AIRWAY_CLOSED);
        mouthGas = n.get(Knob.APNOEA_GAS);
        lung.dry = dry;
        lung.perMl = perMl;
        lung.mouthGas = mouthGas;
        reached = n.get(Knob.VENTILATED_SHARE);
        oesophagus = n.on(Knob.OESOPHAGUS);
        double hb = n.get(Knob.HAEMOGLOBIN) / 10, excess = Math.max(-30, Math.min(30, n.get(Knob.BASE_EXCESS))), t = Math.min(43, n.get(Knob.TEMPERATURE));
        if (blood == null || blood.haemoglobinGPerDl() != hb || blood.baseExcessMmolL() != excess || blood.temperatureCel() != t) {
            blood = new Blood(hb, excess, t, patient.p50MmHg(), patient.inactive());
        }
    }

    @Override
    public void begin(Now n) {
        double[] y = n.y;
        y[at + LAST_S] = n.tS;
        flags(y);
        y[at + PRESSURE] = first.meanAlveolarCmH2O();
        y[at + END_TIDAL] = Double.NaN;
        SteadyGases steady = SteadyGases.of(patient, first);
        lung.begin(y, first, steady, n.get(Level.LUNG_ML));
        if (!patient.living()) return;
        SteadyGases.Start s = steady.start();
        stream.begin(y, at, blood, point, steady);
        for (int k = 0; k < parts.count; k++) warm(y, parts.warm[k], s.partO2MmHg()[k], s.partCo2MmHg()[k]);
        warm(y, BLOCKED_END, s.partO2MmHg()[0], s.partCo2MmHg()[0]);
        warm(y, ARTERY_END, steady.pao2MmHg(), steady.paco2MmHg());
    }

    private static final int BLOCKED_END = WARM + Warm.EACH * WARM_BLOCKED, ARTERY_END = WARM + Warm.EACH * WARM_ARTERY;

    private void warm(double[] y, int which, double po2, double pco2) {
        point.ofTensions(blood, po2, pco2);
        Warm.begin(y, at + which, point);
    }

    private void keep(double[] y, int which) { Warm.keep(y, at + which, point); }

    private void recall(double[] y, int which) { Warm.recall(y, at + which, point); }

    private void flags(double[] y) {
        y[at + CLOSED] = closed ? 1 : 0;
        y[at + MOUTH_GAS] = mouthGas;
        y[at + REACHED] = reached;
    }

    @Override
    public double nextS(Now n, double latestS) {
        double[] y = n.y;
        boolean same = y[at + CLOSED] == (closed ? 1 : 0) && y[at + MOUTH_GAS] == mouthGas && y[at + REACHED] == reached;
        return same ? y[at + LAST_S] + longestS : n.tS;
    }

    @Override
    public void pass(Now n, double dtS) {
        double[] y = n.y, f = n.flux;
        double in = f[Flux.IN_ML.ordinal()], leak = f[Flux.CUFF_LEAK_ML.ordinal()], out = f[Flux.OUT_ML.ordinal()];
        // what swells the stomach does not press on the heart as a lung does
        if (oesophagus) return;
        y[at + PRESSURE_S] += f[Flux.PALV_CMH2O_S.ordinal()];
        if (in > 0) {
            double received = Math.max(0, in - leak), room = f[Flux.IN_ROOM_ML.ordinal()];
            y[at + IN_ML] += received;
            y[at + IN_O2_ML] += received * ((in - room) * fresh + room * (Blend.AIR + n.get(Level.ROOM_OXYGEN))) / in;
        } else {
            y[at + OUT_ML] += out + leak;
        }
    }

    @Override
    public void hit(Now n, Script script, Sink out) {
        stretch(n);
        lung.reach(n.y, reached);
        flags(n.y);
    }

    @Override
    public void row(Now n, Script script, Sink out) {
        stretch(n);
        double[] y = n.y;
        n.set(Column.FIO2, y[at + INLET_O2]);
        n.set(Column.INSPIRED_CO2_MMHG, y[at + INLET_CO2] * dry);
        n.set(Column.ETCO2_MMHG, y[at + END_TIDAL]);
        y[at + END_TIDAL] = Double.NaN;
        n.set(Column.OXYGEN_UPTAKE_ML, y[at + ROW_UPTAKE]);
        n.set(Column.CO2_OUTPUT_ML, y[at + ROW_OUTPUT]);
        y[at + ROW_UPTAKE] = 0;
        y[at + ROW_OUTPUT] = 0;
        n.set(Column.PALVO2_MMHG, alveolarOxygen(y));
        if (!patient.living()) return;
        n.set(Column.CARDIAC_OUTPUT_L_MIN, 6 * flow(y));
        recall(y, ARTERY_END);
        point.ofContents(blood, y[at + SAMPLE], y[at + SAMPLE + 1]);
        keep(y, ARTERY_END);
        n.set(Column.PACO2_MMHG, point.pco2MmHg);
        n.set(Column.PAO2_MMHG, point.po2MmHg);
        n.set(Column.SAO2, point.saturation);
        n.set(Column.PH, point.ph());
    }

    /** Saturation of the blood that comes to the lung. */
    double mixedVenousSaturation(Now n) {
        point.u = 3.7;
        point.h = 0;
        point.ofContents(blood, n.y[at + LARGE_VEIN], n.y[at + LARGE_VEIN + 1]);
        return point.saturation;
    }

    /** Of the well ventilated lung; the mean by ventilation where it has a spread. */
    private double alveolarOxygen(double[] y) {
        double sum = 0, air = 0;
        for (int k = 0; k < parts.count; k++) {
            int g = at + parts.gas[k];
            double all = y[g] + y[g + 1] + y[g + 2];
            if (k == 1 || !(all > 0)) continue;
            sum += parts.ventilation[k] * y[g] / all;
            air += parts.ventilation[k];
        }
        return dry * sum / air;
    }

    /** Everything since the last stretch: in, exchange, out. */
    private void stretch(Now n) {
        double[] y = n.y;
        double dtS = n.tS - y[at + LAST_S];
        if (!(dtS > 0)) return;
        y[at + LAST_S] = n.tS;
        y[at + PRESSURE] += (1 - Exp.exp(-dtS / PRESSURE_S_TIME)) * (y[at + PRESSURE_S] / dtS - y[at + PRESSURE]);
        y[at + PRESSURE_S] = 0;
        double in = y[at + IN_ML], out = y[at + OUT_ML], inO2 = y[at + IN_O2_ML];
        y[at + IN_ML] = 0;
        y[at + IN_O2_ML] = 0;
        y[at + OUT_ML] = 0;
        lung.roomO2 = Blend.AIR + n.get(Level.ROOM_OXYGEN);
        lung.fit(y);
        double a = deadShare + (patient.measuredDeadSpaceMl().isPresent() ? patient.alveolarDeadSpaceAt(in > 0 ? in : first.tidalMl()) : 0);
        a = Math.min(0.95, a);
        if (in > 0) lung.inspire(y, in, inO2 / in, a);
        shuntNow = Math.max(0, Math.min(MOST_SHUNT, shunt + n.get(Level.SHUNT_ADDED)));
        if (patient.living()) exchange(y, dtS);
        lung.expire(y, n.get(Level.LUNG_ML), a, in > 0 || out > TAIL_ML, out > 0);
    }

    /** What the heart puts out, dL/s. */
    private double flow(double[] y) { return output * (coupled ? patient.outputTimes(y[at + PRESSURE]) : 1); }

    private void exchange(double[] y, double dtS) {
        double flow = flow(y);
        int pieces = (int) Math.ceil(dtS * flow / (stream.longestS(1) * 0.999));
        pieces = Math.max(1, pieces);
        double step = dtS / pieces, dl = flow * step;
        for (int i = 0; i < pieces; i++) {
            stream.tissues(y, at, blood, point, dl, vo2 * step, vco2 * step);
            if (!(dl > 0)) continue;
            double venousO2 = y[at + LARGE_VEIN], venousCo2 = y[at + LARGE_VEIN + 1];
            double perfused = dl * (1 - shuntNow);
            double blockedDl = (1 - y[at + REACHED]) * perfused, open = y[at + REACHED];
            double o2 = dl * venousO2, co2 = dl * venousCo2;   // what would flow past all gas
            gainO2 = 0;
            gainCo2 = 0;
            for (int k = 0; k < parts.count; k++) {
                meet(y, parts.gas[k], parts.warm[k], perfused * parts.perfusion[k] * open, venousO2, venousCo2, patient.frcMl() * parts.perfusion[k] * open);
            }
            if (blockedDl > 0) meet(y, BLOCKED, BLOCKED_END, blockedDl, venousO2, venousCo2, patient.frcMl() * (1 - open));
            y[at + ROW_UPTAKE] += gainO2;
            stream.arteries(y, at, dl, (o2 + gainO2) / dl, (co2 + gainCo2) / dl);
        }
    }

    private double gainO2, gainCo2;

    /** Blood meets the gas of one compartment; both end in equilibrium. */
    private void meet(double[] y, int slot, int warm, double dl, double venousO2, double venousCo2, double fullMl) {
        int g = at + slot;
        double all = y[g] + y[g + 1] + y[g + 2];
        double full = fullMl * perMl;
        if (!(dl > 0) || all < COLLAPSED * full) return;
        if (all < CLOSES * full) dl *= all / (CLOSES * full);
        recall(y, warm);
        point.ofExchange(blood, y[g], y[g + 1], all, dl, venousO2, venousCo2, dry);
        keep(y, warm);
        double o2 = dl * (point.oxygenMlPerDl - venousO2), co2 = dl * (point.carbonDioxideMlPerDl - venousCo2);
        y[g] -= o2;
        y[g + 1] -= co2;
        gainO2 += o2;
        gainCo2 += co2;
    }

    /** What is neither in the body nor accounted for, mL, since the start: rounding only. Gas 0 oxygen, 1 carbon dioxide, 2 nitrogen. */
    double held(Now n, int gas) {
        double sum = 0;
        for (int slot = MAIN; slot < ARTERY; slot += 3) sum += n.y[at + slot + gas];
        for (int k = 2; k < parts.count; k++) sum += n.y[at + parts.gas[k] + gas];
        if (gas < 2 && patient.living()) sum += stream.held(n.y, at, gas);
        return sum - n.y[at + LEDGER + gas] + (gas == 0 ? n.y[at + USED] : gas == 1 ? -n.y[at + MADE] : 0);
    }

    /** Gas in the lung, dead space left out, mL STPD. */
    double lungGasMl(Now n) {
        double sum = 0;
        for (int gas = 0; gas < 3; gas++) {
            sum += n.y[at + BLOCKED + gas] + n.y[at + DEAD + gas];
            for (int k = 0; k < parts.count; k++) sum += n.y[at + parts.gas[k] + gas];
        }
        return sum;
    }

    /** Carbon dioxide in blood and tissue, mL STPD. */
    double bodyCo2Ml(Now n) {
        return stream.held(n.y, at, 1);
    }

    /** Evaluations of the blood's curves, ever, by this part. */
    public long evaluations() {
        return point.evaluations;
    }
}
