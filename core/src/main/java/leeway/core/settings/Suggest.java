package leeway.core.settings;

import java.util.Map;
import leeway.core.kit.Illness;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;

/**
 * Starting settings for a patient on a device: what the file prescribes, fitted to what the device has, and the rest by the strategy.
 * <p>Leaves out what the settings lead to; {@link Solver} looks at that.
 */
public final class Suggest {
    private Suggest() { }

    /** Settings by the strategy's rules alone. */
    public static Suggested settings(PatientFacts patient, Illness illness, Ventilator ventilator, Settings prescribed, Strategy strategy) {
        return new Fitting(patient, illness, ventilator, prescribed, strategy, Map.of(), false).result();
    }
}
