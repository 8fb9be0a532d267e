package leeway.files.rehearsal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import leeway.core.alarm.Noise;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.transport.TransportReader;

/** Transports for rehearsals in tests, with the sheets that come along. */
final class Nights {
    static final Catalogue CATALOGUE = Catalogue.builtIn();
    static final List<Fault> FAULTS = faults(CATALOGUE);
    static final Map<String, Noise> NOISES = noises();
    /** A short journey on which little changes but the patient. */
    static final String SHORT = """
            transport: short
            patient: {sex: female, height: 170 cm, age: 40 years, illness: healthy lungs, airway: tracheal tube 7.5 mm, lungs: {effort: none}}
            ventilator: example pneumatic
            circuit: single limb adult
            filter: adult HME filter
            settings: {mode: A/C-VC, fio2: 60 %, peep: 5 cmH2O}
            oxygen: [{name: bottle, cylinder: 10 L, pressure: 200 bar, read at: 15 Cel, count: 2}]
            legs: [{leg: road, takes: 40 min, at worst: 60 min, oxygen: bottle}]
            """;

    private Nights() { }

    static List<Fault> faults(Catalogue catalogue) {
        List<Fault> all = new ArrayList<>();
        for (String name : catalogue.names("fault")) all.add(fault(catalogue, name));
        return List.copyOf(all);
    }

    static Fault fault(Catalogue catalogue, String name) { return catalogue.read(Kinds.FAULT, name).good().orElseThrow(() -> new AssertionError(catalogue.read(Kinds.FAULT, name).problems())); }

    private static Map<String, Noise> noises() {
        Map<String, Noise> all = new TreeMap<>();
        for (String name : CATALOGUE.names("noise")) all.put(name, CATALOGUE.read(Kinds.NOISE, name).good().orElseThrow());
        return all;
    }

    static Transport night() {
        Path root = Path.of("").toAbsolutePath();
        while (!root.resolve("examples").toFile().isDirectory()) root = root.getParent();
        return TransportReader.read(root.resolve("examples/night-transfer.yaml"), CATALOGUE).good().orElseThrow();
    }

    static Transport read(String text) {
        var read = TransportReader.read("test.yaml", text, CATALOGUE);
        return read.good().orElseThrow(() -> new AssertionError(read.problems().toString()));
    }

    static Settings settings(Transport t) {
        return Start.of(t, Ventilated.of(t), name -> CATALOGUE.read(Kinds.STRATEGY, name).good().orElseThrow()).settings();
    }

    static Rehearse rehearse(Transport t, List<Fault> faults, OptionalDouble atS) {
        return Rehearse.of(Journeys.of(t, settings(t), NOISES), faults, FAULTS, atS);
    }

    /** One fault on a transport of this text. */
    static Rehearsal one(String text, String fault) {
        return rehearse(read(text), List.of(fault(CATALOGUE, fault)), OptionalDouble.empty()).central().get(0);
    }
}
