package leeway.files.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.core.kit.Band;
import leeway.core.lung.FlowLimit;
import leeway.core.lung.LungDoubt;
import leeway.core.lung.LungValue;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** What lungs have beyond one linear compartment, as illness sheets and the {@code lungs} of a patient say it. */
public final class LungKeys {
    private static final Recruitment USUAL = Recruitment.NONE;
    private static final Table CURVES = Table.of("the curve of the lung",
            Key.must("inflection", Form.band(Kind.AIRWAY_PRESSURE, -20, 60, "6 cmH2O"), "Pressure across the lung, above that at rest, at which it is softest."),
            Key.must("width", Form.band(Kind.AIRWAY_PRESSURE, 0.5, 50, "6 cmH2O"), "How far the soft part reaches: the corners lie twice this below and above."));
    private static final Table OPENING = Table.of("the recruitment",
            Key.must("share", Form.band(Kind.FRACTION, 0, 0.95, "60 %"), "Of the lung that opens and closes."),
            Key.may("opening", Form.band(Kind.AIRWAY_PRESSURE, 1, 80, "20 cmH2O"), "Mode of the pressures that open it.").otherwise("20 cmH2O"),
            Key.may("opening spread", Form.of(Kind.AIRWAY_PRESSURE, 0.5, 30, "9 cmH2O"), "Their standard deviation.").otherwise("9 cmH2O"),
            Key.may("closing", Form.band(Kind.AIRWAY_PRESSURE, -10, 40, "5 cmH2O"), "Mode of the pressures below which it closes.").otherwise("5 cmH2O"),
            Key.may("closing spread", Form.of(Kind.AIRWAY_PRESSURE, 0.5, 30, "4 cmH2O"), "Their standard deviation.").otherwise("4 cmH2O"),
            Key.may("opens in", Form.of(Kind.TIME, 0.05, 600, "2.3 s"), "Time constant of opening.").otherwise("2.3 s"),
            Key.may("closes in", Form.of(Kind.TIME, 0.05, 3600, "60 s"), "Time constant of closing.").otherwise("60 s"),
            Key.may("shunt", Form.of(Kind.FRACTION, 0, 1, "60 %"), "What the shunt gains per share of lung that closes; 0 % where the shunt is not to follow.").otherwise("0 %"),
            Key.may("at PEEP", Form.of(Kind.AIRWAY_PRESSURE, 0, 40, "10 cmH2O"), "PEEP at which compliance and shunt of the sheet hold.").otherwise("10 cmH2O"),
            Key.may("at plateau", Form.of(Kind.AIRWAY_PRESSURE, 5, 60, "25 cmH2O"), "Plateau at which they hold.").otherwise("25 cmH2O"));
    private static final Table LIMIT = Table.of("the flow limit",
            Key.must("upstream", Form.band(Kind.FRACTION, 0.05, 50, "200 %"), "Resistance upstream of where the airways collapse, over their resistance in inspiration."),
            Key.may("recoil", Form.band(Kind.AIRWAY_PRESSURE, -10, 30, "2 cmH2O"), "Recoil of the lung at rest less the pressure at which the airways close.").otherwise("2 cmH2O"));
    private static final Table SLOW = Table.of("the slow part",
            Key.must("share", Form.band(Kind.FRACTION, 0.05, 0.9, "40 %"), "Of the lung's compliance."),
            Key.must("time constant", Form.band(Kind.FRACTION, 1, 50, "500 %"), "Of the slow over that of the fast part."));

    /** The keys, for the tables of sheets and transport files. */
    public static final Key CURVE = Key.may("curve", Form.section(CURVES), "The lung's own pressure-volume curve is a sigmoid.").otherwise("straight"),
            RECRUITMENT = Key.may("recruitment", Form.section(OPENING), "Lung that opens and closes.").otherwise("none"),
            FLOW_LIMIT = Key.may("flow limit", Form.section(LIMIT), "The largest flow that the airways let out.").otherwise("none"),
            SLOW_PART = Key.may("slow part", Form.section(SLOW), "A slow part beside a fast one.").otherwise("none"),
            LEFT_LUNG = Key.may("left lung", Form.band(Kind.FRACTION, 0.1, 0.9, "50 %"), "Right and left lung apart, each in its own pleura: the left one's share.").otherwise("not apart");

