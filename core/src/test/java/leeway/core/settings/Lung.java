package leeway.core.settings;

import java.util.OptionalDouble;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;

/**
 * A lung of one compartment by textbook formulas, for trying the solver before the real model: equation of motion, auto-PEEP of
 * the passive expiration, the 863 law with a fixed dead space, pH by the acute slope of 0.008 a mmHg, PaO2 by a fixed shunt loss.
 */
record Lung(double complianceMlPerCmH2O, double resistanceCmH2OSPerL, double deadSpaceMl, double co2OutputMlPerMin, double pbwKg, double oxygenLoss) implements Model {
    @Override public Outlook at(Settings s) {
        double c = complianceMlPerCmH2O / 1000;
        double tau = resistanceCmH2OSPerL * c;
        double rate = s.get(Setting.RATE, 15);
        double ti = s.get(Setting.INSPIRATORY_TIME, 1);
        double peep = s.get(Setting.PEEP, 0);
        double a = Math.exp(-ti / tau);
        double b = Math.exp(-(60 / rate - ti) / tau);
        double dp = s.get(Setting.INSPIRATORY_PRESSURE, 0);
        double vt = s.get(Setting.TIDAL_VOLUME, 1000 * c * dp * (1 - a) * (1 - b) / (1 - a * b)) / 1000;
        double auto = vt / c * b / (1 - b);
        double plateau = peep + auto + vt / c;
        double va = Math.max(0.05, (vt - deadSpaceMl / 1000) * rate);
        double paco2 = 863 * co2OutputMlPerMin / 1000 / va;
        double pao2 = s.get(Setting.FIO2, 0.21) * 713 - 1.2 * paco2;
        double sat = pao2 <= 0 ? 0.3 : 1 / (23400 / (Math.pow(Math.max(1, pao2 * (1 - oxygenLoss)), 3) + 150 * Math.max(1, pao2 * (1 - oxygenLoss))) + 1);
        double power = 0.098 * rate * vt * (plateau + resistanceCmH2OSPerL * vt / ti - vt / c / 2);
        return m -> switch (m) {
            case PLATEAU -> OptionalDouble.of(plateau);
            case DRIVING -> OptionalDouble.of(vt / c);
            case PEAK -> OptionalDouble.of(plateau + resistanceCmH2OSPerL * vt / ti);
            case AUTO_PEEP -> OptionalDouble.of(auto);
            case MECHANICAL_POWER -> OptionalDouble.of(power);
            case VOLUME_PER_WEIGHT -> OptionalDouble.of(1000 * vt / pbwKg);
            case PACO2 -> OptionalDouble.of(paco2);
            case PH -> OptionalDouble.of(7.40 - 0.008 * (paco2 - 40));
            case PAO2 -> OptionalDouble.of(pao2);
            case SATURATION -> OptionalDouble.of(sat);
        };
    }
}
