package leeway.app.report;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Breathing.Row;
import leeway.core.rehearsal.Breathing.Said;
import leeway.core.rehearsal.LungRow;

/** The rows of a run as text of 80 columns, and as CSV. */
public final class BreatheText {
    private static final double KPA_PER_MMHG = 0.133322;
    /** From line to line about the lung its open share, or the gas in the pleura, has changed by this. */
    private static final double WORTH_SHARE = 0.05, WORTH_ML = 250;

    private BreatheText() { }

    /** Writes rows as they come, those that read alike once, with the alarms that are heard between them. */
    public static void write(Breathing breathing, String title, double untilS, boolean kPa, PrintStream out) {
        out.print(title + "\n");
        out.print(PlanText.CAUTION + "\n");
        out.print("The virtual patient at medians; pressures in cmH2O, gas tensions in " + (kPa ? "kPa" : "mmHg") + ".\n");
        Synchrony synchrony = new Synchrony();
        var lines = new Breathing.Listener() {
            private String leg = "";
            private boolean beyond;
            private boolean first = true;
            private boolean blocked;
            private double open;
            private double gasMl;
            private double share;
            private String like = "";
            private int folded;
            private double lastS;
            private String last = "";

            /** Breaths that read as the one above them are counted, not printed. */
            void unfold() {
                if (folded == 1) out.print(last);
                if (folded > 1) out.print("%8s  the last of %d more like it\n".formatted(time(lastS), folded));
                folded = 0;
            }

            @Override public void row(Row r) {
                synchrony.add(r);
                String line = line(r, kPa);
                String shown = line.substring(time(r.atS()).length());
                boolean same = shown.equals(like) && r.leg().equals(leg);
                if (same) {
                    folded++;
                    lastS = r.atS();
                    last = line;
                } else {
                    unfold();
                    like = shown;
                }
                if (!r.leg().equals(leg)) {
                    leg = r.leg();
                    out.print("\n" + leg + "\n");
                    out.print("    time   in  out  peak plat PEEP mean FiO2 etCO2 PaCO2  PaO2  SaO2  SpO2   pH\n");
                    out.print("   h:m:s   mL   mL                       %                       %     %\n");
                }
                if (!beyond && r.beyondModel()) {
                    unfold();
                    beyond = true;
                    out.print("%8s  beyond the model: SaO2 below 50 %%; no heart goes on so for long. What\n          follows says only that harm came earlier.\n".formatted(time(r.atS())));
                }
                if (!same) out.print(line);
                r.lungs().ifPresent(l -> lungs(r.atS(), l));
            }

            /** A line where a lung of several parts has changed enough to be worth one. */
            private void lungs(double atS, LungRow l) {
                boolean moved = first || Math.abs(l.openShare().orElse(0) - open) >= WORTH_SHARE || Math.abs(l.pleuralGasMl().orElse(0) - gasMl) >= WORTH_ML
                        || l.parts().isPresent() && (noneIn(l.parts().get().second()) != blocked || Math.abs(l.parts().get().firstShare().orElse(share) - share) >= WORTH_SHARE);
                if (!moved) return;
                unfold();
                first = false;
                open = l.openShare().orElse(0);
                gasMl = l.pleuralGasMl().orElse(0);
                blocked = l.parts().isPresent() && noneIn(l.parts().get().second());
                share = l.parts().map(p -> p.firstShare().orElse(share)).orElse(share);
                out.print("%8s  lung:%s\n".formatted(time(atS), lungWords(l)));
            }

            @Override public void said(Said s) {
                unfold();
                out.print("%8s  heard: %s (%s)%n".formatted(time(s.atS()), s.limit().condition().words(), s.limit().from().words()).replace("\r\n", "\n"));
            }
        };
        breathing.rows(untilS, lines);
        lines.unfold();
        synchrony.write(out);
    }

    private static boolean noneIn(LungRow.Part part) { return part.tidalMl() < 1; }

