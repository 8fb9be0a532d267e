package leeway.app.report;

import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.rehearse.Rehearsals;
import leeway.core.rehearsal.Harm;
import leeway.core.rehearsal.Nuisance;
import leeway.core.rehearsal.Pair;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearsal.ByLeg;
import leeway.core.rehearsal.Rehearsal.Spoken;
import leeway.core.rehearsal.Trace;

/** Rehearsals as JSON, in the keys of the contract. */
public final class RehearsalJson {
    private RehearsalJson() { }

    /** The list {@code rehearsals}. */
    public static void write(Json json, List<Rehearsal> rehearsals) {
        json.objects("rehearsals", rehearsals, r -> row(json, r));
    }

    /** The whole answer of {@code rehearse}. */
    public static void write(Rehearsals all, String version, long seed, OutputStream to) {
        try (Json json = new Json(to)) {
            json.text("transport", all.title());
            json.text("version", version);
            json.count("seed", seed);
            json.text("protocol", RehearsalText.PROTOCOL);
            all.suppliesEndS().ifPresent(s -> json.number("suppliesEndMin", s / 60));
            write(json, all.rows());
            if (all.rows().stream().anyMatch(r -> r.margins().isPresent())) nuisance(json, all.nuisance());
            all.pairs().ifPresent(p -> pairs(json, p));
            if (!all.whatIf().isEmpty()) json.objects("whatIf", all.whatIf(), r -> row(json, r));
            all.trace().ifPresent(t -> trace(json, t));
        }
    }

    private static void trace(Json json, Trace t) {
        json.object("timeLine", () -> {
            json.objects("rows", t.rows(), r -> {
                json.number("afterS", r.tS());
                known(json, "sao2", r.sao2());
                known(json, "paco2MmHg", r.paco2MmHg());
                known(json, "expiredMl", r.expiredMl());
                known(json, "peakCmH2O", r.peakCmH2O());
                json.object("ventilatorShows", () -> shown(json, r.ventilator()));
                json.object("monitorShows", () -> shown(json, r.monitor()));
            });
            json.objects("alarms", t.said(), s -> {
                json.number("afterS", s.tS());
                json.text("condition", s.limit().condition().words());
                json.text("from", s.limit().from().words());
                json.text("what", s.what().name().toLowerCase(Locale.ROOT));
            });
        });
    }

    private static void shown(Json json, Trace.Shown s) {
        known(json, "spo2", s.spo2());
        known(json, "etco2MmHg", s.etco2MmHg());
        known(json, "expiredMl", s.expiredMl());
        known(json, "peakCmH2O", s.peakCmH2O());
    }

    private static void known(Json json, String key, double value) { if (Double.isFinite(value)) json.number(key, value); }

    private static void row(Json json, Rehearsal r) {
        json.text("fault", r.fault().name());
        r.leg().ifPresent(m -> {
            json.number("atMin", m.atMin());
            json.text("leg", m.name());
        });
        json.text("group", r.fault().group().words());
        json.text("firstSign", r.fault().firstSign());
        json.text("coverage", r.coverage().words());
        r.covered().ifPresent(c -> json.flag("covered", c));
        spoken(json, "alarm", r.alarm());
        spoken(json, "lateAlarm", r.lateAlarm());
        harm(json, r.harm());
        r.near().ifPresent(n -> json.object("near", () -> {
            json.text("measure", n.measure().words());
            json.number("value", n.value());
            json.text("unit", n.measure().unit());
        }));
        json.number("rescueByS", r.rescueByS());
        json.number("crewTimeS", r.crewTimeS());
        json.text("crewTimeSource", r.fault().crew().source());
        json.number("marginS", r.marginS());
        r.margins().ifPresent(m -> {
            json.number("marginP50S", m.p50S());
            json.number("marginP05S", m.p05S());
            json.count("draws", m.draws());
            json.number("uncoveredShare", m.uncoveredShare());
            json.number("noHarmShare", m.noHarmShare());
        });
        json.text("priority", r.fault().priority().name().toLowerCase(Locale.ROOT));
        json.texts("do", r.fault().steps());
        json.text("why", r.why());
        if (!r.byLeg().isEmpty()) json.objects("byLeg", r.byLeg(), l -> leg(json, l));
    }

    private static void leg(Json json, ByLeg l) {
        json.text("leg", l.leg().name());
        json.number("atMin", l.leg().atMin());
        json.text("coverage", l.coverage().words());
        spoken(json, "alarm", l.alarm());
        harm(json, l.harm());
        json.number("rescueByS", l.rescueByS());
        json.number("marginS", l.marginS());
    }

    private static void spoken(Json json, String key, Optional<Spoken> spoken) {
        spoken.ifPresent(s -> json.object(key, () -> {
            json.text("condition", s.condition().words());
            json.text("from", s.from().words());
            json.number("afterS", s.afterS());
            json.text("priority", s.priority().name().toLowerCase(Locale.ROOT));
        }));
    }

    private static void harm(Json json, Optional<Harm> harm) {
        harm.ifPresent(h -> json.object("harm", () -> {
            json.text("measure", h.measure().words());
            json.number("threshold", h.threshold());
            json.text("unit", h.unit());
            json.number("afterS", h.afterS());
        }));
    }

    /** How often each condition is heard an hour without a fault. */
    public static void nuisance(Json json, List<Nuisance> nuisance) {
        json.objects("nuisance", nuisance, n -> {
            json.text("condition", n.limit().condition().words());
            json.text("from", n.limit().from().words());
            json.number("perHour", n.perHour());
        });
    }

    /** Pairs of faults that are uncovered together though each alone is covered. */
    public static void pairs(Json json, List<Pair> pairs) {
        json.objects("pairs", pairs, p -> {
            json.texts("faults", List.of(p.first(), p.second()));
            json.text("coverage", p.coverage().words());
            json.number("marginS", p.marginS());
            json.text("why", p.why());
        });
    }

    /** The margin as text: "59 s", "−31 s"; empty where there is none. */
    static String margin(OptionalDouble marginS) { return marginS.isPresent() ? Figures.seconds(marginS.getAsDouble()) : ""; }
}
