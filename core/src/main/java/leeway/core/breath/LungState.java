package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.lung.Sigmoid;

/**
 * Pressures of a lung of one or two compartments from their volumes: each lung's own curve, scaled by its open share, beside a
 * linear chest wall. Leaves out hysteresis but for opening and closing, and the weight of lung on lung.
 * <p>The patient's compliance is that of the whole between the PEEP and the plateau of the {@link Recruitment}, with the share
 * open that these leave open: the curve's b follows from it. Two lungs apart have half a chest each and a mediastinum between
 * them that gives way; two parts of one lung share their pleura. cmH2O, mL.
 */
final class LungState {
    /** Stiffness of the mediastinum over that of the chest wall; invented: a difference of 1 cmH2O moves about 70 mL in an adult. */
    private static final double MEDIASTINUM = 2;
    private static final double LEAST_SHARE = 0.02;

    private final Tuned t;
    final Lungs lungs;
    final Recruitment recruitment;
    final boolean curved;
    private final Illinois root = new Illinois();
    private final double inflection, width, reference;
    /** Shares of the two; the second is 0 where there is one, and its gas does not move where it is blocked. */
    double w1, w2, moving;
    boolean blocked;
    private double span, rest, wall1, wall2, mediastinum, linear;
    private double knownOpen1 = Double.NaN, knownOpen2 = Double.NaN, scale1, scale2;
    /** After {@link #at}: recoil of each lung, pleural pressure and alveolar pressure without muscles of each. */
    double lung1, lung2, pleura1, pleura2, alveoli1, alveoli2;

    LungState(Tuned tuned, Lungs lungs) {
        t = tuned;
        this.lungs = lungs;
        curved = lungs.curved();
        inflection = lungs.inflectionCmH2O();
        width = lungs.widthCmH2O();
        recruitment = lungs.recruitment();
        reference = recruitment.reference();
    }

    void retuned() {
        w2 = lungs.second();
        w1 = 1 - w2;
        blocked = lungs.apart() && w2 > 0 && t.share < 0.999;
        moving = lungs.apart() ? 1 : Math.max(LEAST_SHARE, t.share);
        double compliance = 1 / t.wholeElastance, own = 1 - t.chestWall, wall = t.chestWall * t.wholeElastance;
        wall1 = wall / w1;
        wall2 = w2 > 0 ? wall / w2 : 0;
        mediastinum = lungs.apart() ? MEDIASTINUM * wall : 0;
        linear = own * t.wholeElastance;
        if (lungs.curved()) {
            double c = lungs.inflectionCmH2O(), d = lungs.widthCmH2O(), low = recruitment.atPeepCmH2O(), high = recruitment.atPlateauCmH2O();
            span = compliance * (high - low) / (Sigmoid.share((own * high - c) / d) - Sigmoid.share((own * low - c) / d));
            rest = Sigmoid.share(-c / d);
        }
        knownOpen1 = Double.NaN;
        knownOpen2 = Double.NaN;
    }

    /** Recoil of a lung of which a volume is this many times {@code per}: per share of the span, or per cmH2O. */
    private double recoil(double volume, double per) {
        return curved ? inflection + width * Sigmoid.depth(volume * per + rest) : volume * per;
    }

    private double per(double share, double open) {
        double scale = share * recruitment.lungTimes(open, reference);
        return curved ? 1 / (span * scale) : linear / scale;
    }

    /** The only lung of a patient, whose open share stays. */
    void one(double volume, double gas) {
        lung1 = recoil(volume, scale1);
        pleura1 = wall1 * (volume + gas) + t.offset;
        alveoli1 = lung1 + pleura1;
    }

    /** Of that lung: share of the curve at a volume, and the other way; width of the curve and share per mL; stiffness where it is straight; stiffness of the chest wall. */
    double share(double volume) {
        return volume * scale1 + rest;
    }

    double volumeOf(double share) {
        return (share - rest) / scale1;
    }

    double width() {
        return width;
    }

    double perVolume() {
        return scale1;
    }

    double stiffness() {
        return curved ? width * scale1 * Sigmoid.straightSlope() : scale1;
    }

