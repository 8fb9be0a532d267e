package leeway.app.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leeway.core.alarm.Noise;
import leeway.core.kit.Kit;
import leeway.core.kit.Ventilator;
import leeway.core.plan.Library;
import leeway.core.rehearsal.Fault;
import leeway.core.settings.Strategy;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Read;

/** The catalogue as a plan sees it. A sheet of the user's that cannot be read is the user's mistake: {@link Bad}. */
public final class SheetLibrary implements Library {
    private final Catalogue catalogue;

    public SheetLibrary(Catalogue catalogue) { this.catalogue = catalogue; }

    /** A sheet that was needed is wrong. */
    public static final class Bad extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final transient List<Complaint> complaints;

        Bad(List<Complaint> complaints) {
            super(complaints.get(0).line());
            this.complaints = List.copyOf(complaints);
        }

        public List<Complaint> complaints() { return complaints; }
    }

    private <T> T sheet(SheetKind<T> kind, String name) {
        Read<T> read = catalogue.read(kind, name);
        if (read instanceof Read.Bad<T> bad) throw new Bad(bad.complaints());
        return read.good().orElseThrow();
    }

    @Override public Strategy strategy(String name) { return sheet(Kinds.STRATEGY, name); }

    @Override public List<Fault> faults() {
        List<Fault> all = new ArrayList<>();
        for (String name : catalogue.names(Kinds.FAULT.word())) all.add(sheet(Kinds.FAULT, name));
        return List.copyOf(all);
    }

    @Override public Map<String, Noise> noises() {
        Map<String, Noise> all = new TreeMap<>();
        for (String name : catalogue.names(Kinds.NOISE.word())) all.put(name, sheet(Kinds.NOISE, name));
        return all;
    }

    @Override public Optional<Kit> kit(String name) {
        Kit kit = sheet(Kinds.KIT, name);
        List<Kit.Pack> packs = kit.packs().stream().map(p -> new Kit.Pack(p.name(), p.sheet(), Optional.of(sheet(Kinds.BATTERY, p.sheet())), p.massKg(), p.count())).toList();
        return Optional.of(new Kit(kit.name(), kit.items(), packs, kit.source()));
    }

    /** A sheet that cannot be read is no choice, and no hindrance to a plan that does not name it. */
    @Override public List<Ventilator> ventilators() { return catalogue.names(Kinds.VENTILATOR.word()).stream().flatMap(name -> catalogue.read(Kinds.VENTILATOR, name).good().stream()).toList(); }
}
