package leeway.core.journey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.body.BloodGasFit;
import leeway.core.body.Doubt;
import leeway.core.body.PatientModel;
import leeway.core.body.Patients;
import leeway.core.body.Posterior;
import leeway.core.body.ChestWall;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.FreeFlow;
import leeway.core.breath.Mechanics;
import leeway.core.gas.Barometer;
import leeway.core.kit.Airway;
import leeway.core.kit.Circuit;
import leeway.core.kit.Filter;
import leeway.core.kit.Illness;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.lung.Rohrer;
import leeway.core.lung.Tube;
import leeway.core.run.Knob;
import leeway.core.run.Script;
import leeway.core.run.Draw;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Sedation;
import leeway.core.transport.Transport;

/**
 * A patient on a device: what sheets and transport say, as numbers for breath and gas.
 * <p>Leaves out the circuit's resistance in inspiration, for the ventilator regulates at the Y-piece.
 *
 * @param effort  as the file says; absent where it says nothing
 * @param breather sedation, coughs, what else moves the gas, and whether the drive answers to the gases
 * @param assumed what had to be assumed on the way, a sentence each
 * @param known   what a blood gas left to know of the exchange; absent without one
 */
public record Ventilated(PatientModel patient, Mechanics mechanics, DeviceLimits device, Ventilator ventilator, Circuit circuit, Optional<PatientEntry.Effort> effort, Breather breather,
                         List<String> assumed, Optional<Posterior> known) {
    /** Trigger delay of 50 to 100 ms (physiology of triggering; from memory); the middle. */
    private static final double TRIGGER_DELAY_S = 0.075;
    /** Volume-targeted control changes its pressure by at most this from breath to breath; common practice, no source. */
    private static final double TARGET_STEP_CMH2O = 3;
    /** A supported inflation ends at the latest after 1.5 to 3 s; common practice, no source. */
    private static final double LONGEST_SUPPORT_S = 2;
    /** Flow at the end over flow at the start where a sheet says that its volume control decelerates; common practice, no source. */
    private static final double DECELERATING_END = 0.5;
    /** Share of the flow for which a tube's quadratic is fitted at which a ventilator's own resistance reading is taken; common practice, no source. */
    private static final double READING_FLOW_SHARE = 0.7;
    /** Least resistance of lungs and airways that is left when the tube's share is taken off a reading, cmH2O.s/L; common practice, no source. */
    private static final double LEAST_RESISTANCE = 1;

    /** Backup breaths of a mode without a set rate, where nothing sets them: share of inspiration, pressure above PEEP; common practice, no source. */
    private static final double BACKUP_SHARE = 1.0 / 3, BACKUP_PRESSURE_CMH2O = 12;
    /** Flow trigger where neither file nor sheet sets one; 1 to 3 L/min is common practice, no source. */
    private static final double FLOW_TRIGGER_L_PER_MIN = 2;

    /**
     * Of a flow into an open mask, what comes to mouth and nose; the rest goes out by holes and edge. Invented, on the cautious
     * side of the 35 to 50 % oxygen that a simple mask is said to give at 5 to 10 L/min (lecture handout on oxygen therapy).
     */
    private static final double MASK_CATCHES = 0.5;
    /** Body mass index from which the weight on the chest is worth a sentence, kg/m2. Common practice, no source. */
    private static final double HEAVY = 35;
    /** Free flow needs none: the airway is open. */
    private static final Circuit NO_CIRCUIT = new Circuit("none", 0, 0, 0, 0, 0, 0, 0, "free flow");

    private static final String GAS_NOT_USED = "the blood gas cannot be right and was not used: ";

    public Ventilated { assumed = List.copyOf(assumed); }

    /** Why the file's blood gas did not count, a sentence; empty where it did or there is none. */
    public Optional<String> gasNotUsed() { return assumed.stream().filter(a -> a.startsWith(GAS_NOT_USED)).findFirst().map(a -> "T" + a.substring(1) + "."); }

    /** The patient of a transport on its device; where the file has a blood gas, the patient in whom it was most probably taken. */
    public static Ventilated of(Transport t) {
        Ventilated sheet = of(t.patient(), t.illness(), t.airway(), t.filter(), t.circuit(), t.ventilator());
        if (t.patient().bloodGas().isEmpty()) return sheet;
        double barometerMmHg = t.legs().isEmpty() ? 760 : Barometer.pressureMmHg(t.legs().get(0).altitudeM());
        BloodGasFit.Result fit = BloodGasFit.fit(sheet.patient, t.illness(), t.patient().cardiacOutputLPerMin().isPresent(), t.patient().bloodGas().get(), barometerMmHg);
        List<String> said = new ArrayList<>(sheet.assumed);
        if (fit instanceof BloodGasFit.Result.Fitted fitted) {
            said.addAll(fitted.said());
            Recruitment r = sheet.mechanics.lungs().recruitment();
            if (r.share() > 0 && r.shuntPerShare() > 0) {
                said.add(String.format(Locale.ROOT, "the blood gas counts as taken with the lung as open as a PEEP of %.0f and a plateau of %.0f cmH2O leave it, whatever its own PEEP was", r.atPeepCmH2O(), r.atPlateauCmH2O()));
            }
            Ventilated v = sheet.with(fitted.patient());
            return new Ventilated(v.patient, v.mechanics, v.device, v.ventilator, v.circuit, v.effort, v.breather, said, Optional.of(fitted.posterior()));
        }
        said.add(GAS_NOT_USED + ((BloodGasFit.Result.Impossible) fit).why());
        return new Ventilated(sheet.patient, sheet.mechanics, sheet.device, sheet.ventilator, sheet.circuit, sheet.effort, sheet.breather, said, Optional.empty());
    }

    /** The same from its pieces. */
    public static Ventilated of(PatientEntry entry, Illness illness, Airway fittedAirway, Filter fittedFilter, Circuit fitted, Ventilator ventilator) {
        List<String> assumed = new ArrayList<>();
        Circuit circuit = ventilator.alone() ? NO_CIRCUIT : fitted;
        boolean openMask = ventilator.alone() && fittedAirway.type() == Airway.Type.FACE_MASK;
        Airway airway = openMask ? fittedAirway.flushed() : fittedAirway;
        Filter filter = openMask ? Filter.NONE : fittedFilter;
        if (openMask) assumed.add("an open mask has no filter, and the flow keeps its room fresh");
        PatientModel patient = lying(Patients.of(entry, illness, airway, filter, circuit), entry, assumed);
        Rohrer tube = tube(airway);
        double index = patient.weightKg() / (patient.heightCm() * patient.heightCm() / 1e4);
        if (patient.living() && patient.adult() && index >= HEAVY) {
            assumed.add("the weight on the chest is in the smaller lung and the stiffer chest wall; what it presses at rest is left out (some 7 cmH2O in the gullet above that of the slim at a body mass index of 40 and more; Crit Care 2024;28:306), so the pressure across the lung reads high, on the cautious side");
        }
        if (entry.lungs().resistanceWithTubeCmH2OSPerL().isPresent() && entry.lungs().resistanceCmH2OSPerL().isEmpty()) {
            double flowLPerS = READING_FLOW_SHARE * airway.innerDiameterMm() * airway.innerDiameterMm() / (7.5 * 7.5);
            double tubeShare = tube.k1CmH2OSPerL() + tube.k2CmH2OS2PerL2() * flowLPerS + filter.resistanceCmH2OSPerL();
            double wished = entry.lungs().resistanceWithTubeCmH2OSPerL().getAsDouble();
            double own = Math.max(LEAST_RESISTANCE, wished - tubeShare);
            assumed.add(String.format(Locale.ROOT, "resistance of lungs and airways %.1f cmH2O.s/L: %.1f as read less %.1f of tube and filter at %.0f L/min",
                    own, wished, tubeShare, flowLPerS * 60));
            patient = patient.with(PatientModel.Change.NONE.mechanics(1, own / patient.resistanceCmH2OSPerL()));
        }
        Breather breather = Breather.of(entry);
        boolean breathes = !ventilator.alone() && !entry.paralysed() && entry.lungs().effort().map(e -> e != PatientEntry.Effort.NONE).orElse(false);
        if (breathes && breather.driveShare() > 0) assumed.add("own effort answers to carbon dioxide and oxygen, as far as they differ from those of the start, under CPAP from ordinary ones (PaCO2 40 mmHg); \"drive: fixed\" keeps it as it is");
        if (ventilator.alone() && !entry.paralysed() && breather.driveShare() > 0) assumed.add("own effort is as declared at a PaCO2 of 40 mmHg and grows with carbon dioxide from there; \"drive: fixed\" keeps it as it is");
        if (!entry.paralysed() && (breathes || ventilator.alone()) && breather.sedation() > 0) assumed.add(sedated(entry.breathing().sedated()));
        return new Ventilated(patient, mechanics(patient, tube, filter, circuit, ventilator, airway, entry).withLungs(lungs(entry, illness, assumed)), limits(ventilator), ventilator, circuit,
                entry.paralysed() ? Optional.of(PatientEntry.Effort.NONE) : entry.lungs().effort(), breather, assumed, Optional.empty());
    }

    /** The same patient changed (fitted, drawn), on the same device. */
    public Ventilated with(PatientModel other) {
        return new Ventilated(other, mechanics.withLungs(other.resistanceCmH2OSPerL(), other.expiratoryExtraCmH2OSPerL(), other.complianceMlPerCmH2O()), device,
                ventilator, circuit, effort, breather, assumed, known);
    }

    /** The same patient in one draw of what is uncertain of them. */
    public Ventilated drawn(PatientEntry entry, Illness illness, Draw draw) {
        return with(Doubt.draw(patient, entry, illness, known, draw)).withLungs(Doubt.draw(mechanics.lungs(), draw));
    }

    /** The same patient with other lungs of the same kind. */
    public Ventilated withLungs(Lungs lungs) {
        return lungs == mechanics.lungs() ? this
                : new Ventilated(patient, mechanics.withLungs(lungs), device, ventilator, circuit, effort, breather, assumed, known);
    }

    /** The patient as the file lays them: chest wall and lung; the gas in the lung follows in {@code leeway.core.body}. */
    private static PatientModel lying(PatientModel supine, PatientEntry entry, List<String> assumed) {
        ChestWall p = ChestWall.of(entry.position());
        if (p.equals(ChestWall.SUPINE) || !supine.living()) return supine;
        boolean measured = entry.lungs().complianceMlPerCmH2O().isPresent();
        double times = p.elastanceTimes(supine.chestWallShare());
        assumed.add(String.format(Locale.ROOT, "%s: chest wall %.2f times as stiff as lying on the back, lung %.2f times%s", entry.position().orElseThrow(), p.wallTimes(), p.lungTimes(),
                measured ? "; the compliance of the file is taken as measured so" : ""));
        return supine.with(PatientModel.Change.NONE.mechanics(measured ? 1 : 1 / times, 1)).withChestWall(p.share(supine.chestWallShare()));
    }

    private static String sedated(Sedation s) {
        String takes = String.format(Locale.ROOT, "sedation takes %.0f %% of the own effort at departure", 100 * s.share());
        return takes + (s.halfMin().isPresent() ? String.format(Locale.ROOT, ", half of that after %.0f min", s.halfMin().getAsDouble()) : " and does not wear off on the way");
    }

    private static Lungs lungs(PatientEntry entry, Illness illness, List<String> assumed) {
        Lungs lungs = entry.lungs().kind().over(illness.lungs());
        if (!lungs.linear()) assumed.add("lungs " + LungWords.of(lungs));
        return lungs;
    }

    private static Rohrer tube(Airway airway) {
        if (airway.type() == Airway.Type.FACE_MASK) return Rohrer.NONE;
        return new Tube(airway.innerDiameterMm(), airway.lengthCm()).rohrer().times(airway.frictionTimes() / Tube.FITTED);
    }

    private static Mechanics mechanics(PatientModel p, Rohrer tube, Filter filter, Circuit circuit, Ventilator ventilator, Airway airway, PatientEntry entry) {
        boolean sealed = airway.cuffed() && entry.cuff().map(c -> c != PatientEntry.Cuff.NONE).orElse(true);
        return new Mechanics(p.resistanceCmH2OSPerL(), p.expiratoryExtraCmH2OSPerL(), p.complianceMlPerCmH2O(), p.chestWallShare(), tube, filter.resistanceCmH2OSPerL(),
                circuit.expiratoryResistanceCmH2OSPerL() + ventilator.expiratoryResistanceCmH2OSPerL(), circuit.complianceMlPerCmH2O(),
                sealed && airway.type() != Airway.Type.FACE_MASK ? 0 : at20(airway.leakMlPerSPerSqrtCmH2O()), at20(circuit.leakMlPerSPerSqrtCmH2O()), 0, 1);
    }

    /** An orifice's coefficient, mL/s per root of cmH2O, as the flow at 20 cmH2O in L/min. */
    private static double at20(double mlPerSPerSqrtCmH2O) { return mlPerSPerSqrtCmH2O * Math.sqrt(20) * 0.06; }

    private static DeviceLimits limits(Ventilator v) {
        return new DeviceLimits(v.maxFlowLPerMin(), v.maxPressureCmH2O(), v.responseS(), v.compensatesCircuit(), TRIGGER_DELAY_S, TARGET_STEP_CMH2O, LONGEST_SUPPORT_S);
    }

    /**
     * Settings as the breath needs them; what is not set is what the device stands at. A hand bag squeezes by volume.
     *
     * @param barometerHPa ambient pressure: a device with a fixed mass flow delivers more where the air is thin
     */
    public BreathSettings breathSettings(Settings s, double barometerHPa) {
        Mode mode = s.mode().orElse(ventilator.alone() ? Mode.CPAP : Mode.CMV_VC);
        boolean trigger = s.has(Setting.PRESSURE_TRIGGER) && !s.has(Setting.FLOW_TRIGGER);
        double rate = value(s, Setting.RATE).orElse(Double.NaN);
        double inspiratory = value(s, Setting.INSPIRATORY_TIME).orElse(Double.NaN);
        double pressure = value(s, Setting.INSPIRATORY_PRESSURE).orElse(Double.NaN);
        if (!mode.hasRate() && (ventilator.apnoeaBackupAfterS().isPresent() || ventilator.alone())) {
            if (Double.isNaN(rate)) rate = Effort.usualRatePerMin(patient.ageYears());
            if (Double.isNaN(inspiratory)) inspiratory = BACKUP_SHARE * 60 / rate;
            if (Double.isNaN(pressure)) pressure = Math.max(BACKUP_PRESSURE_CMH2O, value(s, Setting.SUPPORT_PRESSURE).orElse(0));
        }
        double volume = value(s, Setting.TIDAL_VOLUME).orElse(Double.NaN) * thinAirTimes(mode, barometerHPa);
        return new BreathSettings(mode, volume, rate, inspiratory, value(s, Setting.PAUSE).orElse(0),
                pressure, value(s, Setting.SUPPORT_PRESSURE).orElse(mode == Mode.CPAP ? 0 : Double.NaN),
                value(s, Setting.RISE_TIME).orElse(0), value(s, Setting.PEEP).orElse(0), value(s, Setting.FIO2).orElse(0.21),
                value(s, Setting.PRESSURE_LIMIT).orElse(ventilator.maxPressureCmH2O()), trigger ? 0 : value(s, Setting.FLOW_TRIGGER).orElse(FLOW_TRIGGER_L_PER_MIN),
                s.get(Setting.PRESSURE_TRIGGER, 0), value(s, Setting.CYCLE_OFF).orElse(0.25), value(s, Setting.BIAS_FLOW).orElse(0),
                ventilator.apnoeaBackupAfterS().orElse(0), ventilator.decelerating() ? DECELERATING_END : 1);
    }

    /** The patient's own effort under these settings: as the file says; where it says nothing, normal in a mode that leaves the work to the patient, else none. */
    public Effort effort(Settings s) {
        boolean leftToPatient = s.mode().map(m -> !m.hasRate()).orElse(ventilator.alone());
        return Effort.of(effort.orElse(leftToPatient ? PatientEntry.Effort.NORMAL : PatientEntry.Effort.NONE), patient.ageYears());
    }

    /** The oxygen that flows past this patient's airway. */
    FreeFlow freeFlow() {
        return new FreeFlow(ventilator.gas().reservoirMl(), mechanics.tube().equals(Rohrer.NONE) ? MASK_CATCHES : 1);
    }

    /** A resting patient's own effort: what is taken of one who breathed until departure. */
    Effort resting() { return Effort.of(PatientEntry.Effort.NORMAL, patient.ageYears()); }

    /** Whether nothing ventilates and nobody breathes. */
    public boolean nobodyBreathes(Settings s) { return ventilator.alone() && !effort(s).present(); }

    /** Whether nothing but a steady pressure, or not even that, helps who breathes: the drive then has the say, not the settings. */
    public boolean unhelped(Settings s) { return ventilator.alone() || s.mode().map(m -> m == Mode.CPAP).orElse(false) && s.get(Setting.SUPPORT_PRESSURE, 0) == 0; }

    /** Writes what the breath needs besides {@link #breathSettings}: effort, what disturbs a trigger, sighs, the time at which support ends. */
    public Script base(Script script, Settings s) {
        effort(s).base(script);
        breather.base(script);
        if (ventilator.alone()) script.base(Knob.VENTILATOR_ON, 0);
        script.base(Knob.LEAK_SEEN, ventilator.compensatesLeak() ? 0 : 1);
        script.base(Knob.CYCLE_AFTER_SET, value(s, Setting.CYCLE_AFTER).orElse(0)).base(Knob.SIGH_EVERY_SET, value(s, Setting.SIGH_EVERY).orElse(0));
        value(s, Setting.SIGH_PRESSURE).ifPresent(p -> script.base(Knob.SIGH_PRESSURE_SET, p));
        return script;
    }

    /** Whether no two breaths need be the same: an effort, a cough, a trigger that something else may meet. */
    boolean irregular(Settings s, BreathSettings set) {
        double leak = ventilator.compensatesLeak() || !set.mode().triggered() ? 0
                : (mechanics.cuffLeakLPerMin() + mechanics.circuitLeakLPerMin()) * Math.sqrt(set.peepCmH2O() / 20);
        return effort(s).present() || breather.stirs() || set.flowTriggerLPerMin() > 0 && leak >= set.flowTriggerLPerMin();
    }

    /** What a fixed mass flow makes of a set volume: it grows as the ambient pressure falls. */
    private double thinAirTimes(Mode mode, double barometerHPa) {
        return mode.control() == Mode.Control.VOLUME && ventilator.gas().altitude() == Ventilator.Altitude.FIXED_MASS_FLOW ? 1013.25 / barometerHPa : 1;
    }

    private OptionalDouble value(Settings s, Setting setting) {
        OptionalDouble set = s.get(setting);
        return set.isPresent() ? set : ventilator.defaults().get(setting);
    }
}
