package leeway.core.lung;

import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;

/** A number of {@link Lungs} that a sheet or a file may know as a band, with where it stands and how far it may go. */
public enum LungValue {
    INFLECTION("softest pressure of the lung", "cmH2O", 1, -20, 60, Lungs::inflectionCmH2O, (l, x) -> l.withCurve(x, l.widthCmH2O())),
    WIDTH("width of the lung's curve", "cmH2O", 1, 0.5, 50, Lungs::widthCmH2O, (l, x) -> l.withCurve(l.inflectionCmH2O(), x)),
    RECRUITABLE("lung that opens and closes", "%", 100, 0, 0.95, l -> l.recruitment().share(), (l, x) -> l.withRecruitment(l.recruitment().withShare(x))),
    OPENING("opening pressure", "cmH2O", 1, 1, 80, l -> l.recruitment().openingCmH2O(), (l, x) -> l.withRecruitment(l.recruitment().withOpening(Math.max(x, l.recruitment().closingCmH2O())))),
    CLOSING("closing pressure", "cmH2O", 1, -10, 40, l -> l.recruitment().closingCmH2O(), (l, x) -> l.withRecruitment(l.recruitment().withClosing(Math.min(x, l.recruitment().openingCmH2O())))),
    UPSTREAM("upstream resistance of the flow limit", "%", 100, 0.05, 50, l -> l.limit().upstreamTimes(), (l, x) -> l.withLimit(new FlowLimit(x, l.limit().recoilCmH2O()))),
    RECOIL("recoil at which the airways close", "cmH2O", 1, -10, 30, l -> l.limit().recoilCmH2O(), (l, x) -> l.withLimit(new FlowLimit(l.limit().upstreamTimes(), x))),
    SLOW_SHARE("slow part of the lung", "%", 100, 0.05, 0.9, Lungs::second, (l, x) -> l.withSlow(x, l.secondTimes())),
    SLOW_TIMES("time constant of the slow part", "%", 100, 1, 50, Lungs::secondTimes, (l, x) -> l.withSlow(l.second(), x)),
    LEFT("share of the left lung", "%", 100, 0.1, 0.9, Lungs::second, (l, x) -> l.withLeft(x));

    private final String words;
    private final String unit;
    private final double shownTimes;
    private final double low;
    private final double high;
    private final ToDoubleFunction<Lungs> of;
    private final BiFunction<Lungs, Double, Lungs> with;

    LungValue(String words, String unit, double shownTimes, double low, double high, ToDoubleFunction<Lungs> of, BiFunction<Lungs, Double, Lungs> with) {
        this.words = words;
        this.unit = unit;
        this.shownTimes = shownTimes;
        this.low = low;
        this.high = high;
        this.of = of;
        this.with = with;
    }

    public String words() { return words; }

    /** As it is shown: the value times {@link #shownTimes}. */
    public String unit() { return unit; }

    public double shownTimes() { return shownTimes; }

    public double of(Lungs lungs) { return of.applyAsDouble(lungs); }

    /** The same lungs with this value, kept within its bounds and with opening above closing. */
    public Lungs with(Lungs lungs, double value) { return with.apply(lungs, Math.max(low, Math.min(high, value))); }
}
