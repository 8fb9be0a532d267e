package leeway.core.alarm;

import java.util.Arrays;
import leeway.core.gas.TwoColours;
import leeway.core.kit.Sensor;
import leeway.core.kit.Sensor.Place;
import leeway.core.run.Claims;
import leeway.core.run.Knob;
import leeway.core.run.Now;

/**
 * What the probe sees of the arterial saturation: a mean over the averaging time, as late as its delay, through a pulse that may be
 * weak, with two colours of light. Leaves out: motion, nail varnish, skin, a probe that slips, and cold of the hand alone.
 * <p>The way to the probe takes longer as the output falls (volume over flow, at most {@value #SLOWEST}-fold; common practice, no
 * source). A cold body closes the fingers: {@value #COLD_S} s more (MacLeod, Anaesthesia 2005;60:65: the finger's answer to
 * hypoxia takes 215 instead of 130 s in mild hypothermia, ear and forehead none), from {@value #WARM_CEL} Cel falling in full
 * at {@value #COLD_CEL} Cel (taken as the study's mild hypothermia; no source). Flow to the skin falls with the square of the output
 * (taken; no source): so grows the noise, at most {@value #NOISIEST}-fold, and under the share of the sheet nothing is read.
 */
public final class Oximeter {
    private static final double SLOWEST = 4;
    private static final double NOISIEST = 4;
    private static final double COLD_S = 85;
    private static final double WARM_CEL = 36.5;
    private static final double COLD_CEL = 35;
    /** Saturations kept: 160 rows of 1.1 s and more reach back beyond the longest way to a cold finger. */
    private static final int KEPT = 160;

    private final Light light;
    private int rows;
    private int kept;
    private int usualOutput;

    /**
     * Whose finger it is.
     *
     * @param carboxyhaemoglobin share of the haemoglobin
     * @param methaemoglobin     share of the haemoglobin
     * @param outputShare        cardiac output at the start over what is usual for this patient
     */
    record Light(double carboxyhaemoglobin, double methaemoglobin, double outputShare) {
        static final Light USUAL = new Light(0, 0, 1);
    }

    Oximeter(Light light) { this.light = light; }

    void claim(Claims claims) {
        rows = claims.state(1);
        kept = claims.state(2 * KEPT);
        usualOutput = claims.state(1);
        claims.reads(Knob.CARDIAC_OUTPUT);
    }

    void begin(Now n) {
        Arrays.fill(n.y, kept, kept + 2 * KEPT, Double.NaN);
        n.y[rows] = 0;
        n.y[usualOutput] = n.get(Knob.CARDIAC_OUTPUT) / light.outputShare();
    }

    /** Takes in the arterial saturation at the end of a row. */
    void keep(Now n, double tS, double saturation) {
        n.y[rows]++;
        int slot = kept + 2 * ((int) n.y[rows] % KEPT);
        n.y[slot] = tS;
        n.y[slot + 1] = saturation;
    }

    /** Cardiac output over the usual one; 1 where there is none. */
    private double share(Now n) {
        double usual = n.y[usualOutput];
        return usual > 0 ? n.get(Knob.CARDIAC_OUTPUT) / usual : 1;
    }

    /** Whether there is blood and no pulse to read it by. */
    boolean lost(Now n, Sensor sensor) {
        return share(n) < sensor.weakBelow() && !Double.isNaN(n.y[kept + 2 * ((int) n.y[rows] % KEPT) + 1]);
    }

    /** How much the noise grows. */
    double noiseTimes(Now n) {
        double share = Math.min(1, share(n));
        return Math.min(NOISIEST, 1 / Math.max(1e-3, share * share));
    }

    /**
     * From the artery to the probe, s.
     *
     * @param share cardiac output over the usual one
     */
    public static double lateS(Sensor sensor, double share, double bodyCel) {
        double lateS = sensor.delayS() * Math.min(SLOWEST, Math.max(1, 1 / Math.max(1e-3, share)));
        return sensor.place() == Place.FINGER ? lateS + COLD_S * Math.max(0, Math.min(1, (WARM_CEL - bodyCel) / (WARM_CEL - COLD_CEL))) : lateS;
    }

    /** What is seen, before gain, error and noise; {@code NaN} where no blood is. */
    double seen(Now n, Sensor sensor, double endS) {
        double lateS = lateS(sensor, share(n), n.get(Knob.TEMPERATURE));
        return TwoColours.shows(mean(n, endS - lateS - sensor.averageS(), endS - lateS), light.carboxyhaemoglobin(), light.methaemoglobin());
    }

    /** Mean of the kept saturations, straight between them, from a time to a time; the oldest known reaches back for ever. */
    private double mean(Now n, double fromS, double toS) {
        int newest = (int) n.y[rows] % KEPT;
        double sum = 0;
        double coveredS = 0;
        double laterS = Double.NaN;
        double later = Double.NaN;
        for (int k = 0, at = newest; k < KEPT; k++, at = at > 0 ? at - 1 : KEPT - 1) {
            int slot = kept + 2 * at;
            double atS = n.y[slot];
            double value = n.y[slot + 1];
            if (Double.isNaN(atS) || Double.isNaN(value)) break;
            if (!Double.isNaN(laterS)) {
                double a = Math.max(fromS, atS);
                double b = Math.min(toS, laterS);
                if (b > a) {
                    double slope = laterS > atS ? (later - value) / (laterS - atS) : 0;
                    sum += (b - a) * (value + slope * ((a + b) / 2 - atS));
                    coveredS += b - a;
                }
            }
            laterS = atS;
            later = value;
            if (atS <= fromS) break;
        }
        if (Double.isNaN(later)) return Double.NaN;
        double spanS = toS - fromS;
        if (spanS <= 0) return later;
        return (sum + Math.max(0, spanS - coveredS) * later) / spanS;
    }
}
