package leeway.app.report;

import leeway.app.report.Svg.At;
import leeway.core.plan.Plan.Breath;

/**
 * One breath as an engineering drawing: pressure, flow and volume over the same time, with dimension lines for what one
 * reads from them. Ink on paper; nothing moves, nothing glows.
 */
public final class BreathPicture {
    private static final int PRESSURE = 120;
    private static final int FLOW = 96;
    private static final int VOLUME = 84;
    private static final int GAP = 26;
    private static final int TOP = 16;

    private BreathPicture() { }

    public static String of(String cssClass, int width, Breath b) {
        int left = width >= 500 ? 52 : 34;
        int right = width - 96;
        int n = b.atS().length;
        double end = b.atS()[n - 1];
        double scale = (right - left) / end;
        int flowTop = TOP + PRESSURE + GAP;
        int volumeTop = flowTop + FLOW + GAP;
        int bottom = volumeTop + VOLUME;
        Svg svg = new Svg("breath " + cssClass, width, bottom + 64, says(b));
        double peak = max(b.pressureCmH2O());
        double high = up(Math.max(peak, b.plateauCmH2O().orElse(0)) * 1.08);
        double flowTopValue = up(Math.max(max(b.flowLPerMin()), 1) * 1.08);
        double flowLow = -up(Math.max(-min(b.flowLPerMin()), 1) * 1.08);
        double volumeHigh = up(max(b.volumeMl()) * 1.08);
        // pressure
        panel(svg, left, right, TOP, PRESSURE, "pressure", "cmH2O", 0, high);
        level(svg, left, right, y(TOP, PRESSURE, 0, high, peak), "peak " + one(peak), 0);
        double plateauY = y(TOP, PRESSURE, 0, high, b.plateauCmH2O().orElse(peak));
        if (b.plateauCmH2O().isPresent()) {
            double shift = Math.abs(plateauY - y(TOP, PRESSURE, 0, high, peak)) < 13 ? 13 - Math.abs(plateauY - y(TOP, PRESSURE, 0, high, peak)) : 0;
            level(svg, left, right, plateauY, "plateau " + one(b.plateauCmH2O().getAsDouble()), shift);
        }
        level(svg, left, right, y(TOP, PRESSURE, 0, high, b.peepCmH2O()), "PEEP " + one(b.peepCmH2O()), 0);
        curve(svg, b.atS(), b.pressureCmH2O(), left, scale, TOP, PRESSURE, 0, high);
        // flow
        panel(svg, left, right, flowTop, FLOW, "flow", "L/min", flowLow, flowTopValue);
        svg.line("axis", left, y(flowTop, FLOW, flowLow, flowTopValue, 0), right, y(flowTop, FLOW, flowLow, flowTopValue, 0));
        curve(svg, b.atS(), b.flowLPerMin(), left, scale, flowTop, FLOW, flowLow, flowTopValue);
        // volume
        panel(svg, left, right, volumeTop, VOLUME, "volume", "mL", 0, volumeHigh);
        double tidal = max(b.volumeMl());
        level(svg, left, right, y(volumeTop, VOLUME, 0, volumeHigh, tidal), Math.round(tidal) + " mL", 0);
        curve(svg, b.atS(), b.volumeMl(), left, scale, volumeTop, VOLUME, 0, volumeHigh);
        b.lungs().ifPresent(two -> {
            double first = y(volumeTop, VOLUME, 0, volumeHigh, max(two.firstMl())), second = y(volumeTop, VOLUME, 0, volumeHigh, max(two.secondMl()));
            double whole = y(volumeTop, VOLUME, 0, volumeHigh, tidal), apart = second - first;
            double firstAt = Math.max(first, whole + 13), secondAt = Math.abs(apart) < 13 ? firstAt + 13 : Math.max(second, firstAt + 13);
            thin(svg, b.atS(), two.firstMl(), left, scale, volumeTop, volumeHigh);
            thin(svg, b.atS(), two.secondMl(), left, scale, volumeTop, volumeHigh);
            svg.text("tick", right + 6, firstAt + 4, At.START, two.first() + " " + Math.round(max(two.firstMl())));
            svg.text("tick", right + 6, secondAt + 4, At.START, two.second() + " " + Math.round(max(two.secondMl())));
        });
        // times
        double turn = left + b.inspiratoryTimeS() * scale;
        for (double x : new double[] {left, turn, right}) svg.line("thin", x, TOP, x, bottom + 30);
        dimension(svg, left, turn, bottom + 24, two(b.inspiratoryTimeS()) + " s in");
        dimension(svg, turn, right, bottom + 24, two(end - b.inspiratoryTimeS()) + " s out");
        svg.text("tick", left, bottom + 56, At.START, "inspiration to expiration 1:" + one((end - b.inspiratoryTimeS()) / b.inspiratoryTimeS()) + ", " + one(60 / end) + " breaths a minute");
        return svg.done();
    }

