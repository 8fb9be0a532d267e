package leeway.core.map;

import java.util.Optional;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.map.OperatingMap.Axis;
import leeway.core.start.Start;

/** Which two settings a map turns, and from where to where: as far as it makes sense for the patient and the device has it. */
final class Axes {
    /** Volumes worth looking at, mL/kg of predicted weight; common practice, no source. */
    private static final double LEAST_ML_PER_KG = 3, MOST_ML_PER_KG = 9.5;
    /** Pressures above PEEP worth looking at; common practice, no source. */
    private static final double LEAST_CMH2O = 4, MOST_CMH2O = 30;

    private Axes() { }

    static Axis x(Start start, int points) {
        Settings s = start.settings();
        Setting which = s.mode().map(Axes::size).orElse(Setting.TIDAL_VOLUME);
        if (!s.has(which)) throw new IllegalArgumentException("a map needs the setting " + which.words());
        double kg = start.ventilated().patient().predictedKg();
        double from = which == Setting.TIDAL_VOLUME ? LEAST_ML_PER_KG * kg : which == Setting.PEEP ? 0 : LEAST_CMH2O;
        double to = which == Setting.TIDAL_VOLUME ? MOST_ML_PER_KG * kg : which == Setting.PEEP ? 20 : MOST_CMH2O;
        return axis(start, which, from, to, points);
    }

    static Axis y(Start start, int points) {
        Settings s = start.settings();
        boolean rate = s.mode().map(Mode::hasRate).orElse(true);
        if (!rate) {
            Setting other = s.mode().map(Axes::size).orElse(Setting.PEEP) == Setting.PEEP ? Setting.FIO2 : Setting.PEEP;
            return axis(start, other, other == Setting.FIO2 ? 0.21 : 0, other == Setting.FIO2 ? 1 : 20, points);
        }
        double usual = switch (start.facts().group()) {
            case INFANT -> 40;
            case CHILD -> 24;
            case ADULT -> 18;
        };
        return axis(start, Setting.RATE, Math.rint(usual / 3), 2 * usual, points);
    }

    /** What sets the size of a breath in this mode; PEEP where nothing does. */
    private static Setting size(Mode mode) {
        return switch (mode.control()) {
            case VOLUME, VOLUME_TARGETED_PRESSURE -> Setting.TIDAL_VOLUME;
            case PRESSURE -> Setting.INSPIRATORY_PRESSURE;
            case SUPPORT -> mode.supported() ? Setting.SUPPORT_PRESSURE : Setting.PEEP;
        };
    }

    private static Axis axis(Start start, Setting which, double from, double to, int points) {
        double chosen = start.settings().get(which, Double.NaN);
        double[] values = MapMaker.within(Optional.ofNullable(start.ventilated().ventilator().ranges().get(which)), from, to, chosen, points);
        return new Axis(which, which.words(), which.unit().symbol().isEmpty() ? "1" : which.unit().symbol(), values);
    }
}
