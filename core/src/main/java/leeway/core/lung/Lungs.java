package leeway.core.lung;

import java.util.List;
import java.util.stream.Stream;

/**
 * What a lung has beyond one linear compartment. Every part may be absent; {@link #LINEAR} has none, and is solved exactly.
 *
 * @param curved          the lung's own curve is a sigmoid, beside a linear chest wall
 * @param inflectionCmH2O c of the lung's curve, above its pressure at the relaxation volume
 * @param widthCmH2O      d of the lung's curve
 * @param recruitment     opening and closing; its PEEP and plateau also say where the patient's compliance holds
 * @param limit           largest expiratory flow
 * @param second          share of a second compartment in compliance and resistance's cross-section; 0: one compartment
 * @param secondTimes     its time constant over that of the first
 * @param apart           the two are the right and the left lung, each in its own pleura; else slow and fast parts of one
 * @param doubts          which of these numbers are known as bands
 */
public record Lungs(boolean curved, double inflectionCmH2O, double widthCmH2O, Recruitment recruitment, FlowLimit limit, double second, double secondTimes,
        boolean apart, List<LungDoubt> doubts) {
    public static final Lungs LINEAR = new Lungs(false, 0, 1, Recruitment.NONE, FlowLimit.NONE, 0, 1, false, List.of());

    public Lungs {
        doubts = List.copyOf(doubts);
        if (!(widthCmH2O > 0 && widthCmH2O <= 50 && inflectionCmH2O >= -20 && inflectionCmH2O <= 60)) {
            throw new IllegalArgumentException("lung curve with c %s and d %s cmH2O".formatted(inflectionCmH2O, widthCmH2O));
        }
        if (!(second >= 0 && second <= 0.9 && secondTimes >= 1 && secondTimes <= 50)) {
            throw new IllegalArgumentException("second compartment: share %s, time constant times %s".formatted(second, secondTimes));
        }
    }

    /** Nothing but one linear compartment. */
    public boolean linear() {
        return !curved && recruitment.share() == 0 && limit.none() && second == 0;
    }

    /** These lungs, and where they have no part of a kind, that of others. */
    public Lungs over(Lungs others) {
        Lungs parts = second > 0 ? this : others, bent = curved ? this : others;
        return new Lungs(bent.curved, bent.inflectionCmH2O, bent.widthCmH2O, recruitment.share() > 0 ? recruitment : others.recruitment, limit.none() ? others.limit : limit,
                parts.second, parts.secondTimes, parts.apart, Stream.of(LungValue.values()).flatMap(v -> owner(v, others).doubts.stream().filter(d -> d.value() == v)).toList());
    }

    /** Whose value of this kind {@link #over} keeps. */
    private Lungs owner(LungValue value, Lungs others) {
        boolean mine = switch (value) {
            case INFLECTION, WIDTH -> curved;
            case RECRUITABLE, OPENING, CLOSING -> recruitment.share() > 0;
            case UPSTREAM, RECOIL -> !limit.none();
            case SLOW_SHARE, SLOW_TIMES, LEFT -> second > 0;
        };
        return mine ? this : others;
    }

    /** The same, with these numbers known as bands. */
    public Lungs withDoubts(List<LungDoubt> bands) {
        return new Lungs(curved, inflectionCmH2O, widthCmH2O, recruitment, limit, second, secondTimes, apart, bands);
    }

    public Lungs withCurve(double inflection, double width) {
        return new Lungs(true, inflection, width, recruitment, limit, second, secondTimes, apart, doubts);
    }

    public Lungs withRecruitment(Recruitment other) {
        return new Lungs(curved, inflectionCmH2O, widthCmH2O, other, limit, second, secondTimes, apart, doubts);
    }

    public Lungs withLimit(FlowLimit other) {
        return new Lungs(curved, inflectionCmH2O, widthCmH2O, recruitment, other, second, secondTimes, apart, doubts);
    }

    /** A slow part beside a fast one, in one pleura. */
    public Lungs withSlow(double share, double times) {
        return new Lungs(curved, inflectionCmH2O, widthCmH2O, recruitment, limit, share, times, false, doubts);
    }

    /** Right and left lung, each in its own pleura, alike but for their share. */
    public Lungs withLeft(double share) {
        return new Lungs(curved, inflectionCmH2O, widthCmH2O, recruitment, limit, share, 1, true, doubts);
    }
}
