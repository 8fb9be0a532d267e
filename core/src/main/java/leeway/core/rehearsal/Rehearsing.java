package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.alarm.Ahead;
import leeway.core.alarm.AlarmLimit;
import leeway.core.rehearsal.Harm.Measure;
import leeway.core.rehearsal.Rehearsal.Moment;
import leeway.core.rehearsal.Rehearsal.Spoken;
import leeway.core.run.Change;
import leeway.core.run.Sink;

/**
 * One fault at one moment: the branch without help until harm, then branches with the remedy at later and later moments.
 * <p>Rescue-by is searched ({@link Rescue}): the branch without help goes on to a moment, is copied, gets the remedy there, and runs
 * until harm, or until all measures have moved away from harm for some breaths after the remedy is in full force. So the fall of
 * saturation after the remedy counts.
 * <p>Leaves out: what a crew does that the sheet does not say, and a remedy that fails.
 */
final class Rehearsing {
    /** Harm that comes at most this much earlier than without the fault is not its; s. Common practice, no source. */
    private static final double SAME_S = 5;
    /** Where gas or power ends by itself, a remedy is judged until so long before the harm that this does; s. Common practice, no source. */
    private static final double BEFORE_S = 60;
    /** A remedy is judged for at least this long; s. */
    private static final double AFTER_S = 600;

    private final Stage stage;
    private final Nominal nominal;
    private final int leg;
    private final Checkpoint start;
    private final boolean thorough;
    private final double atS;
    private final double windowEndS;
    private final Thresholds thresholds;
    private final double[] nominalS;
    private final Ahead.Swings ahead;
    private double withoutS = Double.NaN;

    /** @param thorough whether a branch runs on to the end of the search even where nothing moves any more */
    Rehearsing(Stage stage, Nominal nominal, int leg, Checkpoint start, boolean thorough) {
        this.thorough = thorough;
        this.stage = stage;
        this.nominal = nominal;
        this.leg = leg;
        this.start = start;
        atS = start.tS();
        var policy = stage.transport().policy();
        windowEndS = atS + policy.harm().searchMin() * 60;
        var patient = stage.transport().patient();
        thresholds = Thresholds.at(policy.harm(), stage.transport().illness().group().equals("head injury"), 1 - patient.carboxyhaemoglobin() - patient.methaemoglobin(), stage.predictedKg(), start.now());
        nominalS = nominal.heardFromS(atS);
        ahead = nominal.ahead().until(windowEndS);
    }

    /** Where and when it strikes. */
    Moment moment() { return new Moment(leg, stage.transport().legs().get(leg).name(), atS); }

    Trial trial(Fault fault, List<Effect> together) {
        return trial(fault, together, true, fault.crew().drawnS(stage.draw(), fault.name()));
    }

