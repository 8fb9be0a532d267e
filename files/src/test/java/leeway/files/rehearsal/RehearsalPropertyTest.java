package leeway.files.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import leeway.core.kit.AlarmCondition;
import leeway.core.rehearsal.Harm;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Pair;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearsal.Coverage;
import leeway.core.rehearsal.Rehearse;
import leeway.core.rehearsal.Rehearse.Drawn;
import leeway.core.run.Draw;
import leeway.core.transport.AlarmChange;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every rehearsal owes, on the first example and on patients who differ in one thing. */
class RehearsalPropertyTest {
    private static final List<Rehearsal> NIGHT = Nights.rehearse(Nights.night(), Nights.FAULTS, OptionalDouble.empty()).central();
    private static final String PATIENT = "{sex: female, height: 170 cm, age: 40 years, illness: healthy lungs, airway: tracheal tube 7.5 mm, lungs: {effort: none}}";
    private static final String OFF = "disconnection at the patient";

    private static Rehearsal night(String fault) { return NIGHT.stream().filter(r -> r.fault().name().equals(fault)).findFirst().orElseThrow(); }

    @Test void everyFaultHasOneRow() {
        assertThat(NIGHT).extracting(r -> r.fault().name()).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(Nights.CATALOGUE.names("fault"));
        assertThat(NIGHT).hasSizeGreaterThanOrEqualTo(54);
        assertThat(NIGHT).allSatisfy(r -> {
            assertThat(r.fault().steps()).isNotEmpty();
            assertThat(r.why()).endsWith(".").hasSizeGreaterThan(20);
            assertThat(r.leg().isEmpty()).isEqualTo(r.coverage() == Coverage.NOT_IN_THIS_KIT);
        });
    }

    @Test void theMarginIsExactlyWhatItsPartsSay() {
        List<Rehearsal> timed = NIGHT.stream().filter(r -> r.coverage() == Coverage.IN_TIME || r.coverage() == Coverage.TOO_LATE).toList();
        assertThat(timed).hasSizeGreaterThan(10).allSatisfy(r -> {
            assertThat(r.marginS().orElseThrow()).isCloseTo(r.rescueByS().orElseThrow() - r.alarm().orElseThrow().afterS() - r.crewTimeS(), within(1e-9));
            assertThat(r.covered()).contains(r.marginS().orElseThrow() >= 0);
            assertThat(r.alarm().orElseThrow().afterS()).isBetween(0.0, r.harm().orElseThrow().afterS());
            assertThat(r.rescueByS().orElseThrow()).isBetween(0.0, r.harm().orElseThrow().afterS());
        });
    }

    @Test void rowsStandInTheirOrder() {
        int last = -1;
        double before = Double.NEGATIVE_INFINITY;
        for (Rehearsal r : NIGHT) {
            int group = switch (r.coverage()) {
                case SILENT -> 0;
                case TOO_LATE -> 1;
                case IN_TIME -> 2;
                case NO_HARM -> 3;
                case NOT_IN_THIS_KIT -> 4;
            };
            assertThat(group).as(r.fault().name()).isGreaterThanOrEqualTo(last);
            double by = group == 0 ? r.harm().orElseThrow().afterS() : r.marginS().orElse(0);
            if (group == last) assertThat(by).as(r.fault().name()).isGreaterThanOrEqualTo(before);
            last = group;
            before = by;
        }
    }

    @Test void aDisconnectionIsHeardWithinSeconds() {
        assertThat(night(OFF).alarm().orElseThrow().afterS()).isLessThan(15);
        assertThat(night(OFF).coverage()).isEqualTo(Coverage.IN_TIME);
    }

    @Test void atLeastThreeFaultsAreUncoveredOnTheDefaultKit() {
        assertThat(NIGHT.stream().filter(r -> r.coverage().uncovered())).hasSizeGreaterThanOrEqualTo(3);
    }