    /** " 66 % of what can open is open, shunt +2 %; right 210 mL (60 %), 12.5 cmH2O full, 5.2 emptied; left 140 mL (40 %), …; 500 mL of gas in the pleura". */
    private static String lungWords(LungRow l) {
        StringBuilder words = new StringBuilder();
        l.openShare().ifPresent(s -> words.append(String.format(Locale.ROOT, " %.0f %% of what can open is open", 100 * s)));
        l.shuntAdded().ifPresent(s -> words.append(String.format(Locale.ROOT, ", shunt %s%.0f %%", Math.round(100 * s) > 0 ? "+" : Math.round(100 * s) < 0 ? "-" : "", Math.abs(100 * s))));
        l.parts().ifPresent(p -> {
            OptionalDouble first = p.firstShare();
            words.append(words.isEmpty() ? " " : ";\n          ").append(into(p.first(), first)).append(";\n          ").append(into(p.second(), first.isEmpty() ? first : OptionalDouble.of(1 - first.getAsDouble())));
        });
        l.pleuralGasMl().ifPresent(g -> words.append(words.isEmpty() ? " " : "; ").append(String.format(Locale.ROOT, "%.0f mL of gas in the pleura", g)));
        return words.toString();
    }

    /** "right 210 mL (60 %), 18.2 cmH2O full, 5.0 emptied": what went in, and the pressure in it at the end of the inflation and of the breath. */
    private static String into(LungRow.Part p, OptionalDouble share) {
        return String.format(Locale.ROOT, "%s %d mL%s, %.1f cmH2O full, %.1f emptied", p.name(), Math.round(p.tidalMl()), share.isEmpty() ? "" : String.format(Locale.ROOT, " (%d %%)", Math.round(100 * share.getAsDouble())),
                p.plateauCmH2O() + 0.0, p.peepCmH2O() + 0.0);
    }

    private static String line(Row r, boolean kPa) {
        String start = r.mandatory().isEmpty() ? "-" : r.startedBy().map(s -> s.equals("patient") ? "p" : s.equals("nobody") ? "?" : s.equals("backup") ? "b" : " ").orElse(" ");
        return time(r.atS()) + start + whole(r.inspiredMl(), 5) + whole(r.expiredMl(), 5) + num(r.peakCmH2O(), 1, 6, 1) + num(r.plateauCmH2O(), 1, 5, 1) + num(r.peepCmH2O(), 1, 5, 1)
                + num(r.meanCmH2O(), 1, 5, 1) + num(r.fio2(), 100, 5, 0) + gas(r.etco2MmHg(), kPa, 6) + gas(r.paco2MmHg(), kPa, 6) + gas(r.pao2MmHg(), kPa, 6)
                + num(r.sao2(), 100, 6, 1) + num(r.spo2(), 100, 6, 1) + num(r.ph(), 1, 5, 2) + "\n";
    }

    private static String gas(OptionalDouble mmHg, boolean kPa, int width) { return kPa ? num(mmHg, KPA_PER_MMHG, width, 1) : num(mmHg, 1, width, 0); }

    private static String num(OptionalDouble value, double times, int width, int decimals) {
        if (value.isEmpty()) return " ".repeat(width);
        double v = value.getAsDouble() * times;
        String text = Decimals.fixed(v, decimals);
        return " ".repeat(Math.max(1, width - text.length())) + text;
    }

    private static String whole(double value, int width) { return num(OptionalDouble.of(value), 1, width, 0); }

