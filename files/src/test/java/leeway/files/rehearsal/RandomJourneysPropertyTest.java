package leeway.files.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import leeway.core.rehearsal.Effect;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Harm;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearsal.Coverage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every rehearsal owes whatever the patient, the kit and the journey: the same logic on journeys drawn by a seed. */
class RandomJourneysPropertyTest {
    private static final String OFF = "disconnection at the patient";
    private static final List<String> ILLNESSES = List.of("healthy lungs", "moderate pneumonia", "severe ARDS", "COPD exacerbation", "asthma attack", "obesity", "pulmonary oedema", "head injury", "chest injury", "blood loss");
    private static final List<String> OFTEN = List.of(OFF, "disconnection at the ventilator", "tube kinked", "leak in the circuit", "cuff leak", "bronchospasm", "tube in the oesophagus", "tube slipped out",
            "ventilator stops", "filter blocked", "oxygen cylinder closed", "patient valve stuck closed", "PEEP lost", "tension pneumothorax", "overventilation");

    private static <T> T one(SplittableRandom r, List<T> of) { return of.get(r.nextInt(of.size())); }

    /** Nobody breathes, so that what is heard comes of the fault; enough gas, so that it does not end by itself. */
    private static String journey(SplittableRandom r, int fio2, String alarms) {
        String illness = one(r, ILLNESSES), ventilator = one(r, List.of("example pneumatic", "example turbine"));
        int cm = r.nextInt(150, 196), years = r.nextInt(18, 90), kg = (int) (22 * cm * cm / 1e4 * r.nextDouble(0.8, illness.equals("obesity") ? 2.2 : 1.5));
        StringBuilder legs = new StringBuilder();
        for (int leg = 1, n = r.nextInt(1, 4); leg <= n; leg++) {
            int min = r.nextInt(8, 45);
            legs.append(String.format(Locale.ROOT, "%s{leg: stretch %d, takes: %d min, at worst: %d min, oxygen: bottle%s}", leg > 1 ? ", " : "", leg, min, 2 * min, r.nextInt(3) == 0 ? ", altitude: %d m".formatted(r.nextInt(500, 2400)) : ""));
        }
        return String.format(Locale.ROOT, """
                transport: drawn
                patient: {sex: %s, height: %d cm, weight: %d kg, age: %d years, illness: "%s", airway: tracheal tube %s mm, lungs: {effort: none}}
                ventilator: %s
                circuit: single limb adult
                filter: adult HME filter
                settings: {mode: %s, fio2: %d %%, peep: %d cmH2O}
                oxygen: [{name: bottle, cylinder: 10 L, pressure: 200 bar, read at: 15 Cel, count: 6}]
                legs: [%s]
                %s""", one(r, List.of("female", "male")), cm, kg, years, illness, one(r, List.of("7.0", "7.5", "8.0")), ventilator, one(r, List.of("A/C-VC", "A/C-PC")), fio2, r.nextInt(5, 13), legs, alarms);
    }

    private static List<Rehearsal> rehearse(String text, List<Fault> faults, OptionalDouble atS) { return Nights.rehearse(Nights.read(text), faults, atS).central(); }

    private static Fault named(String name) { return Nights.fault(Nights.CATALOGUE, name); }

    private static Fault with(Fault f, List<Effect> effects) {
        return new Fault(f.name(), f.group(), f.firstSign(), f.priority(), f.needs(), effects, f.remedy(), f.remedyEnds(), f.with(), f.crew(), f.steps(), f.source());
    }

    private static Fault later(Fault f, double byS) {
        return with(f, f.effects().stream().map(e -> new Effect(e.knob(), e.on(), e.how(), e.value(), e.from(), e.afterS() + byS, e.rampS(), e.forS(), e.only())).toList());
    }

    private static int fio2(SplittableRandom r) { return r.nextInt(10, 21) * 5; }

    /** Blood that keeps its oxygen holds less carbon dioxide (Haldane), so with more oxygen carbon dioxide may come a little sooner; at most this is allowed for. */
    private static final double HALDANE = 0.9;

    private static boolean byCo2(Rehearsal r) { return r.harm().isPresent() && (r.harm().get().measure() == Harm.Measure.PACO2 || r.harm().get().measure() == Harm.Measure.PH); }

    private static double heardS(Rehearsal r) { return r.alarm().or(r::lateAlarm).map(a -> a.afterS()).orElse(Double.POSITIVE_INFINITY); }

    @ParameterizedTest @ValueSource(longs = {11, 12, 13})
    void neitherAlarmNorHarmComesBeforeItsCause(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        String text = journey(r, fio2(r), "");
        double byS = r.nextInt(20, 100);
        List<Fault> faults = OFTEN.stream().map(n -> later(named(n), byS)).toList();
        List<Rehearsal> rows = rehearse(text, faults, OptionalDouble.empty());
        assertThat(rows).filteredOn(x -> x.harm().isPresent()).as(text).hasSizeGreaterThan(3);
        for (Rehearsal row : rows) {
            assertThat(heardS(row)).as("%s, %s s after it strikes, is heard; %s", row.fault().name(), byS, text).isGreaterThanOrEqualTo(byS);
            row.harm().ifPresent(h -> assertThat(h.afterS()).as("%s harms; %s", row.fault().name(), text).isGreaterThanOrEqualTo(byS));
        }
    }