    @Test void whereNothingMovesAnyMoreTheRestIsNotRunAndNothingIsMissed() {
        Rehearse quick = Rehearse.of(Journeys.of(Nights.night(), Nights.settings(Nights.night()), Nights.NOISES), Nights.FAULTS, Nights.FAULTS, OptionalDouble.empty());
        assertThat(quick.thoroughly().central()).extracting(Rehearsal::byLeg).containsExactlyElementsOf(NIGHT.stream().map(Rehearsal::byLeg).toList());
    }

    @Test void aRowWithoutHarmIsOfTheLegThatComesNearestAndSaysHowNear() {
        Rehearsal r = NIGHT.stream().filter(x -> x.fault().name().equals("PEEP lost")).findFirst().orElseThrow();
        assertThat(r.coverage()).isEqualTo(Coverage.NO_HARM);
        assertThat(r.leg().orElseThrow().name()).as("least oxygen is aloft").isEqualTo("flight");
        assertThat(r.near().orElseThrow().measure()).isEqualTo(Harm.Measure.SATURATION);
        assertThat(r.near().orElseThrow().value()).isBetween(0.85, 0.875);
        assertThat(r.why()).contains("though saturation goes to 86");
    }

    @Test void aSlowDrainIsFollowedToTheEndOfTheLeg() {
        Rehearsal r = NIGHT.stream().filter(x -> x.fault().name().equals("oxygen hose leak")).findFirst().orElseThrow();
        assertThat(r.harm().orElseThrow().measure()).isEqualTo(Harm.Measure.SUPPLY);
        assertThat(r.harm().orElseThrow().afterS()).as("later than harm is looked for in the patient").isGreaterThan(30 * 60);
    }

    /** On the ward the portable cylinder loses what the flight needs, while ward and road get by. Once "no harm". */
    @Test void aDrainIsFollowedToLaterLegsThatNeedTheSameStore() {
        String text = Nights.SHORT.replace("oxygen: [{name: bottle, cylinder: 10 L, pressure: 200 bar, read at: 15 Cel, count: 2}]", """
                oxygen: [{name: portable, cylinder: 4 L, pressure: 200 bar, read at: 15 Cel}, {name: vehicle, cylinder: 10 L, pressure: 200 bar, read at: 15 Cel, count: 2}]""")
                .replace("legs: [{leg: road, takes: 40 min, at worst: 60 min, oxygen: bottle}]", """
                legs: [{leg: ward, takes: 30 min, oxygen: portable}, {leg: road, takes: 40 min, oxygen: vehicle}, {leg: flight, takes: 95 min, oxygen: portable}]""");
        Rehearsal leak = Nights.one(text, "oxygen hose leak");
        Rehearsal.ByLeg ward = leak.byLeg().get(0);
        assertThat(ward.harm().orElseThrow().measure()).isEqualTo(Harm.Measure.SUPPLY);
        assertThat(ward.leg().atS() + ward.harm().get().afterS()).as("aloft").isBetween(70.0 * 60, 165.0 * 60);
        assertThat(ward.rescueByS().orElseThrow()).as("while it drains, on the ward").isBetween(5.0 * 60, 30.0 * 60);
        assertThat(leak.byLeg().get(1).harm()).as("the vehicle has plenty").isEmpty();
        Rehearsal pure = NIGHT.stream().filter(x -> x.fault().name().equals("hundred percent left on")).findFirst().orElseThrow();
        assertThat(pure.why()).contains("gas and charge last to the end of the journey");
    }