    private static void panel(Svg svg, int left, int right, int top, int height, String what, String unit, double low, double high) {
        svg.line("axis", left, top, left, top + height);
        if (low >= 0) svg.line("axis", left, top + height, right, top + height);
        svg.text("lab", left, top - 5, At.START, what + ", " + unit);
        svg.text("tick", left - 5, top + 9, At.END, plain(high));
        svg.text("tick", left - 5, top + height, At.END, plain(low));
        if (low < 0) svg.text("tick", left - 5, y(top, height, low, high, 0) + 4, At.END, "0");
    }

    private static void level(Svg svg, int left, int right, double y, String words, double shiftDown) {
        svg.line("construct", left, y, right, y);
        svg.text("tick", right + 6, y + 4 + shiftDown, At.START, words);
    }

    private static void dimension(Svg svg, double x1, double x2, double y, String words) {
        svg.line("thin", x1, y, x2, y);
        svg.polygon("arrow", new double[] {x1, x1 + 7, x1 + 7}, new double[] {y, y - 2.5, y + 2.5});
        svg.polygon("arrow", new double[] {x2, x2 - 7, x2 - 7}, new double[] {y, y - 2.5, y + 2.5});
        boolean fits = Svg.width(words, 12) < x2 - x1 - 8;
        svg.text("tick", (x1 + x2) / 2, fits ? y - 5 : y + 14, At.MIDDLE, words);
    }

    private static void curve(Svg svg, double[] t, double[] v, int left, double scale, int top, int height, double low, double high) {
        double[] x = new double[t.length];
        double[] y = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            x[i] = left + t[i] * scale;
            y[i] = y(top, height, low, high, v[i]);
        }
        svg.polyline("mid", x, y);
    }

    private static void thin(Svg svg, double[] t, double[] v, int left, double scale, int top, double high) {
        double[] x = new double[t.length];
        double[] y = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            x[i] = left + t[i] * scale;
            y[i] = y(top, VOLUME, 0, high, v[i]);
        }
        svg.polyline("part", x, y);
    }

    private static double y(int top, int height, double low, double high, double v) { return top + height * (1 - (v - low) / (high - low)); }

    /** The next round number above. */
    private static double up(double v) {
        double magnitude = 1;
        while (magnitude * 10 <= v) magnitude *= 10;
        while (magnitude > v) magnitude /= 10;
        for (double m : new double[] {1, 1.5, 2, 3, 4, 5, 6, 8, 10}) if (m * magnitude >= v) return m * magnitude;
        return 10 * magnitude;
    }

    private static double max(double[] v) {
        double m = v[0];
        for (double x : v) m = Math.max(m, x);
        return m;
    }

    private static double min(double[] v) {
        double m = v[0];
        for (double x : v) m = Math.min(m, x);
        return m;
    }

    private static String one(double v) { return Decimals.fixed(v, 1); }

    private static String two(double v) { return Decimals.fixed(v, 2); }

    private static String plain(double v) { return v == Math.rint(v) ? Decimals.fixed(v, 0) : one(v); }

    private static String says(Breath b) {
        double end = b.atS()[b.atS().length - 1];
        return "One breath of %s s: pressure from PEEP %s to a peak of %s cmH2O%s, %s mL of volume in %s s of inspiration, largest expiratory flow %s L/min%s.".formatted(two(end),
                one(b.peepCmH2O()), one(max(b.pressureCmH2O())), b.plateauCmH2O().isPresent() ? ", plateau " + one(b.plateauCmH2O().getAsDouble()) : "",
                Math.round(max(b.volumeMl())), two(b.inspiratoryTimeS()), one(-min(b.flowLPerMin())),
                b.lungs().map(l -> "; %s %s and %s %s mL".formatted(l.first(), Math.round(max(l.firstMl())), l.second(), Math.round(max(l.secondMl())))).orElse(""));
    }
}
