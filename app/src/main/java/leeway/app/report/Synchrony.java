package leeway.app.report;

import java.io.PrintStream;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import leeway.core.breath.Asynchrony;
import leeway.core.rehearsal.Breathing.Row;

/** Who started the breaths of a run, and where patient and ventilator missed each other: a few lines under the rows. */
final class Synchrony {
    private final Map<String, Integer> by = new TreeMap<>();
    private final Map<Asynchrony, Integer> missed = new EnumMap<>(Asynchrony.class);
    private double workJ;
    private double litres;
    private double seconds;
    private double lastS = Double.NaN;

    void add(Row r) {
        r.startedBy().ifPresent(who -> by.merge(who, 1, Integer::sum));
        r.own().asynchrony().forEach(a -> missed.merge(a, a == Asynchrony.INEFFECTIVE ? Math.max(1, r.missedEfforts()) : 1, Integer::sum));
        workJ += r.own().workJ().orElse(0);
        litres += r.inspiredMl() / 1000;
        if (!Double.isNaN(lastS)) seconds += r.atS() - lastS;
        lastS = r.atS();
    }

    void write(PrintStream out) {
        int others = by.entrySet().stream().filter(e -> !e.getKey().equals("clock")).mapToInt(Map.Entry::getValue).sum();
        if (others == 0 && missed.isEmpty()) return;
        StringBuilder line = new StringBuilder("\nBreaths started by");
        by.forEach((who, count) -> line.append(line.charAt(line.length() - 1) == 'y' ? " " : ", ").append(who).append(' ').append(count));
        out.print(line.append(" (p patient, ? nobody, b backup).\n"));
        if (!missed.isEmpty()) {
            StringBuilder what = new StringBuilder();
            missed.forEach((a, count) -> what.append(what.length() == 0 ? "Patient and ventilator: " : ", ").append(a.words()).append(' ').append(count));
            for (String part : TextPage.wrap(what.append('.').toString(), 80)) out.print(part + "\n");
        }
        if (workJ > 0 && litres > 0 && seconds > 0) {
            out.print(String.format(Locale.ROOT, "Work of breathing %.2f J/L, %.1f J/min; acceptable 0.2 to 0.9 J/L, 2.4 to 7.5 J/min.\n", workJ / litres, workJ / seconds * 60));
        }
    }
}
