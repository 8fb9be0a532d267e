package leeway.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import leeway.core.rehearsal.Trace;
import leeway.core.rehearsal.Trace.Said;
import leeway.core.rehearsal.Trace.What;

/** What the alarms did until a moment, an alarm a line: when its signal began, when somebody heard it, when it was over. */
public final class Alarms {
    /** Nobody tells two moments apart that lie closer. */
    private static final double AT_ONCE_S = 1;

    private Alarms() { }

    /** @param changedS when this line said something new last, after the fault */
    public record Line(String text, double changedS) { }

    static List<Line> until(Words words, Trace trace, double untilS) {
        List<Line> out = new ArrayList<>();
        List<Said> said = trace.said().stream().filter(s -> s.tS() >= 0 && s.tS() <= untilS).toList();
        for (int i = 0; i < said.size(); i++) {
            Said s = said.get(i);
            if (s.what() == What.SIGNAL) out.add(line(words, s, said.subList(i + 1, said.size())));
        }
        return out;
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
        String heard = Double.isNaN(heardS) ? words.say("lesson.unheard") : heardS - signal.tS() < AT_ONCE_S ? words.say("lesson.heard") : words.say("lesson.heardAt", TracePicture.clock(heardS));
        String text = words.say("lesson.alarm", TracePicture.clock(signal.tS()), words.name("alarm", signal.limit().condition().words()), words.say(signal.limit().from().words().equals("monitor") ? "trace.monitor" : "trace.ventilator"),
                words.name("priority", signal.limit().priority().name().toLowerCase(Locale.ROOT)), heard);
        return new Line(Double.isNaN(overS) ? text : text + words.say("lesson.over", TracePicture.clock(overS)), changedS);
    }
}
