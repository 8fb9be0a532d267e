package leeway.core.journey;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import leeway.core.body.Drive;
import leeway.core.body.GasExchange;
import leeway.core.breath.Breath;
import leeway.core.gas.Barometer;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.run.Change;
import leeway.core.run.Draw;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.supply.LegNeed;
import leeway.core.supply.OxygenDraw;
import leeway.core.supply.SupplyPart;
import leeway.core.transport.Event;
import leeway.core.transport.Leg;
import leeway.core.transport.Transport;
import leeway.core.transport.WhatIf;

/**
 * A journey made ready for the loop: the parts that move, the knobs they start from, the layers of legs, climbs and events.
 * <p>At medians legs last their medians, in a draw as long as they are drawn. What-ifs are added by who asks for them. Leaves out: sensors and alarms
 * ({@code leeway.core.alarm}), faults ({@code leeway.core.rehearsal}); both are further parts and layers.
 *
 * @param parts     breath, gas exchange, the drive to breathe, supply, in the order in which they pass
 * @param script    base values and layers; copy it before adding to it
 * @param legStartS start of each leg and, last, the end of the journey, s
 */
public record JourneyRun(Transport transport, Ventilated ventilated, Settings settings, List<LegState> legs, List<Part> parts, Script script, double[] legStartS) {
    /** Time for the last breath to go out before an airway closes, s. Common practice, no source. */
    public static final double LAST_EXPIRATION_S = 3;
    /** Rate at which a cabin comes down, m/min: 300 ft/min. Common practice, no source. */
    private static final double DESCENT_M_PER_MIN = 300 * 0.3048;

    /** The journey in one draw of the uncertain world; draw 0 is the world of medians. */
    public static JourneyRun of(Transport t, Settings settings, Draw draw) {
        Ventilated median = Ventilated.of(t);
        return of(t, draw.draw() == 0 ? median : median.drawn(t.patient(), t.illness(), draw), settings, draw);
    }

    /** The same of a patient already worked out (fitted to a blood gas, say). */
    public static JourneyRun of(Transport t, Ventilated v, Settings settings, Draw draw) { return of(t, v, settings, LegState.of(t, v, settings), draw); }

    /** The same, with the legs' steady states already worked out for this patient and these settings. */
    public static JourneyRun of(Transport t, Ventilated v, Settings settings, List<LegState> legs, Draw draw) {
        double[] starts = new double[legs.size() + 1];
        List<LegNeed> needs = legs.stream().map(LegState::need).toList();
        double[] drawnMin = draw.draw() == 0 ? null : SupplyPart.legMinutes(t, needs, draw);
        for (int i = 0; i < legs.size(); i++) starts[i + 1] = drawnMin == null ? legs.get(i).toMin() * 60 : starts[i] + drawnMin[i] * 60;
        double[] ends = Arrays.copyOfRange(starts, 1, starts.length);
        LegState first = legs.get(0);
        Script script = Breath.base(new Script(), v.mechanics(), first.steady().breathSettings());
        v.base(script, settings);
        script.base(Knob.BAROMETER, Barometer.mmHg(first.barometerHPa()));
        delivered(legs, starts, script);
        climbs(legs, starts, v, settings, script);
        events(t, script);
        Sedated.of(t, starts).into(script);
        SupplyPart.plan(t, ends, script);
        GasExchange.base(script, v.patient());
        Steady steady = first.steady();
        GasExchange gas = new GasExchange(Steady.patient(v, steady.breath()), Steady.ventilation(steady.breath(), first.barometerHPa(), steady.fio2()), true);
        double paco2 = steady.gases().paco2MmHg(), sao2 = steady.gases().sao2();
        Drive drive = v.unhelped(settings) ? new Drive(Drive.RESTING_PACO2_MMHG, Drive.RESTING_SAO2, paco2, sao2) : new Drive(paco2, sao2);
        Part breath = new Breath(v.mechanics(), v.device()), supply = SupplyPart.of(t, needs, ends, draw);
        List<Part> parts = v.ventilator().alone() ? List.of(breath, v.freeFlow(), gas, drive, supply) : List.of(breath, gas, drive, supply);
        return new JourneyRun(t, v, settings, legs, parts, script, starts);
    }

    /** End of the journey, s. */
    public double endS() { return legStartS[legStartS.length - 1]; }

    /** The leg that is under way at a time; the last one after the end. */
    public int legAt(double tS) {
        int leg = 0;
        while (leg + 2 < legStartS.length && tS >= legStartS[leg + 1]) leg++;
        return leg;
    }

    private static void climbs(List<LegState> legs, double[] starts, Ventilated v, Settings settings, Script script) {
        boolean fixedMass = v.ventilator().gas().altitude() == Ventilator.Altitude.FIXED_MASS_FLOW
                && settings.mode().map(m -> m.control() == Mode.Control.VOLUME).orElse(false);
        double seaHPa = legs.get(0).barometerHPa(), nowHPa = seaHPa;
        for (int i = 1; i < legs.size(); i++) {
            double hPa = legs.get(i).barometerHPa();
            if (hPa != nowHPa) {
                // the new pressure lies over the old one, so a ramp goes from there to here
                double rampS = rampS(legs.get(i - 1).leg(), legs.get(i).leg(), starts[i + 1] - starts[i]);
                script.add(new Change(starts[i], Double.POSITIVE_INFINITY, rampS, Knob.BAROMETER, 0, How.SET, Barometer.mmHg(hPa)));
                if (fixedMass) script.add(new Change(starts[i], Double.POSITIVE_INFINITY, rampS, Knob.TIDAL_VOLUME_SET, 0, How.TIMES, nowHPa / hPa));
            }
            nowHPa = hPa;
        }
    }

