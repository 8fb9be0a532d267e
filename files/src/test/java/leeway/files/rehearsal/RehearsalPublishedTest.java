package leeway.files.rehearsal;

import java.util.List;
import java.util.function.ToDoubleFunction;
import leeway.Check;
import leeway.core.alarm.Speaking;
import leeway.core.gas.TwoColours;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.rehearsal.Effect;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Stage;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Knob;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.Transport;
import leeway.files.sheet.Kinds;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Faults against print: desaturation in apnoea, pressure in one-lung ventilation, what the oximeter shows and when the alarm speaks. */
class RehearsalPublishedTest {
    private static final double AT_S = 600;
    private static final String OXYGEN = Nights.SHORT.replace("fio2: 60 %", "fio2: 100 %");
    private static final String LEAN = Nights.SHORT.replace("fio2: 60 %, peep: 5 cmH2O", "fio2: 95 %, peep: 0 cmH2O").replace("height: 170 cm, age: 40 years", "height: 160 cm, weight: 65 kg, age: 30 years");
    private static final String HEAVY = OXYGEN.replace("healthy lungs", "obesity").replace("age: 40 years", "weight: 140 kg, age: 40 years");
    private static final String SZEGEDI = "abstract of 51 double-lumen tubes (Szegedi, Anesth Analg 1997;84:1034, the place from memory): 1.42 and 1.55 with the tube in place, 1.69 and 1.75 where it was not; tolerance the difference";
    /** 400 mL in 0.8 s. */
    private static final String FLOW_30 = Nights.SHORT.replace("peep: 5 cmH2O", "peep: 5 cmH2O, tidal volume: 400 mL, inspiratory time: 0.8 s, pause: 0 s");