    private static String time(double s) {
        long whole = (long) Math.floor(s + 1e-9);
        return String.format(Locale.ROOT, "%2d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
    }

    /** Rows as CSV: units in the head, what is absent is empty; columns of each lung only where there are two, of opening lung only where it opens. */
    public static void csv(Breathing breathing, double untilS, PrintWriter out) {
        Optional<LungRow.Names> two = breathing.lungs();
        out.print("time [s],leg,mandatory,started by,inspired [mL],expired [mL],inspired at ventilator [mL],peak [cmH2O],plateau [cmH2O],PEEP [cmH2O],mean [cmH2O],"
                + "FiO2 [1],end-tidal CO2 [mmHg],PaCO2 [mmHg],PaO2 [mmHg],SaO2 [1],SpO2 [1],pH [1],trigger delay [s],missed efforts,work of breathing [J],"
                + "pressure-time product [cmH2O.s],P0.1 [cmH2O],patient's share [1],inspired by,asynchrony,energy of the inflation [J],by the muscles [J],elastic [J],resistive [J],against PEEP [J],"
                + "open share [1],shunt added [1],gas in the pleura [mL]");
        two.ifPresent(n -> {
            for (String part : List.of(n.first(), n.second())) {
                out.print(",%1$s inspired [mL],%1$s share [1],%1$s held at the end [mL],%1$s plateau [cmH2O],%1$s PEEP [cmH2O]".formatted(part));
            }
        });
        out.print("\n");
        breathing.rows(untilS, r -> out.print(String.join(",", cells(r, two.isPresent())) + "\n"));
        out.flush();
    }

    private static List<String> cells(Row r, boolean two) {
        Breathing.Own own = r.own();
        List<String> c = new ArrayList<>(List.of(cell("atS", r.atS()), quoted(r.leg()), r.mandatory().map(m -> m ? "yes" : "no").orElse(""), r.startedBy().orElse(""),
                cell("Ml", r.inspiredMl()), cell("Ml", r.expiredMl()), cell("Ml", r.inspiredAtVentilatorMl()), cell("CmH2O", r.peakCmH2O()), cell("CmH2O", r.plateauCmH2O()),
                cell("CmH2O", r.peepCmH2O()), cell("CmH2O", r.meanCmH2O()), cell("fio2", r.fio2()), cell("MmHg", r.etco2MmHg()), cell("MmHg", r.paco2MmHg()), cell("MmHg", r.pao2MmHg()),
                cell("sao2", r.sao2()), cell("spo2", r.spo2()), cell("ph", r.ph()), cell("S", own.triggerDelayS()), Integer.toString(r.missedEfforts()), cell("", own.workJ()),
                cell("S", own.pressureTimeCmH2OS()), cell("CmH2O", own.p01CmH2O()), cell("", own.patientShare()), own.inspiredBy().orElse(""),
                quoted(String.join(", ", own.asynchrony().stream().map(a -> a.words()).toList()))));
        c.addAll(r.energy().map(e -> List.of(cell("J", e.ventilatorJ()), cell("J", e.musclesJ()), cell("J", e.elasticJ()), cell("J", e.resistiveJ()), cell("J", e.peepJ())))
                .orElse(List.of("", "", "", "", "")));
        Optional<LungRow> lungs = r.lungs();
        c.addAll(lungs.map(l -> List.of(cell("", l.openShare()), cell("", l.shuntAdded()), cell("Ml", l.pleuralGasMl()))).orElse(List.of("", "", "")));
        if (two) {
            Optional<LungRow.Parts> parts = lungs.flatMap(LungRow::parts);
            OptionalDouble share = parts.map(LungRow.Parts::firstShare).orElse(OptionalDouble.empty());
            c.addAll(parts.map(p -> part(p.first(), share)).orElse(NO_PART));
            c.addAll(parts.map(p -> part(p.second(), share.isEmpty() ? share : OptionalDouble.of(1 - share.getAsDouble()))).orElse(NO_PART));
        }
        return c;
    }

    private static final List<String> NO_PART = List.of("", "", "", "", "");

    private static List<String> part(LungRow.Part p, OptionalDouble share) {
        return List.of(cell("Ml", p.tidalMl()), cell("", share), cell("Ml", p.endMl()), cell("CmH2O", p.plateauCmH2O()), cell("CmH2O", p.peepCmH2O()));
    }

    private static String cell(String key, double value) { return Digits.json(key, value); }

    private static String cell(String key, OptionalDouble value) { return value.isEmpty() ? "" : Digits.json(key, value.getAsDouble()); }

    private static String quoted(String text) { return text.matches(".*[\",\n].*") ? "\"" + text.replace("\"", "\"\"") + "\"" : text; }
}
