package leeway.app.report;

import java.util.ArrayList;
import java.util.List;
import leeway.core.rehearsal.Trace;
import leeway.core.rehearsal.Trace.Said;
import leeway.core.rehearsal.Trace.What;

/** The time line of one rehearsal for a terminal: what is true beside what each device shows, and the alarms as they come. */
final class TraceText {
    /** Rows at most, alarms not counted. */
    private static final int ROWS = 24;

    private TraceText() { }

    static void add(TextPage page, Trace trace) {
        if (trace.rows().isEmpty()) return;
        page.heading("Truth, and what the devices show", "nobody acts; s from the fault");
        List<List<String>> table = new ArrayList<>();
        double fromS = trace.rows().get(0).tS(), toS = trace.rows().get(trace.rows().size() - 1).tS(), stepS = (toS - fromS) / ROWS, nextS = fromS;
        int said = 0;
        for (Trace.Row r : trace.rows()) {
            for (; said < trace.said().size() && trace.said().get(said).tS() <= r.tS(); said++) said(trace, said, table);
            if (r.tS() < nextS - 1e-9) continue;
            nextS = Math.max(nextS + stepS, r.tS());
            double spo2 = first(r.monitor().spo2(), r.ventilator().spo2()), etco2 = first(r.monitor().etco2MmHg(), r.ventilator().etco2MmHg());
            table.add(List.of(n(r.tS(), 0), n(100 * r.sao2(), 1), n(100 * spo2, 0), n(r.paco2MmHg(), 0), n(etco2, 0), n(r.expiredMl(), 0), n(r.ventilator().expiredMl(), 0),
                    n(r.peakCmH2O(), 0), n(r.ventilator().peakCmH2O(), 0), ""));
        }
        for (; said < trace.said().size(); said++) said(trace, said, table);
        page.table(List.of("s", "SaO2", "SpO2", "PaCO2", "etCO2", "out", "shown", "peak", "shown", ""), table);
        page.paragraph("SaO2, PaCO2, \"out\" (expired mL) and \"peak\" (cmH2O) are true; what stands right of each is shown. A dash: no such sensor, or nothing to show.");
    }

    /** A signal that is heard as it comes is one line. */
    private static void said(Trace trace, int i, List<List<String>> table) {
        Said s = trace.said().get(i);
        boolean heardAtOnce = s.what() == What.SIGNAL && trace.said().stream().anyMatch(o -> o.what() == What.HEARD && o.limit() == s.limit() && o.tS() - s.tS() < 0.5 && o.tS() >= s.tS());
        if (!heardAtOnce) table.add(alarm(s));
    }

    private static List<String> alarm(Said s) {
        String what = switch (s.what()) {
            case SIGNAL -> "not yet heard";
            case HEARD -> "heard";
            case OVER -> "over";
        };
        return List.of(n(s.tS(), 0), "", "", "", "", "", "", "", "", what + ": " + s.limit().condition().words() + ", " + s.limit().from().words());
    }

    private static double first(double a, double b) { return Double.isNaN(a) ? b : a; }

    private static String n(double v, int digits) {
        return Double.isNaN(v) ? "–" : Decimals.fixed(v, digits);
    }
}