    /**
     * @param together     effects of what it is rehearsed with
     * @param endsTogether whether the remedy ends those too
     * @param crewS        crew time
     */
    Trial trial(Fault fault, List<Effect> together, boolean endsTogether, double crewS) {
        KitFacts kit = stage.facts(leg);
        List<Change> changes = new ArrayList<>(Strike.changes(fault.effects(), atS, kit, stage.script()));
        changes.replaceAll(c -> Drain.whileInUse(c, stage, leg));
        List<Change> others = Strike.changes(together, atS, kit, stage.script());
        Checkpoint struck = start.branch();
        changes.forEach(struck.script()::add);
        others.forEach(struck.script()::add);
        if (endsTogether) changes.addAll(others);
        Checkpoint branch = struck.branch();

        Watch watch = new Watch(thresholds, start.now(), nominalS);
        boolean drains = fault.group() == Fault.Group.SUPPLY || fault.group() == Fault.Group.POWER;
        Drain drain = drains ? new Drain(stage, nominal, leg, branch.now(), branch.script(), changes) : null;
        // where gas or power ends by itself, a fault that takes more of it brings that end forward: such branches run on
        double restsFromS = thorough || nominal.suppliesEndS(atS) < atS + 2 * (windowEndS - atS) ? Double.POSITIVE_INFINITY : atS + Math.max(Strike.settledS(fault.effects()), Strike.settledS(together));
        watch.restingFrom(restsFromS, windowEndS, stage.speaking(), drain, new Pace(stage, nominal, leg, start.now(), windowEndS), branch.script(), ahead);
        Trail trail = new Trail(drain == null ? watch : drain.beside(watch), watch, branch.script());
        stage.loop().to(windowEndS, branch.now(), branch.script(), trail);
        // stores may end later than harm is looked for in the patient, and the legs' ends are known
        if (drain != null && watch.harm == null) {
            double untilS = drain.mayEndS(branch.now());
            if (untilS > branch.now().tS) stage.loop().to(Math.min(untilS, stage.legEndS(leg)), branch.now(), branch.script(), drain.beside(watch));
            if (untilS > branch.now().tS && watch.harm == null) stage.loop().to(untilS, branch.now(), branch.script(), drain.alone(watch));
        }

        Optional<Spoken> spoken = watch.alarm < 0 ? Optional.empty() : Optional.of(spoken(watch));
        if (drain != null && drain.endsFirst(watch)) {
            Harm harm = new Harm(Measure.SUPPLY, drain.beforeLegS() / 60, drain.endS() - atS);
            return new Trial(moment(), spoken, Optional.of(harm), OptionalDouble.of(drain.rescueByS()), crewS, Optional.empty(), true);
        }
        // what would have come without the fault too is not its harm
        if (watch.harm != null && watch.harmS >= harmWithoutS() - SAME_S) watch.harm = null;
        if (watch.harm == null) return Trial.harmless(moment(), spoken, crewS, watch, drain != null && nominal.suppliesEndS(0) >= nominal.journeyS());
        Harm harm = new Harm(watch.harm, watch.threshold(), watch.harmS - atS);
        return new Trial(moment(), spoken, Optional.of(harm), OptionalDouble.of(rescueByS(fault, changes, struck, trail, watch, kit)), crewS, Optional.empty(), false);
    }

    /** When harm comes without any fault, because gas or power ends; infinite where it does not. */
    private double harmWithoutS() {
        if (nominal.suppliesEndS(atS) >= windowEndS) return Double.POSITIVE_INFINITY;
        if (Double.isNaN(withoutS)) {
            Checkpoint alone = start.branch();
            Watch watch = new Watch(thresholds, start.now(), nominalS);
            stage.loop().to(windowEndS, alone.now(), alone.script(), watch);
            withoutS = watch.harmS;
        }
        return withoutS;
    }

    private Spoken spoken(Watch watch) {
        AlarmLimit limit = stage.speaking().limits().get(watch.alarm);
        return new Spoken(limit.condition(), limit.from(), watch.alarmS - atS, limit.priority());
    }

    private double rescueByS(Fault fault, List<Change> changes, Checkpoint struck, Trail trail, Watch watch, KitFacts kit) {
        Checkpoint[] good = {struck};
        return new Rescue(watch.course(), watch.harm.ordinal(), watch.harmS).byS(atS, tS -> {
            Checkpoint at = trail.before(tS, good[0]);
            if (tS > at.tS()) {
                at = at.branch();
                stage.loop().to(tS, at.now(), at.script(), Sink.NONE);
            }
            Watch after = treated(fault, changes, at, watch, kit);
            if (after.harm == null) good[0] = at;
            return new Rescue.Tried(after.harm != null, after.leastRoom(watch.harm));
        });
    }

    /** What comes of the remedy at this moment of the branch without help. */
    private Watch treated(Fault fault, List<Change> changes, Checkpoint at, Watch watch, KitFacts kit) {
        Checkpoint treated = at.branch();
        if (fault.remedyEnds()) {
            for (Change c : changes) treated.script().end(c, at.tS());
        }
        for (Change c : Strike.changes(fault.remedy(), at.tS(), kit, stage.script())) treated.script().add(c);
        double settledS = at.tS() + Strike.settledS(fault.remedy());
        if (!fault.remedyEnds()) settledS = Math.max(settledS, atS + Strike.settledS(fault.effects()));
        Watch after = watch.remedied(treated.now(), settledS);
        // a remedy late in the window is judged over the same length as one early in it would be
        double untilS = Math.max(windowEndS, at.tS() + AFTER_S);
        if (nominal.suppliesEndS(atS) < untilS) untilS = Math.max(at.tS(), Math.min(harmWithoutS(), Math.max(nominal.suppliesEndS(atS), windowEndS)) - BEFORE_S);
        stage.loop().to(untilS, treated.now(), treated.script(), after);
        return after;
    }
}
