package leeway.core.settings;

import java.util.List;
import java.util.Optional;
import leeway.core.kit.Mode;

/** The mode of a device that comes nearest to one that it does not have, and what is different. */
public final class NearestMode {
    private NearestMode() { }

    /** The device's mode nearest to the wish: first what an inflation holds to, then who may start it. Empty where it has none. */
    public static Optional<Mode> of(Mode wish, List<Mode> has) {
        Mode best = null;
        for (Mode mode : has) if (best == null || distance(wish, mode) < distance(wish, best)) best = mode;
        return Optional.ofNullable(best);
    }

    private static int distance(Mode a, Mode b) {
        return 10 * control(a.control(), b.control()) + 3 * Math.abs(freedom(a) - freedom(b)) + (a.supported() == b.supported() ? 0 : 1);
    }

    private static int control(Mode.Control a, Mode.Control b) {
        if (a == b) return 0;
        if (a == Mode.Control.SUPPORT || b == Mode.Control.SUPPORT) return 4;
        boolean volumeKept = a != Mode.Control.PRESSURE && b != Mode.Control.PRESSURE;
        boolean pressureKept = a != Mode.Control.VOLUME && b != Mode.Control.VOLUME;
        return volumeKept ? 1 : pressureKept ? 2 : 3;
    }

    private static int freedom(Mode mode) {
        return switch (mode.sequence()) {
            case MANDATORY -> 0;
            case ASSIST_CONTROL -> 1;
            case INTERMITTENT_MANDATORY -> 2;
            case SPONTANEOUS -> 4;
        };
    }

    /** What changes for patient and crew: "the volume is no longer set: it follows from pressure and lung; watch it". */
    public static String difference(Mode wish, Mode got) {
        StringBuilder out = new StringBuilder();
        boolean wishVolume = wish.control() == Mode.Control.VOLUME || wish.control() == Mode.Control.VOLUME_TARGETED_PRESSURE;
        boolean gotVolume = got.control() == Mode.Control.VOLUME || got.control() == Mode.Control.VOLUME_TARGETED_PRESSURE;
        if (wishVolume && !gotVolume) add(out, "the volume is no longer set but follows from the pressure and the lung, so watch it");
        if (!wishVolume && gotVolume) add(out, "the volume is set and the pressure follows from it and the lung, so watch it");
        if (wish.control() == Mode.Control.VOLUME && got.control() == Mode.Control.VOLUME_TARGETED_PRESSURE) add(out, "the volume is sought by changing the pressure over some breaths, with a falling flow");
        if (wish.control() == Mode.Control.VOLUME_TARGETED_PRESSURE && got.control() == Mode.Control.VOLUME) add(out, "the flow is constant and the pressure peak higher");
        if (freedom(wish) > 0 && freedom(got) == 0) add(out, "the patient cannot start a breath");
        if (freedom(wish) == 0 && freedom(got) > 0) add(out, "the patient can start breaths");
        if (freedom(wish) == 4 && freedom(got) < 4) add(out, "breaths come at a set rate whether or not the patient breathes");
        if (freedom(wish) < 4 && freedom(got) == 4) add(out, "nothing ventilates a patient who does not breathe, but for a backup");
        if (freedom(wish) == 1 && freedom(got) == 2) add(out, "breaths between the set ones are not full inflations");
        if (freedom(wish) == 2 && freedom(got) == 1) add(out, "every breath that the patient starts is a full inflation");
        if (wish.supported() && !got.supported()) add(out, "the patient's own breaths get no support pressure");
        return out.length() == 0 ? "it differs in name only" : out.toString();
    }

    private static void add(StringBuilder out, String text) { out.append(out.length() == 0 ? "" : "; ").append(text); }
}
