package leeway.core.body;

import java.util.ArrayList;
import java.util.List;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.Mechanics;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/** A patient on a real breath part, run for a while: rows of time, gases. */
final class Run {
    final PatientModel patient;
    final Script script = new Script();
    final GasExchange gas;
    final Loop loop;
    final SteadyGases steady;
    final List<double[]> rows = new ArrayList<>();
    Now now;

    Run(PatientModel patient, double tidalMl, double rate, double peep, double fio2) {
        this(patient, tidalMl, rate, peep, fio2, 760);
    }

    Run(PatientModel patient, double tidalMl, double rate, double peep, double fio2, double barometerMmHg) {
        this(patient, tidalMl, rate, peep, fio2, barometerMmHg, 10);
    }

    Run(PatientModel patient, double tidalMl, double rate, double peep, double fio2, double barometerMmHg, double longestS) {
        this.patient = patient;
        Mechanics mechanics = Mechanics.linear(patient.resistanceCmH2OSPerL(), patient.complianceMlPerCmH2O());
        BreathSettings settings = BreathSettings.volume(tidalMl, rate, 20 / rate, 0, peep);
        Breath.base(script, mechanics, settings).base(Knob.FIO2_SET, fio2).base(Knob.BAROMETER, barometerMmHg);
        GasExchange.base(script, patient);
        Ventilation first = new Ventilation(tidalMl, rate, fio2, barometerMmHg, 0);
        steady = SteadyGases.of(patient, first);
        gas = new GasExchange(patient, first, false, longestS);
        loop = new Loop(List.of(new Breath(mechanics, DeviceLimits.strong()), gas));
        now = loop.begin(script);
    }

    Run change(double atS, Knob knob, double value) {
        script.add(Change.at(atS, knob, How.SET, value));
        return this;
    }

    Run change(double atS, double untilS, Knob knob, double value) {
        script.add(Change.during(atS, untilS, knob, How.SET, value));
        return this;
    }

    /** Runs on to this time; rows hold time, PaCO2, PaO2, SaO2, pH, etCO2, uptake, output, FiO2, alveolar PO2. */
    Run to(double endS) {
        loop.to(endS, now, script, new Sink() {
            @Override public void row(Now n) {
                rows.add(new double[] {n.tS, n.get(Column.PACO2_MMHG), n.get(Column.PAO2_MMHG), n.get(Column.SAO2), n.get(Column.PH), n.get(Column.ETCO2_MMHG),
                    n.get(Column.OXYGEN_UPTAKE_ML), n.get(Column.CO2_OUTPUT_ML), n.get(Column.FIO2), n.get(Column.PALVO2_MMHG), gas.mixedVenousSaturation(n)});
            }
        });
        return this;
    }

    double[] last() {
        return rows.get(rows.size() - 1);
    }

    /** Value of a column at a time, by the last row before it. */
    double at(double tS, int column) {
        double[] found = rows.get(0);
        for (double[] row : rows) if (row[0] <= tS + 1e-9) found = row;
        return found[column];
    }

    /** When saturation first falls to this, s; infinity for never. */
    double whenSaturation(double share) {
        for (int i = 1; i < rows.size(); i++) {
            if (rows.get(i)[3] <= share) {
                double[] a = rows.get(i - 1), b = rows.get(i);
                return a[0] + (b[0] - a[0]) * (a[3] - share) / (a[3] - b[3]);
            }
        }
        return Double.POSITIVE_INFINITY;
    }
}