    static final List<Check> ROWS = List.of(
            Check.lookedUp("apnoea after 100 % oxygen until 90 % saturation, normal weight", 595, 142, "s",
                    "Br J Anaesth 1991;67:464, mean and standard deviation", () -> crossing(OXYGEN, "ventilator stops", n -> n.get(Column.SAO2), 0.90)),
            Check.lookedUp("apnoea after 100 % oxygen until 90 % saturation, morbidly obese", 196, 80, "s",
                    "Br J Anaesth 1991;67:464, mean and standard deviation", () -> crossing(HEAVY, "ventilator stops", n -> n.get(Column.SAO2), 0.90))
                    .missedBecause("ours is earlier, the cautious side: the sheet is of a ventilated patient with shunt, the study of elective patients who breathed oxygen awake"),
            Check.fromMemory("finger oximeter behind arterial saturation, at 90 %, mean over 8 s included", 20, 10, "s",
                    "finger 10 to 30 s after the artery; monitoring texts, from memory",
                    () -> crossing(Nights.SHORT, "ventilator stops", n -> n.get(Column.SPO2), 0.90) - crossing(Nights.SHORT, "ventilator stops", n -> n.get(Column.SAO2), 0.90)),
            Check.fromMemory("peak pressure rise with the tube in one bronchus, volume control", 10, 5, "cmH2O",
                    "5 to 15 cmH2O at once; common practice, no source",
                    () -> peak(Nights.SHORT, "tube in the right main bronchus", 30) - peak(Nights.SHORT, "tube in the right main bronchus", -5)),
            Check.lookedUp("finger oximeter in mild hypothermia, later than warm by", 85, 9, "s", "MacLeod, Anaesthesia 2005;60:65: mean answer to hypoxia 215 instead of 130 s; a row of breaths is 4 s",
                    () -> lagS(Nights.SHORT.replace("age: 40 years", "age: 40 years, temperature: 34 Cel")) - lagS(Nights.SHORT)),
            Check.lookedUp("oximeter with 30 % carboxyhaemoglobin and 65 % oxyhaemoglobin", 95, 0.5, "%", "Vegfors & Lennmarken, Br J Anaesth 1991;66:625: shows the sum of both, over 1 to 30 %", () -> 100 * TwoColours.shows(0.65 / 0.7, 0.3, 0)),
            Check.lookedUp("breaths that still show CO2 with the tube in the oesophagus", 3, 3, "breaths", "Linko, Acta Anaesthesiol Scand 1983;27:199: gone after a few; Sum-Ping, Anesth Analg 1987;66:481: to zero in about six",
                    () -> breathsWithCo2(Nights.SHORT)),
            Check.fromMemory("fall of end-tidal CO2 with a fall of output by 60 %, volume control", 20, 7, "%", "slope 0.33 in dogs; Isserles & Breen, Anesth Analg 1991;73:808, from memory",
                    () -> 100 * (1 - endTidal(Nights.SHORT, "cardiac output falls", 120) / endTidal(Nights.SHORT, "cardiac output falls", -5))),
            Check.lookedUp("driving pressure of one lung, 5 mL/kg, no PEEP", 16, 3, "cmH2O", "Spadaro, Anesthesiology 2018;128:531, mean and standard deviation",
                    () -> driving(Nights.SHORT.replace("peep: 5 cmH2O", "peep: 0 cmH2O, tidal volume: 310 mL"), "tube in the right main bronchus", 60))
                    .missedBecause("ours is 0.5 below the spread: 310 mL into 25 mL/cmH2O, half of a healthy supine compliance; their 16 is 20 mL/cmH2O, the lower lung on the side under an open chest without PEEP, partly collapsed. As a share of the pressure with two lungs (next rows) ours agrees"),
            Check.lookedUp("one lung instead of two, same volume: plateau pressure times", 1.42, 0.27, "1", SZEGEDI,
                    () -> plateau(Nights.SHORT, "tube in the right main bronchus", 30) / plateau(Nights.SHORT, "tube in the right main bronchus", -5)),
            Check.lookedUp("the same: peak pressure times", 1.55, 0.2, "1", SZEGEDI,
                    () -> peak(Nights.SHORT, "tube in the right main bronchus", 30) / peak(Nights.SHORT, "tube in the right main bronchus", -5)),
            Check.lookedUp("peak pressure with a tube of 6.0 mm over that with 7.5 mm, at 30 L/min", 6.0, 1.5, "cmH2O", "Futagawa, BMC Anesthesiol 2017: 8.9 and 2.9, preformed nasal tubes with slip joint; tolerance a quarter, what ours trusts to",
                    () -> peak(FLOW_30.replace("tracheal tube 7.5 mm", "tracheal tube 6.0 mm"), "audio paused", -5) - peak(FLOW_30, "audio paused", -5))
                    .missedBecause("ours is the law of smooth tubes, without the slip joint and the two bends of a preformed one; too little pressure for a small tube, by 40 %"),
            Check.lookedUp("secretions: pressure lost in the tube, times that of a clean one", 2.9, 1.5, "1", "Wilson, Chest 2009;136:1006: used tubes were as new ones of one to four sizes less, by Blasius 1.4 to 4.4 times",
                    () -> Nights.fault(Nights.CATALOGUE, "secretions in the tube").effects().stream().filter(e -> e.knob() == Knob.TUBE_RESISTANCE).findFirst().orElseThrow().value())
                    .missedBecause("theirs narrowed over days and let the patient be; the sheet is a plug that comes within minutes, of a bore 1.7 times smaller"),
            Check.lookedUp("apnoea after 100 % oxygen until 95 % saturation, women lying flat", 243, 73, "s", "Baraka, Anesth Analg 1992;75:757, abstract, 10 women, mean; size not given, ours 30 years, 160 cm, 65 kg, no PEEP, oxygen 95 % as from a mask; tolerance 30 %",
                    () -> crossing(LEAN, "ventilator stops", n -> n.get(Column.SPO2), 0.95))
                    .missedBecause("not the cautious side: theirs had breathed awake until then, ours is sedated and uses 0.85 of that oxygen (at theirs ours agrees, row of gas exchange). Published times of healthy adults differ twofold: 595 (first row) and 462 s to 90 %, 243 here"),
            Check.fromMemory("repetition of a sound of high priority", 8.75, 6.25, "s", "2.5 to 15 s; IEC 60601-1-8, from memory; a tone chip made for it offers 2.55 to 3.80 s (SLASES7A): ours is heard later, the cautious side", () -> Speaking.repeatS(Priority.HIGH)),
            Check.fromMemory("repetition of a sound of medium priority", 16.25, 13.75, "s", "2.5 to 30 s; IEC 60601-1-8, from memory; a tone chip made for it offers 2.60 to 4.00 s (SLASES7A): ours is heard later, the cautious side", () -> Speaking.repeatS(Priority.MEDIUM)),
            Check.fromMemory("high-pressure limit to signal, obstruction", 0.25, 0.25, "s", "at most 0.5 s from crossing to signal; common practice after ISO 80601-2-12, from memory",
                    () -> Nights.CATALOGUE.read(Kinds.VENTILATOR, "example pneumatic").good().orElseThrow().alarms().stream().filter(a -> a.condition() == AlarmCondition.AIRWAY_PRESSURE_HIGH).findFirst().orElseThrow().generationDelayS()),
            Check.fromMemory("low-pressure alarm after a disconnection, two breaths", 6.5, 2.5, "s",
                    "4 to 9 s at 15 /min with a rule of two breaths and 1 s to the signal; worked example, from memory",
                    () -> Nights.one(Nights.SHORT, "disconnection at the patient").alarm().orElseThrow().afterS()));

