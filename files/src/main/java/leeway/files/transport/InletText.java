package leeway.files.transport;

import java.util.List;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.files.keys.Forms;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;

/** {@code high pressure} or {@code flowmeter 10 L/min}. */
final class InletText {
    private static final double MOST_L_PER_MIN = 60;

    private InletText() { }

    static Forms.Parsed parse(String text) {
        if (text.equals("high pressure")) return Forms.Parsed.good(new TransportKeys.Inlet(true, 0));
        if (text.equals("flowmeter")) return Forms.Parsed.bad("a flowmeter without its flow", "Write for example \"flowmeter 10 L/min\".");
        if (text.startsWith("flowmeter ")) {
            String flow = text.substring("flowmeter ".length()).strip();
            var q = Quantity.parse(flow);
            if (q.isPresent() && Kind.FLOW.accepted().contains(q.get().unit())) {
                double lPerMin = q.get().in(Kind.FLOW.internal());
                if (lPerMin > 0 && lPerMin <= MOST_L_PER_MIN) return Forms.Parsed.good(new TransportKeys.Inlet(false, lPerMin));
                return Forms.Parsed.bad("%s is impossible: a flowmeter gives up to 60 L/min".formatted(Complaints.echo(flow)), "Look at the number and its unit.");
            }
            return Forms.Parsed.bad("%s is no flow".formatted(Complaints.echo(flow)), "Write for example \"flowmeter 10 L/min\".");
        }
        return Forms.Parsed.bad("there is no inlet %s".formatted(Complaints.echo(text)), "Write \"high pressure\", or for example \"flowmeter 10 L/min\".",
                Nearest.of(text, List.of("high pressure", "flowmeter 10 L/min")).toArray(String[]::new));
    }
}
