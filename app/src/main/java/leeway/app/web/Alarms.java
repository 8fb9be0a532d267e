package leeway.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import leeway.core.rehearsal.Trace;
import leeway.core.rehearsal.Trace.Said;
import leeway.core.rehearsal.Trace.What;

/** What the alarms did until a moment, an alarm a line: when its signal began, or that it was there before the fault; when somebody heard it, when it was over. */
public final class Alarms {
    /** Nobody tells two moments apart that lie closer. */
    private static final double AT_ONCE_S = 1;

    private Alarms() { }

    /** @param changedS when this line said something new last, from the fault; negative: before it */
    public record Line(String text, double changedS) { }

    static List<Line> until(Words words, Trace trace, double untilS) {
        List<Line> out = new ArrayList<>();
        List<Said> said = trace.said().stream().filter(s -> s.tS() <= untilS).toList();
        for (int i = 0; i < said.size(); i++) {
            Said s = said.get(i);
            if (s.what() == What.SIGNAL && (s.tS() >= 0 || lasts(s, said.subList(i + 1, said.size())))) out.add(line(words, s, said.subList(i + 1, said.size())));
        }
        return out;
    }

    /** Whether a signal from before the fault is still there when it strikes. */
    private static boolean lasts(Said signal, List<Said> later) {
        return later.stream().filter(s -> s.tS() < 0).noneMatch(s -> s.limit().equals(signal.limit()) && s.what() != What.HEARD);
    }

    private static Line line(Words words, Said signal, List<Said> later) {
        double changedS = signal.tS();
        double heardS = Double.NaN;
        double overS = Double.NaN;
        for (Said s : later) {
            if (!s.limit().equals(signal.limit())) continue;
            if (s.what() == What.SIGNAL) break;
            changedS = s.tS();
            if (s.what() == What.HEARD && Double.isNaN(heardS)) heardS = s.tS();
            if (s.what() == What.OVER) {
                overS = s.tS();
                break;
            }
        }
        String heard = Double.isNaN(heardS) ? words.say("lesson.unheard") : heardS < 0 || heardS - signal.tS() < AT_ONCE_S ? words.say("lesson.heard") : words.say("lesson.heardAt", TracePicture.clock(heardS));
        String called = words.name("alarm", signal.limit().condition().words());
        String from = words.say(signal.limit().from().words().equals("monitor") ? "trace.monitor" : "trace.ventilator");
        String priority = words.name("priority", signal.limit().priority().name().toLowerCase(Locale.ROOT));
        String text = signal.tS() < 0 ? words.say("lesson.before", called, from, priority, heard) : words.say("lesson.alarm", TracePicture.clock(signal.tS()), called, from, priority, heard);
        return new Line(Double.isNaN(overS) ? text : text + words.say("lesson.over", TracePicture.clock(overS)), changedS);
    }
}