    @ParameterizedTest(name = "{0}") @FieldSource("ROWS")
    void agreesWithPrint(Check row) { row.holds(); }

    private static double crossing(String text, String fault, ToDoubleFunction<Now> what, double below) {
        double[] found = {Double.NaN};
        double[] last = {Double.NaN, Double.NaN};
        run(text, fault, AT_S + 1500, new Sink() {
            @Override public void row(Now n) {
                double v = what.applyAsDouble(n);
                if (Double.isNaN(found[0]) && v < below && n.tS > AT_S) found[0] = last[0] + (last[1] - below) / (last[1] - v) * (n.tS - last[0]) - AT_S;
                last[0] = n.tS;
                last[1] = v;
            }

            @Override public boolean enough() { return !Double.isNaN(found[0]); }
        });
        return found[0];
    }

    /** How late the oximeter passes 90 % behind the blood. */
    private static double lagS(String text) { return crossing(text, "ventilator stops", n -> n.get(Column.SPO2), 0.90) - crossing(text, "ventilator stops", n -> n.get(Column.SAO2), 0.90); }

    private static double breathsWithCo2(String text) {
        int[] count = {0};
        run(text, "tube in the oesophagus", AT_S + 60, new Sink() {
            @Override public void row(Now n) { if (n.get(Column.AT_S) >= AT_S && n.get(Column.ETCO2_MMHG) >= 5) count[0]++; }
        });
        return count[0];
    }

    private static double endTidal(String text, String fault, double afterS) { return last(text, fault, afterS, Column.ETCO2_MMHG); }

    private static double driving(String text, String fault, double afterS) { return last(text, fault, afterS, Column.DRIVING_CMH2O); }

    private static double last(String text, String fault, double afterS, Column column) {
        double[] last = {Double.NaN};
        run(text, fault, AT_S + afterS, new Sink() {
            @Override public void row(Now n) { last[0] = n.get(column); }
        });
        return last[0];
    }

    private static double plateau(String text, String fault, double afterS) { return last(text, fault, afterS, Column.PLATEAU_CMH2O); }

    private static double peak(String text, String fault, double afterS) {
        double[] peak = {Double.NaN};
        run(text, fault, AT_S + afterS, new Sink() {
            @Override public void row(Now n) { peak[0] = n.get(Column.PEAK_CMH2O); }
        });
        return peak[0];
    }

    private static void run(String text, String name, double endS, Sink sink) {
        Transport t = Nights.read(text);
        Stage stage = Journeys.of(t, Nights.settings(t), Nights.NOISES).stage(new Draw(1, 0));
        Script script = stage.script().copy();
        Fault fault = Nights.fault(Nights.CATALOGUE, name);
        for (Effect e : fault.effects()) script.add(new Change(AT_S + e.afterS(), AT_S + e.forS(), e.rampS(), e.knob(), 0, e.how(), e.value()));
        if (name.equals("ventilator stops")) script.add(Change.at(AT_S, Knob.AIRWAY_CLOSED, leeway.core.run.How.SET, 1));
        Now n = stage.loop().begin(script);
        stage.loop().to(endS, n, script, sink);
    }
}
