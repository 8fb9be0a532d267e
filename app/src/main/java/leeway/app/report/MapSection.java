package leeway.app.report;

import java.util.ArrayList;
import java.util.List;
import leeway.core.map.OperatingMap;
import leeway.core.map.OperatingMap.Limit;
import leeway.core.map.Sensitivity.Result;
import leeway.core.map.Sensitivity.Swing;

/** The operating map and what moves the results most, as a section of the report. */
final class MapSection {
    private static final int WIDE = 720, NARROW = 360, TORNADO = 340;
    private static final List<String> SHOWN = List.of("plateau pressure", "PaCO2", "saturation", "oxygen left");

    private MapSection() { }

    /** Why there is no map. */
    static void none(Html html) { html.heading("map", "Room to every limit", "").element("p", "Nothing is set here that ventilates, so there is no operating map: tidal volume and rate are the patient's own."); }

    static void write(OperatingMap map, Html html) {
        html.heading("map", "Room to every limit", "hatched: beyond a limit; dotted: little room; ring: the chosen settings").raw("<p>").text(MapPicture.says(map)).text(map.little().map(s -> " " + s).orElse("")).raw("</p><figure>")
                .raw(MapPicture.of(map, "wide", WIDE)).raw(MapPicture.of(map, "narrow", NARROW)).raw(MapPicture.of(map, "paper", ReportPage.PAPER)).raw("</figure>");
        List<List<String>> rows = new ArrayList<>();
        for (Limit l : map.limits()) rows.add(MapText.row(map, l));
        html.folded("Each limit in numbers", () -> html.table("At the chosen settings", List.of("", "value", "limit"), "ttt", rows));
        List<Result> results = map.sensitivity().results().stream().filter(r -> SHOWN.contains(r.name())).toList();
        if (results.isEmpty()) return;
        html.heading("moves", "What moves the results most", "low end open, high end filled; 19 of 20 of its kind").raw("<div class=\"two\">");
        for (Result r : results) html.raw("<figure>").raw(TornadoPicture.of(r, "", TORNADO)).raw("</figure>");
        html.raw("</div>");
        List<List<String>> swings = new ArrayList<>();
        for (Result r : results) for (Swing s : r.swings()) swings.add(List.of(r.name(), s.input(), TornadoPicture.minus(s.low()), TornadoPicture.value(r, s.atLow()), TornadoPicture.minus(s.high()), TornadoPicture.value(r, s.atHigh())));
        html.folded("The same in numbers", () -> html.table("Each input at its ends", List.of("result", "input", "low", "result there", "high", "result there"), "tttttt", swings));
    }
}