    private LungKeys() { }

    /** The lungs of a section that has these keys. */
    public static Lungs lungs(Section s, Complaints complaints) {
        Lungs lungs = Lungs.LINEAR;
        List<LungDoubt> doubts = new ArrayList<>();
        Optional<Section> curve = s.section("curve"), opening = s.section("recruitment"), limit = s.section("flow limit"), slow = s.section("slow part");
        if (slow.isPresent() && s.has("left lung")) {
            complaints.add(s.atKey("left lung"), "\"left lung\" and \"slow part\" are both a second part of the lung", "Keep one of them.");
        }
        if (curve.filter(c -> c.has("inflection") && c.has("width")).isPresent()) {
            lungs = lungs.withCurve(value(curve.get(), "inflection", LungValue.INFLECTION, 0, doubts), value(curve.get(), "width", LungValue.WIDTH, 1, doubts));
        }
        if (limit.filter(l -> l.has("upstream")).isPresent()) {
            lungs = lungs.withLimit(new FlowLimit(value(limit.get(), "upstream", LungValue.UPSTREAM, 1, doubts), value(limit.get(), "recoil", LungValue.RECOIL, 2, doubts)));
        }
        if (slow.filter(p -> p.has("share") && p.has("time constant")).isPresent()) {
            lungs = lungs.withSlow(value(slow.get(), "share", LungValue.SLOW_SHARE, 0, doubts), value(slow.get(), "time constant", LungValue.SLOW_TIMES, 1, doubts));
        }
        if (s.has("left lung")) lungs = lungs.withLeft(value(s, "left lung", LungValue.LEFT, 0.5, doubts));
        if (opening.filter(o -> o.has("share")).isPresent()) lungs = opening(lungs, opening.get(), complaints, doubts);
        return lungs.withDoubts(doubts);
    }

    /** The middle of a band, which goes to the doubts where it has a width. */
    private static double value(Section s, String key, LungValue value, double otherwise, List<LungDoubt> doubts) {
        Optional<Band> band = s.as(key, Band.class);
        band.filter(b -> b.high() > b.low()).ifPresent(b -> doubts.add(new LungDoubt(value, b.low(), b.high())));
        return band.map(Band::central).orElse(otherwise);
    }

    private static Lungs opening(Lungs lungs, Section o, Complaints complaints, List<LungDoubt> doubts) {
        double opening = value(o, "opening", LungValue.OPENING, USUAL.openingCmH2O(), doubts), closing = value(o, "closing", LungValue.CLOSING, USUAL.closingCmH2O(), doubts);
        double peep = o.number("at PEEP", USUAL.atPeepCmH2O()), plateau = o.number("at plateau", USUAL.atPlateauCmH2O());
        if (closing > opening) {
            complaints.add(o.at(), "lung cannot close at %s cmH2O and open at %s cmH2O".formatted(plain(closing), plain(opening)), "What closes it lies below what opens it.");
            return lungs;
        }
        if (!(plateau > peep)) {
            complaints.add(o.at(), "the plateau (%s cmH2O) must lie above the PEEP (%s cmH2O)".formatted(plain(plateau), plain(peep)), "Say at which pressures compliance and shunt hold.");
            return lungs;
        }
        return lungs.withRecruitment(new Recruitment(value(o, "share", LungValue.RECRUITABLE, 0, doubts), opening, o.number("opening spread", USUAL.openingSdCmH2O()), closing,
                o.number("closing spread", USUAL.closingSdCmH2O()), o.number("opens in", USUAL.openingS()), o.number("closes in", USUAL.closingS()), o.number("shunt", 0), peep, plateau));
    }

    private static String plain(double v) { return v == Math.rint(v) ? Long.toString((long) v) : Double.toString(Math.rint(v * 100) / 100); }
}
