package leeway.core.calc;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All calcs. */
public final class Calcs {
    private static final List<Calc> ALL = List.of(
            new WeightCalc(),
            new CylinderCalc(),
            new GaugeCalc(),
            new DurationCalc(),
            new DrawCalc(),
            new BlendCalc(),
            new AlveolarCalc(),
            new SaturationCalc(),
            new Po2Calc(),
            new OxygenContentCalc(),
            new Co2ContentCalc(),
            new AcidBaseCalc(),
            new ShuntPo2Calc(),
            new RateForCo2Calc(),
            new DeadSpaceCalc(),
            new MetabolismCalc(),
            new LungVolumeCalc(),
            new BarometerCalc(),
            new TrappedCalc(),
            new PowerCalc(),
            new TubeCalc(),
            new VolumeCalc());

    private Calcs() { }

    public static List<Calc> all() { return ALL; }

    public static Optional<Calc> find(String name) { return ALL.stream().filter(c -> c.name().equals(name)).findFirst(); }

    /** Runs one calc on what was given, as written by the user: key without dashes to text. */
    public static Outcome run(String name, Map<String, String> given, Sheets sheets) {
        Optional<Calc> calc = find(name);
        if (calc.isEmpty()) {
            List<String> names = ALL.stream().map(Calc::name).toList();
            return new Outcome.Wrong(List.of(new CalcComplaint("", "there is no calc \"" + (name.length() > 40 ? name.substring(0, 40) + "…" : name) + "\"", "There are " + String.join(", ", names) + ".", Nearest.of(name, names))));
        }
        Given read = new Given(calc.get(), given, sheets);
        if (!read.complaints().isEmpty()) return new Outcome.Wrong(read.complaints());
        CalcResult result = calc.get().of(read);
        return read.complaints().isEmpty() ? new Outcome.Done(result) : new Outcome.Wrong(read.complaints());
    }
}
