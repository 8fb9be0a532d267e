package leeway.app.report;

import java.io.OutputStream;
import java.util.Arrays;
import java.util.Optional;
import leeway.core.kit.Setting;
import leeway.core.map.OperatingMap;
import leeway.core.map.OperatingMap.Axis;
import leeway.core.map.OperatingMap.Turn;
import leeway.core.start.Start;

/** The JSON of {@code leeway map}: grids are rows of y, columns of x. */
public final class MapJson {
    private MapJson() { }

    public static void write(OperatingMap map, Start start, String version, OutputStream out) {
        try (Json json = new Json(out)) {
            json.text("transport", map.title());
            json.text("version", version);
            json.text("strategy", start.strategy().name());
            json.text("strategyBecause", start.picked());
            json.text("mode", start.settings().mode().map(m -> m.code()));
            axis(json, "x", map.x());
            axis(json, "y", map.y());
            json.objects("limits", map.limits().stream().filter(l -> known(l.values())).toList(), l -> {
                json.text("name", l.name());
                json.text("unit", l.unit());
                json.number("limit", l.limit());
                json.text("keep", l.upper() ? "below" : "above");
                json.rows("values", l.name().startsWith("pH") || l.unit().equals("1") ? "share" : "CmH2O", l.values());
            });
            json.rows("room", "share", map.room());
            json.object("chosen", () -> {
                json.number("x", map.chosen().x());
                json.number("y", map.chosen().y());
                json.number("room", map.chosen().room());
                json.text("nearest", map.chosen().nearest());
                json.text("little", map.little());
                if (!map.chosen().beyond().isEmpty()) json.texts("beyond", map.chosen().beyond());
                turn(json, "turnX", map.chosen().turnX());
                turn(json, "turnY", map.chosen().turnY());
            });
            json.objects("lines", map.lines(), l -> {
                json.text("name", l.name());
                json.text("unit", l.unit());
                json.rows("values", l.unit().equals("L/min") ? "LPerMin" : "Min", l.values());
            });
            json.objects("settings", start.solved().suggested().because(), b -> {
                json.text("setting", b.setting());
                Optional<Setting> s = Setting.ofWords(b.setting());
                s.ifPresent(x -> {
                    json.number("value", start.settings().get(x));
                    json.text("unit", x.unit().symbol().isEmpty() ? "1" : x.unit().symbol());
                });
                if (s.isEmpty()) json.text("value", start.settings().mode().map(m -> m.code()));
                json.text("called", Optional.ofNullable(start.ventilated().ventilator().called().get(s.isEmpty() ? start.settings().mode().map(m -> m.code()).orElse("") : b.setting())));
                json.text("origin", b.origin().word());
                json.text("why", b.why());
            });
            json.objects("sensitivity", map.sensitivity().results(), r -> {
                json.text("result", r.name());
                json.text("unit", r.unit());
                json.number("central", r.central());
                json.objects("swings", r.swings(), w -> {
                    json.text("input", w.input());
                    json.text("low", w.low());
                    json.text("high", w.high());
                    json.number("atLow", w.atLow());
                    json.number("atHigh", w.atHigh());
                });
            });
            json.texts("conflicts", start.solved().conflicts().stream().map(c -> c.sentence()).toList());
            json.texts("held", map.held());
        }
    }

    private static boolean known(double[][] grid) { return Arrays.stream(grid).flatMapToDouble(Arrays::stream).anyMatch(v -> !Double.isNaN(v)); }

    private static void axis(Json json, String key, Axis axis) {
        json.object(key, () -> {
            json.text("name", axis.name());
            json.text("unit", axis.unit());
            json.numbers("values", axis.values());
        });
    }

    private static void turn(Json json, String key, Optional<Turn> turn) {
        turn.ifPresent(t -> json.object(key, () -> {
            json.number("from", t.from());
            if (!t.endsFrom().isEmpty()) json.text("endsFrom", t.endsFrom());
            json.number("to", t.to());
            if (!t.endsTo().isEmpty()) json.text("endsTo", t.endsTo());
        }));
    }
}