    /**
     * Over how long a leg's pressure is reached, s: as the file says; a descent of which it says nothing lies, on the cautious
     * side, after the flight, at the cabin's usual rate.
     */
    public static double rampS(Leg before, Leg leg, double legS) {
        double fallM = before.altitudeM() - leg.altitudeM();
        if (leg.climbMin() > 0 || fallM <= 0) return Math.min(leg.climbMin() * 60, legS);
        return Math.min(fallM / DESCENT_M_PER_MIN * 60, legS / 2);
    }

    /** Where a device gives another FiO2 than is set (an air mixture, a flowmeter), the breaths carry what it gives. */
    private static void delivered(List<LegState> legs, double[] starts, Script script) {
        double now = legs.get(0).steady().fio2();
        script.base(Knob.FIO2_SET, now);
        for (int i = 1; i < legs.size(); i++) {
            double fio2 = legs.get(i).steady().fio2();
            if (fio2 != now) script.add(Change.at(starts[i], Knob.FIO2_SET, How.SET, fio2));
            now = fio2;
        }
        double flow = legs.get(0).steady().breathSettings().biasFlowLPerMin();
        for (int i = 1; i < legs.size(); i++) {
            double next = legs.get(i).steady().breathSettings().biasFlowLPerMin();
            if (next != flow) script.add(Change.at(starts[i], Knob.BIAS_FLOW_SET, How.SET, next));
            flow = next;
        }
    }

    private static void events(Transport t, Script script) {
        for (Event e : t.events()) {
            double atS = e.atMin() * 60, untilS = e.forS().isPresent() ? atS + e.forS().getAsDouble() : Double.POSITIVE_INFINITY;
            Settings set = e.set();
            if (set.has(Setting.FIO2)) set = set.with(Setting.FIO2, OxygenDraw.deliveredFio2(t.ventilator(), set.get(Setting.FIO2, 0.21)));
            set(set, atS, untilS, script);
        }
    }

    /** Adds settings as layers from a time to a time. */
    public static void set(Settings s, double atS, double untilS, Script script) {
        s.mode().ifPresent(m -> script.add(Change.during(atS, untilS, Knob.MODE, How.SET, leeway.core.kit.Mode.valueOf(m.name()).ordinal())));
        for (Setting setting : Setting.values()) {
            OptionalDouble value = s.get(setting);
            if (value.isPresent()) script.add(Change.during(atS, untilS, knob(setting), How.SET, value.getAsDouble()));
        }
    }

    /** Adds an apnoea of the file: nothing and nobody ventilates, and the airway is as the file says. */
    public static void apnoea(WhatIf what, Script script) {
        WhatIf.Apnoea apnoea = what.apnoea().orElseThrow(() -> new IllegalArgumentException("not an apnoea"));
        double atS = what.atMin() * 60, untilS = what.forS().isPresent() ? atS + what.forS().getAsDouble() : Double.POSITIVE_INFINITY;
        script.add(Change.during(atS, untilS, Knob.VENTILATOR_ON, How.SET, 0));
        script.add(Change.during(atS, untilS, Knob.EFFORT, How.SET, 0));
        switch (apnoea) {
            case CLOSED -> {
                // the breath under way goes out first: apnoea begins at the end of an expiration, as in the published series
                script.add(Change.during(atS, untilS, Knob.APNOEA_GAS, How.SET, 0));
                script.add(Change.during(Math.min(atS + LAST_EXPIRATION_S, untilS), untilS, Knob.AIRWAY_CLOSED, How.SET, 1));
            }
            case AIR -> {
                script.add(Change.during(atS, untilS, Knob.OPEN_AT_PATIENT, How.SET, 1));
                script.add(Change.during(atS, untilS, Knob.APNOEA_GAS, How.SET, 1));
            }
            case OXYGEN -> {
                script.add(Change.during(atS, untilS, Knob.OPEN_AT_PATIENT, How.SET, 1));
                script.add(Change.during(atS, untilS, Knob.APNOEA_GAS, How.SET, 2));
            }
        }
    }

    /** The knob that a setting turns. */
    public static Knob knob(Setting setting) {
        return switch (setting) {
            case TIDAL_VOLUME -> Knob.TIDAL_VOLUME_SET;
            case RATE -> Knob.RATE_SET;
            case INSPIRATORY_TIME -> Knob.INSPIRATORY_TIME_SET;
            case PAUSE -> Knob.PAUSE_SET;
            case INSPIRATORY_PRESSURE -> Knob.INSPIRATORY_PRESSURE_SET;
            case SUPPORT_PRESSURE -> Knob.SUPPORT_SET;
            case PEEP -> Knob.PEEP_SET;
            case FIO2 -> Knob.FIO2_SET;
            case RISE_TIME -> Knob.RISE_SET;
            case FLOW_TRIGGER -> Knob.FLOW_TRIGGER_SET;
            case PRESSURE_TRIGGER -> Knob.PRESSURE_TRIGGER_SET;
            case CYCLE_OFF -> Knob.CYCLE_OFF_SET;
            case PRESSURE_LIMIT -> Knob.PRESSURE_LIMIT_SET;
            case BIAS_FLOW -> Knob.BIAS_FLOW_SET;
            case CYCLE_AFTER -> Knob.CYCLE_AFTER_SET;
            case SIGH_EVERY -> Knob.SIGH_EVERY_SET;
            case SIGH_PRESSURE -> Knob.SIGH_PRESSURE_SET;
        };
    }

    /** The leg of a row. */
    public Leg leg(double tS) { return transport.legs().get(legAt(tS)); }
}