    /** A pack that has to do alone what the vehicle's power did lacks it later, where nothing else is. */
    @Test void powerLostOnOneLegIsFoundMissingOnTheNext() {
        String text = Nights.SHORT.replace("example pneumatic", "example turbine").replace("legs: [{leg: road, takes: 40 min, at worst: 60 min, oxygen: bottle}]", """
                power: [{name: own, battery: example pack, charge: 100 %, age: 3 years}, {name: mains, mains: yes}]
                legs: [{leg: road, takes: 120 min, at worst: 130 min, oxygen: bottle, power: mains}, {leg: on foot, takes: 90 min, at worst: 95 min, oxygen: bottle, power: own}]""")
                .replace("count: 2", "count: 6");
        Rehearsal lost = Nights.one(text, "external power lost");
        assertThat(lost.harm().orElseThrow().measure()).isEqualTo(Harm.Measure.SUPPLY);
        assertThat(lost.why()).contains("what the leg on foot draws on ends");
        assertThat(lost.rescueByS().orElseThrow()).isLessThan(120 * 60);
        assertThat(lost.alarm().orElseThrow().afterS()).isLessThan(10);
    }

    @Test void anOpenAirwayDrawsInRoomAirAsASwallowedTubeDoes() {
        double open = NIGHT.stream().filter(x -> x.fault().name().equals(OFF)).findFirst().orElseThrow().harm().orElseThrow().afterS();
        double oesophagus = NIGHT.stream().filter(x -> x.fault().name().equals("tube in the oesophagus")).findFirst().orElseThrow().harm().orElseThrow().afterS();
        assertThat(open).as("no ventilation in both, room air at both mouths").isCloseTo(oesophagus, org.assertj.core.api.Assertions.within(5.0));
    }

    @Test void whatComesWithoutTheFaultIsNotItsHarm() {
        Transport t = Nights.read(Nights.SHORT.replace("cylinder: 10 L, pressure: 200 bar, read at: 15 Cel, count: 2", "cylinder: 2 L, pressure: 40 bar, read at: 15 Cel"));
        Rehearse rehearse = Rehearse.of(Journeys.of(t, Nights.settings(t), Nights.NOISES), Nights.FAULTS, Nights.FAULTS, OptionalDouble.empty());
        double endS = rehearse.suppliesEndS().orElseThrow();
        assertThat(endS).isBetween(60.0, 40 * 60.0);
        List<Rehearsal> rows = rehearse.central();
        assertThat(rows).filteredOn(r -> r.leg().isPresent()).allSatisfy(r -> assertThat(r.leg().get().atS()).as(r.fault().name()).isLessThan(endS));
        Rehearsal harmless = rows.stream().filter(r -> r.fault().name().equals("oxygen cell drifts") || r.fault().name().equals("monitor fails")).findFirst().orElseThrow();
        assertThat(harmless.coverage()).as(harmless.why()).isEqualTo(Coverage.NO_HARM);
        assertThat(rows.stream().filter(r -> r.coverage().uncovered()).count()).isLessThan(20);
        assertThat(rows.stream().filter(r -> r.fault().name().equals(OFF)).findFirst().orElseThrow().harm()).isPresent();
        assertThat(Rehearse.of(Journeys.of(Nights.night(), Nights.settings(Nights.night()), Nights.NOISES), Nights.FAULTS, Nights.FAULTS, OptionalDouble.empty()).suppliesEndS()).isEmpty();
    }

    @Test void twoFaultsThatAreCoveredAloneCanBeUncoveredTogether() {
        List<Fault> some = NIGHT.stream().filter(r -> List.of("cuff leak", "monitor fails", "tube in the right main bronchus", "pressure line kinked").contains(r.fault().name()))
                .map(Rehearsal::fault).toList();
        Rehearse rehearse = Rehearse.of(Journeys.of(Nights.night(), Nights.settings(Nights.night()), Nights.NOISES), some, Nights.FAULTS, OptionalDouble.empty());
        List<Rehearsal> alone = rehearse.central();
        List<Pair> pairs = rehearse.pairs(alone);
        assertThat(pairs).isNotEmpty().allSatisfy(p -> {
            Rehearsal first = alone.stream().filter(r -> r.fault().name().equals(p.first())).findFirst().orElseThrow(), second = alone.stream().filter(r -> r.fault().name().equals(p.second())).findFirst().orElseThrow();
            assertThat(first.coverage()).isEqualTo(Coverage.IN_TIME);
            assertThat(second.coverage()).isIn(Coverage.IN_TIME, Coverage.NO_HARM);
            assertThat(p.coverage().uncovered()).isTrue();
            assertThat(p.why()).endsWith(".");
            if (p.marginS().isPresent()) assertThat(p.marginS().getAsDouble()).isNegative().isLessThanOrEqualTo(first.marginS().orElseThrow());
        });
        assertThat(rehearse.pairs(alone)).isEqualTo(pairs);
    }

