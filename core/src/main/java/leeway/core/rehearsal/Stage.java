package leeway.core.rehearsal;

import java.util.function.BooleanSupplier;
import leeway.core.alarm.Speaking;
import leeway.core.kit.Settings;
import leeway.core.run.Draw;
import leeway.core.run.Loop;
import leeway.core.run.Script;
import leeway.core.transport.Transport;

/**
 * A journey ready to be rehearsed in one draw of its uncertain world: parts, script of legs and events, and where the legs begin.
 * Serves one thread at a time.
 *
 * @param predictedKg weight that volumes go by
 * @param legStartS start of each leg and, last, the end of the journey; s
 */
public record Stage(Loop loop, Script script, Speaking speaking, Transport transport, Settings settings, double[] legStartS, Draw draw, Supplies supplies, double predictedKg) {
    /** Makes the stage of a draw; the same draw gives the same stage, whoever asks. */
    @FunctionalInterface
    public interface Voyage {
        Stage stage(Draw draw);

        /** The same voyage, whose runs stop soon after their answer is told to be unwanted; see {@link Loop#until}. */
        default Voyage until(BooleanSupplier unwanted) { return draw -> stage(draw).until(unwanted); }
    }

    /** The same stage, whose runs stop soon after their answer is told to be unwanted. */
    public Stage until(BooleanSupplier unwanted) { return new Stage(loop.until(unwanted), script, speaking, transport, settings, legStartS, draw, supplies, predictedKg); }

    int legs() { return legStartS.length - 1; }

    double legEndS(int leg) { return legStartS[leg + 1]; }

    KitFacts facts(int leg) { return new KitFacts(transport, settings, transport.legs().get(leg)); }
}