    double wall() {
        return wall1;
    }

    /** Elastic energy of the only lung and its chest wall between two volumes, cmH2O.mL. */
    double energy(double from, double to, double gas) {
        double lung = curved ? inflection * (to - from) + width / scale1 * (Sigmoid.depthIntegral(share(to)) - Sigmoid.depthIntegral(share(from))) : 0.5 * scale1 * (to + from) * (to - from);
        return lung + (wall1 * (0.5 * (to + from) + gas) + t.offset) * (to - from);
    }

    /** Works out all pressures of this state. */
    void at(double v1, double v2, double open1, double open2, double gas) {
        if (open1 != knownOpen1) {
            knownOpen1 = open1;
            scale1 = per(w1, open1);
        }
        lung1 = recoil(v1, scale1);
        double trapped = t.offset, a1 = v1 + gas;
        if (w2 == 0) {
            pleura1 = wall1 * a1 + trapped;
            alveoli1 = lung1 + pleura1;
            lung2 = lung1;
            pleura2 = pleura1;
            alveoli2 = alveoli1;
            return;
        }
        if (open2 != knownOpen2) {
            knownOpen2 = open2;
            scale2 = per(w2, open2);
        }
        lung2 = recoil(v2, scale2);
        double all = mediastinum + wall1 + wall2, moved = all > 0 ? (wall1 * a1 - wall2 * v2) / all : 0;
        pleura1 = wall1 * (a1 - moved) + trapped;
        pleura2 = wall2 * (v2 + moved) + trapped;
        alveoli1 = lung1 + pleura1;
        alveoli2 = lung2 + pleura2;
    }

    /** Pressure of lung and usual chest wall, which opens and closes. */
    double opening1(double v1) {
        return lung1 + wall1 * v1;
    }

    double opening2(double v2) {
        return lung2 + wall2 * v2;
    }

    void at(double[] y, int at) {
        at(y[at + FIRST], y[at + SECOND], y[at + FIRST_OPEN], y[at + SECOND_OPEN], y[at + PLEURA]);
    }

    /** Of the ventilated lung, weighted by share. */
    double meanAlveolar() {
        return w2 == 0 || blocked ? alveoli1 : w1 * alveoli1 + w2 * alveoli2;
    }

    double meanPleural() {
        return w2 == 0 || blocked ? pleura1 : w1 * pleura1 + w2 * pleura2;
    }

    double meanLung() {
        return w2 == 0 || blocked ? lung1 : w1 * lung1 + w2 * lung2;
    }

    /** Volume that has to leave, in proportion to the shares, until the recoil is this pressure; negative: that has to come. */
    double volumeAbove(double[] y, int at, double pressure) {
        double v1 = y[at + FIRST], v2 = y[at + SECOND], o1 = y[at + FIRST_OPEN], o2 = y[at + SECOND_OPEN], gas = y[at + PLEURA];
        double s1 = blocked ? 1 : w1, s2 = blocked ? 0 : w2, step = 1 / t.wholeElastance, low = -step, high = step;
        for (int i = 0; i < 60 && after(v1, v2, o1, o2, gas, s1 * low, s2 * low) < pressure; i++) low *= 2;
        for (int i = 0; i < 60 && after(v1, v2, o1, o2, gas, s1 * high, s2 * high) > pressure; i++) high *= 2;
        root.begin(low, high, after(v1, v2, o1, o2, gas, s1 * low, s2 * low) - pressure, after(v1, v2, o1, o2, gas, s1 * high, s2 * high) - pressure);
        double last = Double.NaN;
        for (int i = 0; i < 60 && root.high - root.low > 1e-9 * step; i++) {
            double less = root.next();
            if (Math.abs(less - last) <= 1e-10 * step) return less;
            last = less;
            if (root.took(after(v1, v2, o1, o2, gas, s1 * less, s2 * less) - pressure)) return less;
        }
        return 0.5 * (root.low + root.high);
    }

    private double after(double v1, double v2, double o1, double o2, double gas, double less1, double less2) {
        at(v1 - less1, v2 - less2, o1, o2, gas);
        return meanAlveolar();
    }
}