    @ParameterizedTest @ValueSource(longs = {21, 23})
    void removingAnAlarmNeverRaisesAMargin(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        long journey = r.nextLong();
        int fio2 = fio2(r);
        List<Fault> faults = OFTEN.stream().map(RandomJourneysPropertyTest::named).toList();
        List<Rehearsal> all = rehearse(journey(new SplittableRandom(journey), fio2, ""), faults, OptionalDouble.empty());
        for (String off : List.of("airway pressure low", "apnoea", "airway pressure high", "saturation low", "end-tidal CO2 low")) {
            String text = journey(new SplittableRandom(journey), fio2, "alarms: {%s: {off: yes}}\n".formatted(off));
            for (Rehearsal less : rehearse(text, faults, OptionalDouble.empty())) {
                Rehearsal full = all.stream().filter(x -> x.fault().name().equals(less.fault().name())).findFirst().orElseThrow();
                if (less.marginS().isPresent()) assertThat(less.marginS().getAsDouble()).as("%s without %s; %s", less.fault().name(), off, text).isLessThanOrEqualTo(full.marginS().orElseThrow() + 1e-9);
                else assertThat(less.coverage()).as("%s without %s; %s", less.fault().name(), off, text).isIn(Coverage.SILENT, full.coverage());
                // where nobody speaks on another leg, that one is the worst now
                if (!less.leg().equals(full.leg())) continue;
                assertThat(less.harm()).as("%s without %s; %s", less.fault().name(), off, text).isEqualTo(full.harm());
                assertThat(heardS(less)).as("%s without %s; %s", less.fault().name(), off, text).isGreaterThanOrEqualTo(heardS(full));
            }
        }
    }

    @ParameterizedTest @ValueSource(longs = {31, 32, 34})
    void moreOxygenBeforeTheFaultNeverBringsHarmEarlier(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        long journey = r.nextLong();
        List<Fault> faults = List.of(named(OFF), named("tube kinked"), named("ventilator stops"));
        List<Double> before = new ArrayList<>(List.of(0.0, 0.0, 0.0));
        for (int fio2 : List.of(50, 65, 80, 100)) {
            String text = journey(new SplittableRandom(journey), fio2, "");
            List<Rehearsal> rows = rehearse(text, faults, OptionalDouble.of(420));
            for (int i = 0; i < faults.size(); i++) {
                String name = faults.get(i).name();
                Rehearsal row = rows.stream().filter(x -> x.fault().name().equals(name)).findFirst().orElseThrow();
                double harmS = row.harm().map(h -> h.afterS()).orElse(Double.POSITIVE_INFINITY);
                assertThat(harmS).as("%s at FiO2 %d %%: %s; %s", name, fio2, row.why(), text).isGreaterThanOrEqualTo(before.get(i) * (byCo2(row) ? HALDANE : 1));
                before.set(i, harmS);
            }
        }
    }

    @ParameterizedTest @ValueSource(longs = {41, 44})
    void aWiderLimitNeverSpeaksSooner(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        long journey = r.nextLong();
        int fio2 = fio2(r);
        double leakS = 0, narrowS = 0;
        for (int step = 0; step < 4; step++) {
            String text = journey(new SplittableRandom(journey), fio2, "alarms: {airway pressure low: {low: %d cmH2O}, airway pressure high: {high: %d cmH2O}}\n".formatted(14 - 4 * step, 50 + 4 * step));
            for (Rehearsal row : rehearse(text, List.of(named("leak in the circuit"), named("bronchospasm")), OptionalDouble.of(420))) {
                boolean leak = row.fault().name().equals("leak in the circuit");
                assertThat(heardS(row)).as("%s, step %d: %s; %s", row.fault().name(), step, row.why(), text).isGreaterThanOrEqualTo(leak ? leakS : narrowS);
                if (leak) leakS = heardS(row);
                else narrowS = heardS(row);
            }
        }
    }

    @ParameterizedTest @ValueSource(longs = {51, 52, 53})
    void anAudioPauseBegunEarlierDelaysTheSoundByWhatIsLeftOfIt(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        String text = journey(r, fio2(r), "");
        double unpausedS = heardS(rehearse(text, List.of(named(OFF)), OptionalDouble.of(420)).get(0));
        assertThat(unpausedS).as(text).isLessThan(60);
        Fault paused = named("audio paused");
        for (int i = 0; i < 4; i++) {
            double leftS = r.nextInt(2, 120);
            Fault left = with(paused, paused.effects().stream().map(e -> new Effect(e.knob(), e.on(), e.how(), e.value(), e.from(), e.afterS(), e.rampS(), leftS, e.only())).toList());
            Rehearsal row = Nights.rehearse(Nights.read(text), List.of(left), OptionalDouble.of(420)).central().get(0);
            assertThat(heardS(row)).as("%s s of the pause left; %s", leftS, text).isCloseTo(Math.max(unpausedS, leftS), within(0.051));
        }
    }
}
