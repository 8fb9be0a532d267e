package leeway.core.plan;

import java.util.ArrayList;
import java.util.List;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Airway;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Transport;

/** The patient and the kit in a line each. */
final class WhoAndWhat {
    private WhoAndWhat() { }

    static Plan.Patient of(Transport t, Ventilated v) {
        PatientEntry e = t.patient();
        var p = v.patient();
        List<String> parts = new ArrayList<>();
        boolean female = e.sex() == PatientEntry.Sex.FEMALE;
        String who = t.illness().testLung() ? "test lung" : p.adult() ? female ? "woman" : "man" : p.ageYears() < 1 ? female ? "infant girl" : "infant boy" : female ? "girl" : "boy";
        parts.add(who + (e.ageYears().isPresent() && !t.illness().testLung() ? " of " + age(e.ageYears().getAsDouble()) : ""));
        e.heightCm().ifPresent(h -> parts.add(Words.n(h, 0) + " cm" + (e.heightEstimated() ? " (estimated)" : "")));
        e.weightKg().ifPresent(w -> parts.add(Words.n(w, w < 10 ? 1 : 0) + " kg"));
        boolean openMask = t.ventilator().alone() && t.airway().type() == Airway.Type.FACE_MASK;
        String through = openMask ? "" : (t.filter().name().equals("none") ? "no filter" : t.filter().name()) + ", ";
        String kit = String.join(", ", t.ventilator().name(), (t.ventilator().alone() ? "" : t.circuit().name() + ", ") + through + t.airway().name(),
                t.monitor().name().equals("none") ? "no monitor" : t.monitor().name());
        return new Plan.Patient(Expected.known(p.predictedKg()), String.join(", ", parts) + (t.illness().testLung() ? "" : "; " + t.illness().name()), kit);
    }

    private static String age(double years) {
        if (years >= 2) return Words.n(Math.floor(years), 0) + " years";
        double months = years * 12;
        return months >= 2 ? Words.n(Math.floor(months), 0) + " months" : Words.n(Math.rint(years * 365.25), 0) + " days";
    }
}
