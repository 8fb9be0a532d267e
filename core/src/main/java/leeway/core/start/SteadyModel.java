package leeway.core.start;

import java.util.OptionalDouble;
import leeway.core.body.SteadyGases;
import leeway.core.breath.BreathNumbers;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.settings.Measure;
import leeway.core.settings.Model;
import leeway.core.settings.Outlook;

/** The steady state of a patient on a device under one barometric pressure, as strategies judge it. */
public record SteadyModel(Ventilated ventilated, double barometerHPa) implements Model {
    @Override public Outlook at(Settings settings) { return outlook(Steady.of(ventilated, settings, barometerHPa), ventilated.patient().predictedKg()); }

    /** A steady state in the words of strategies. */
    public static Outlook outlook(Steady steady, double predictedKg) { return measure -> known(value(steady, predictedKg, measure)); }

    /** One measure of a steady state, in its unit; {@code NaN} where there is none, as gases of a test lung. */
    public static double value(Steady steady, double predictedKg, Measure measure) {
        BreathNumbers b = steady.breath();
        SteadyGases g = steady.gases();
        return switch (measure) {
            case PLATEAU -> b.plateauCmH2O();
            case DRIVING -> b.drivingCmH2O();
            case PEAK -> b.peakCmH2O();
            case AUTO_PEEP -> b.autoPeepCmH2O();
            case MECHANICAL_POWER -> b.mechanicalPowerJPerMin();
            case VOLUME_PER_WEIGHT -> b.expiredMl() / predictedKg;
            case PACO2 -> g.paco2MmHg();
            case PH -> g.ph();
            case PAO2 -> g.pao2MmHg();
            case SATURATION -> g.sao2();
        };
    }

    private static OptionalDouble known(double value) { return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty(); }
}
