package leeway.app.report;

import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import leeway.core.breath.Asynchrony;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Breathing.Own;
import leeway.core.rehearsal.Breathing.Row;
import leeway.core.rehearsal.Breathing.Said;
import leeway.core.rehearsal.LungRow;

/** The rows of a run as JSON: {@code breaths}, and the alarms that were heard. */
public final class BreatheJson {
    private BreatheJson() { }

    /** Runs to a time and writes. */
    public static void write(Breathing breathing, String title, double untilS, String version, long seed, OutputStream out) {
        List<Row> rows = new ArrayList<>();
        List<Said> said = new ArrayList<>();
        breathing.rows(untilS, new Breathing.Listener() {
            @Override public void row(Row row) { rows.add(row); }

            @Override public void said(Said alarm) { said.add(alarm); }
        });
        try (Json json = new Json(out)) {
            json.text("transport", title);
            json.text("version", version);
            json.count("seed", seed);
            rows.stream().filter(Row::beyondModel).findFirst().ifPresent(r -> json.number("beyondModelFromS", r.atS()));
            json.objects("breaths", rows, r -> row(json, r));
            json.objects("alarms", said, s -> {
                json.number("atS", s.atS());
                json.text("condition", s.limit().condition().words());
                json.text("from", s.limit().from().words());
                json.text("priority", s.limit().priority().name().toLowerCase(java.util.Locale.ROOT));
            });
        }
    }

    private static void row(Json json, Row r) {
        json.number("atS", r.atS());
        json.text("leg", r.leg());
        r.mandatory().ifPresent(m -> json.flag("mandatory", m));
        json.text("startedBy", r.startedBy());
        json.number("inspiredMl", r.inspiredMl());
        json.number("expiredMl", r.expiredMl());
        json.number("inspiredAtVentilatorMl", r.inspiredAtVentilatorMl());
        json.number("peakCmH2O", r.peakCmH2O());
        json.number("plateauCmH2O", r.plateauCmH2O());
        json.number("peepCmH2O", r.peepCmH2O());
        json.number("autoPeepCmH2O", r.autoPeepCmH2O());
        json.number("drivingCmH2O", r.drivingCmH2O());
        json.number("meanCmH2O", r.meanCmH2O());
        json.number("transpulmonaryCmH2O", r.transpulmonaryCmH2O());
        json.number("mechanicalEnergyJ", r.mechanicalEnergyJ());
        json.number("fio2", r.fio2());
        json.number("etco2MmHg", r.etco2MmHg());
        json.number("inspiredCo2MmHg", r.inspiredCo2MmHg());
        json.number("paco2MmHg", r.paco2MmHg());
        json.number("pao2MmHg", r.pao2MmHg());
        json.number("sao2", r.sao2());
        json.number("spo2", r.spo2());
        json.number("ph", r.ph());
        json.number("oxygenDrawLPerMin", r.oxygenDrawLPerMin());
        json.number("loadW", r.loadW());
        if (r.missedEfforts() > 0) json.count("missedEfforts", r.missedEfforts());
        Own own = r.own();
        json.number("inspiratoryTimeS", own.inspiratoryTimeS());
        json.number("triggerDelayS", own.triggerDelayS());
        json.number("workOfBreathingJ", own.workJ());
        json.number("workOfBreathingJPerL", own.workJPerL());
        json.number("pressureTimeProductCmH2OS", own.pressureTimeCmH2OS());
        json.number("p01CmH2O", own.p01CmH2O());
        json.number("patientShare", own.patientShare());
        json.text("inspiredBy", own.inspiredBy());
        if (!own.asynchrony().isEmpty()) json.texts("asynchrony", own.asynchrony().stream().map(Asynchrony::words).toList());
        if (own.volumeNotReached()) json.flag("volumeNotReached", true);
        if (own.pressureLimited()) json.flag("pressureLimited", true);
        if (own.sigh()) json.flag("sigh", true);
        if (own.coughs() > 0) json.count("coughs", own.coughs());
        r.energy().ifPresent(e -> {
            json.number("muscleEnergyJ", e.musclesJ());
            json.number("elasticEnergyJ", e.elasticJ());
            json.number("resistiveEnergyJ", e.resistiveJ());
            json.number("peepEnergyJ", e.peepJ());
        });
        r.lungs().ifPresent(l -> lungs(json, l));
    }

    /** Right and left lung where they are apart, else fast and slow part; {@code first} and {@code second} say which. */
    private static void lungs(Json json, LungRow l) {
        json.object("lungs", () -> {
            json.number("openShare", l.openShare());
            json.number("shuntAdded", l.shuntAdded());
            l.parts().ifPresent(p -> {
                json.text("first", p.first().name());
                json.text("second", p.second().name());
                json.number("firstTidalMl", p.first().tidalMl());
                json.number("secondTidalMl", p.second().tidalMl());
                json.number("firstShare", p.firstShare());
                json.number("firstEndMl", p.first().endMl());
                json.number("secondEndMl", p.second().endMl());
                json.number("firstPlateauCmH2O", p.first().plateauCmH2O());
                json.number("secondPlateauCmH2O", p.second().plateauCmH2O());
                json.number("firstPeepCmH2O", p.first().peepCmH2O());
                json.number("secondPeepCmH2O", p.second().peepCmH2O());
            });
            json.number("pleuralGasMl", l.pleuralGasMl());
        });
    }
}