    @Test void aWiderLimitNeverSpeaksSooner() {
        double before = 0;
        for (int low : List.of(14, 10, 6, 3)) {
            Rehearsal r = Nights.one(Nights.SHORT + "alarms: {airway pressure low: {low: %d cmH2O}}\n".formatted(low), "leak in the circuit");
            double heardS = r.alarm().or(r::lateAlarm).map(a -> a.afterS()).orElse(Double.POSITIVE_INFINITY);
            assertThat(heardS).as("low limit %d cmH2O", low).isGreaterThanOrEqualTo(before);
            before = heardS;
        }
    }

    @Test void theAudioPauseHas110SecondsLeft() {
        Rehearsal paused = night("audio paused");
        assertThat(paused.alarm().or(paused::lateAlarm).orElseThrow().afterS()).isCloseTo(110, within(0.05));
        assertThat(paused.harm()).isEqualTo(night(OFF).harm());
        Rehearsal healthy = Nights.one(Nights.SHORT, "audio paused");
        assertThat(healthy.alarm().orElseThrow().afterS()).isCloseTo(110, within(0.05));
        assertThat(healthy.marginS().orElseThrow()).isLessThan(Nights.one(Nights.SHORT, OFF).marginS().orElseThrow() - 90);
    }

    @Test void whatCannotHappenSaysWhy() {
        assertThat(NIGHT.stream().filter(r -> r.coverage() == Coverage.NOT_IN_THIS_KIT)).isNotEmpty().allSatisfy(r -> {
            assertThat(r.why()).startsWith("It cannot happen here: ");
            assertThat(r.marginS()).isEmpty();
        });
    }

