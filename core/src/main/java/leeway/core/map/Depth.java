package leeway.core.map;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leeway.core.journey.Steady;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.settings.Measure;
import leeway.core.settings.Shown;
import leeway.core.start.Start;
import leeway.core.start.SteadyModel;
import leeway.core.transport.Transport;

/** Says where the chosen settings keep every limit, but one of them by little: which, and what is prescribed against more room. */
public final class Depth {
    /** Less room than this is little: a tenth of the way from the limit to where one need not think of it. Common practice, no source. */
    public static final double LITTLE = 0.1;
    private static final List<Setting> OXYGENATE = List.of(Setting.FIO2, Setting.PEEP);
    private static final List<Setting> VENTILATE = List.of(Setting.TIDAL_VOLUME, Setting.INSPIRATORY_PRESSURE, Setting.SUPPORT_PRESSURE, Setting.RATE, Setting.INSPIRATORY_TIME, Setting.PEEP);

    private Depth() { }

    /** A sentence where the room is little; nothing in deep water, and nothing beyond a limit, which is said elsewhere. */
    public static Optional<String> little(Start start, Transport transport) {
        Settings settings = start.settings();
        Steady s = Steady.of(start.ventilated(), settings, start.barometerHPa());
        double kg = start.ventilated().patient().predictedKg();
        double room = 1;
        Bound nearest = null;
        for (Bound b : Bounds.of(start, transport.policy(), settings)) {
            double value = b.what().of(s, kg);
            if (Double.isNaN(value) || b.room(value) >= room) continue;
            room = b.room(value);
            nearest = b;
        }
        if (nearest == null || room <= 0 || room >= LITTLE) return Optional.empty();
        Bound which = nearest;
        Optional<Measure> measure = List.of(Measure.values()).stream().filter(m -> which.name().startsWith(m.words())).findFirst();
        String value = measure.map(m -> Shown.of(m, SteadyModel.value(s, kg, m)) + (which.upper() ? ", at most " : ", at least ") + Shown.of(m, which.limit())).orElse("");
        List<Setting> moves = which.name().startsWith("saturation") ? OXYGENATE : VENTILATE;
        String held = moves.stream().filter(transport.prescribed()::has).map(m -> m.said() + " " + Shown.of(m, transport.prescribed().values().get(m))).collect(Collectors.joining(" and "));
        return Optional.of("Little room on these settings: %s%s; %s.".formatted(which.name(), value.isEmpty() ? "" : " (" + value + ")",
                held.isEmpty() ? "on the first leg the limit is kept, but a small change of the patient breaks it" : "more needs other values than the prescribed " + held));
    }
}