    @Test void removingAnAlarmNeverRaisesAMargin() {
        Transport t = Nights.night();
        List<Fault> some = NIGHT.stream().filter(r -> r.harm().isPresent()).map(Rehearsal::fault).filter(f -> f.with().isEmpty()).toList();
        for (AlarmCondition off : List.of(AlarmCondition.AIRWAY_PRESSURE_LOW, AlarmCondition.APNOEA, AlarmCondition.AIRWAY_PRESSURE_HIGH, AlarmCondition.SATURATION_LOW)) {
            Map<AlarmCondition, AlarmChange> alarms = new HashMap<>(t.alarms());
            alarms.put(off, new AlarmChange(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), true));
            Transport without = new Transport(t.title(), t.patient(), t.illness(), t.airway(), t.ventilator(), t.circuit(), t.filter(), t.monitor(), t.strategy(), t.prescribed(), t.oxygen(),
                    t.power(), t.legs(), t.events(), t.whatIf(), t.policy(), alarms, t.delayCorrelation(), t.kit(), t.device(), t.assumed(), t.unused(), t.sourceHash());
            for (Rehearsal r : Nights.rehearse(without, some, OptionalDouble.empty()).central()) {
                Rehearsal full = night(r.fault().name());
                if (r.marginS().isPresent()) assertThat(r.marginS().getAsDouble()).as("%s without %s", r.fault().name(), off.words()).isLessThanOrEqualTo(full.marginS().orElseThrow() + 1e-9);
                else assertThat(r.coverage()).as("%s without %s", r.fault().name(), off.words()).isEqualTo(Coverage.SILENT);
            }
        }
    }

    @Test void moreOxygenBeforeTheFaultNeverBringsHarmEarlier() {
        double before = 0;
        for (int fio2 = 50; fio2 <= 100; fio2 += 10) {
            Rehearsal r = Nights.one(Nights.SHORT.replace("fio2: 60 %", "fio2: " + fio2 + " %"), OFF);
            double harmS = r.harm().map(h -> h.afterS()).orElse(Double.POSITIVE_INFINITY);
            assertThat(harmS).as("FiO2 %d %%", fio2).isGreaterThanOrEqualTo(before);
            before = harmS;
        }
    }

    @ParameterizedTest @ValueSource(strings = {"severe", "infant", "obese"})
    void whoIsSickSmallOrHeavyHasLessMargin(String who) {
        String text = switch (who) {
            case "severe" -> Nights.SHORT.replace("healthy lungs", "severe ARDS").replace("peep: 5", "peep: 12");
            case "infant" -> Nights.SHORT.replace(PATIENT, "{sex: male, weight: 6 kg, age: 4 months, illness: healthy lungs, airway: tracheal tube 3.5 mm, lungs: {effort: none}}")
                    .replace("example pneumatic", "example turbine").replace("single limb adult", "single limb infant").replace("adult HME filter", "infant HME filter");
            default -> Nights.SHORT.replace("healthy lungs", "obesity").replace("age: 40 years", "weight: 150 kg, age: 40 years").replace("peep: 5", "peep: 10");
        };
        Rehearsal healthy = Nights.one(who.equals("infant") ? Nights.SHORT.replace("example pneumatic", "example turbine") : Nights.SHORT, OFF);
        Rehearsal other = Nights.one(text, OFF);
        assertThat(other.marginS().orElseThrow()).as("%s: %s; healthy: %s", who, other.why(), healthy.why()).isLessThan(healthy.marginS().orElseThrow() - 20);
    }

    @Test void theSameSeedGivesTheSameAnswerInAnyOrder() {
        Transport t = Nights.night();
        List<Fault> few = List.of(night(OFF).fault(), night("tube kinked").fault());
        Rehearse rehearse = Rehearse.of(Journeys.of(t, Nights.settings(t), Nights.NOISES), few, Nights.FAULTS, OptionalDouble.of(600));
        List<Rehearsal> central = rehearse.central();
        List<Integer> numbers = new ArrayList<>(List.of(1, 2, 3, 4, 5, 6));
        Map<Integer, Drawn> forward = new HashMap<>();
        for (int d : numbers) forward.put(d, rehearse.draw(new Draw(9, d), central));
        Collections.reverse(numbers);
        Set<Double> differ = new HashSet<>();
        for (int d : numbers) {
            Drawn again = rehearse.draw(new Draw(9, d), central);
            assertThat(again.margins()).as("draw %d", d).containsExactly(forward.get(d).margins());
            differ.add(again.margins()[0]);
        }
        assertThat(differ).as("draws differ from each other").hasSizeGreaterThan(3);
    }

    @Test void aUsersOwnFaultIsRehearsed(@TempDir Path folder) throws Exception {
        Files.writeString(folder.resolve("mine.yaml"), """
                fault: sleeve catches the hose
                source: an incident of ours
                group: circuit
                priority: high
                first sign: A tug at the hose.
                effects:
                  - {what: leak circuit, by: 60 L/min, after: 5 s}
                  - {what: filter resistance, times: 2}
                crew time: {median: 12 s, at worst: 30 s, source: timed in our training}
                do: [Push it back on.]
                """);
        Catalogue own = Catalogue.of(List.of(folder));
        assertThat(own.names("fault")).contains("sleeve catches the hose");
        Rehearsal r = Nights.rehearse(Nights.night(), List.of(Nights.fault(own, "sleeve catches the hose")), OptionalDouble.empty()).central().get(0);
        assertThat(r.harm()).isPresent();
        assertThat(r.alarm().orElseThrow().afterS()).isGreaterThan(5);
        assertThat(r.crewTimeS()).isEqualTo(12);
    }
}
