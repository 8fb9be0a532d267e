package leeway.files.transport;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Airway;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.Circuit;
import leeway.core.kit.Filter;
import leeway.core.kit.Illness;
import leeway.core.kit.Monitor;
import leeway.core.kit.Policy;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.AlarmChange;
import leeway.core.transport.Event;
import leeway.core.transport.KitAlone;
import leeway.core.transport.Leg;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import leeway.core.transport.WhatIf;
import leeway.files.keys.Section;
import leeway.files.keys.TableReader;
import leeway.files.keys.Value;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SettingsKeys;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;
import leeway.files.yaml.Place;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;
import leeway.files.yaml.Tree;

/** Reads a transport file: values, what they have in common, sheets, defaults; every complaint in one run. */
public final class TransportReader {
    /** The strategy that picks a strategy. */
    public static final String BY_ILLNESS = "by illness";

    private final Catalogue catalogue;
    private final Complaints c = new Complaints();
    private final Assumed assumed = new Assumed();
    private Section root;

    private TransportReader(Catalogue catalogue) { this.catalogue = catalogue; }

    /** @param fileName as complaints print it */
    public static Read<Transport> read(String fileName, String text, Catalogue catalogue) { return new TransportReader(catalogue).read(fileName, text); }

    public static Read<Transport> read(Path file, Catalogue catalogue) {
        return Text.of(file, file.toString()).then(text -> read(file.toString(), text, catalogue));
    }

    private Read<Transport> read(String fileName, String text) {
        c.addAll(catalogue.problems());
        Optional<Node> node = Tree.of(fileName, text, c);
        if (node.isEmpty()) return new Read.Bad<>(c.all());
        if (!(node.get() instanceof Node.Mapping m)) {
            c.add(node.get().at(), "a transport file is a mapping, this is " + node.get().words(), "It begins \"transport: A title\".");
            return new Read.Bad<>(c.all());
        }
        root = new TableReader(c, TransportKeys.TRANSPORT).read(m, TransportKeys.TRANSPORT);
        return transport(fileName, text);
    }

    private Read<Transport> transport(String fileName, String text) {
        List<String> notes = new ArrayList<>();
        Optional<Section> p = root.section("patient");
        Optional<PatientEntry> patient = p.map(s -> PatientReader.read(s, c, notes));
        notes.forEach(assumed::add);
        OptionalDouble age = p.map(s -> s.number("age")).orElse(OptionalDouble.empty());
        OptionalDouble height = p.map(s -> s.number("height")).orElse(OptionalDouble.empty());
        OptionalDouble weight = p.map(s -> s.number("weight")).orElse(OptionalDouble.empty());
        Ages who = Ages.of(age, height, weight);
        Optional<Illness> illness = inPatient(p, Kinds.ILLNESS, "healthy lungs", "");
        Optional<Airway> airway = inPatient(p, Kinds.AIRWAY, Ages.tube(age, height, weight), ", for " + who.words());
        Optional<Ventilator> ventilator = sheet(Kinds.VENTILATOR, Optional.empty(), "");
        boolean unaided = ventilator.map(Ventilator::alone).orElse(false);
        Optional<Circuit> circuit = unaided && !root.written(Kinds.CIRCUIT.word()) ? catalogue.find(Kinds.CIRCUIT, who.circuit(), root.at(), c)
                : sheet(Kinds.CIRCUIT, Optional.of(who.circuit()), ", for " + who.words());
        Optional<Filter> filter = sheet(Kinds.FILTER, Optional.of(unaided ? Filter.NONE.name() : who.filter()), unaided ? ", breathed from an open mask" : ", for " + who.words());
        Optional<Monitor> monitor = sheet(Kinds.MONITOR, Optional.of("example transport monitor"), "");
        String strategy = strategy();
        Settings prescribed = root.section("settings").map(s -> SettingsKeys.of(s, c)).orElse(Settings.NONE);
        List<Section> legSections = root.sections("legs");
        OptionalDouble firstLegCel = legSections.isEmpty() ? OptionalDouble.empty() : legSections.get(0).number("temperature");
        List<Store> oxygen = StoreReader.oxygen(root.sections("oxygen"), ventilator, firstLegCel, c, assumed);
        boolean open = legSections.stream().anyMatch(l -> !l.written("power"));
        boolean ownNamed = legSections.stream().anyMatch(l -> l.text("power").filter(StoreReader.OWN_PACK::equals).isPresent());
        List<PowerStore> power = StoreReader.power(root.sections("power"), ventilator, ownPackAt(ventilator), open || ownNamed, catalogue, c, assumed);
        JourneyReader.Names oxygenNames = names("oxygen", List.of());
        JourneyReader.Names powerNames = names("power", power.stream().map(PowerStore::name).toList());
        boolean needsPower = ventilator.map(v -> v.load().isPresent()).orElse(true);
        List<Leg> legs = JourneyReader.legs(legSections, oxygenNames, power, powerNames, needsPower, catalogue, c, assumed);
        double longest = legs.stream().mapToDouble(l -> l.atWorstMin() + l.diversion().map(Leg.Diversion::addsMin).orElse(0.0)).sum();
        boolean allLegs = legs.size() == legSections.size();
        List<Event> events = JourneyReader.events(root.sections("events"), oxygenNames, prescribed, ventilator, allLegs ? longest : 0, c, assumed);
        KitAlone alone = new KitAlone(root.number("standby", 0), JourneyReader.back(root.sections("return"), powerNames, c));
        List<WhatIf> whatIf = JourneyReader.whatIf(root.sections("what if"), catalogue, allLegs ? longest : 0, c);
        Optional<Policy> policy = policy();
        Map<AlarmCondition, AlarmChange> alarms = alarms(ventilator, monitor);
        root.text("kit").filter(k -> !catalogue.has("kit", k)).ifPresent(k -> catalogue.missing("kit", k, root.at("kit"), c));
        kitPacks();
        if (!root.written("transport")) assumed.add("transport: no title");
        if (c.any()) return new Read.Bad<>(c.all());
        String title = root.text("transport").orElseGet(() -> stem(fileName));
        return new Read.Good<>(new Transport(title, patient.orElseThrow(), illness.orElseThrow(), airway.orElseThrow(), ventilator.orElseThrow(), circuit.orElseThrow(),
                filter.orElseThrow(), monitor.orElseThrow(), strategy, prescribed, oxygen, power, legs, events, whatIf, policy.orElseThrow(), alarms,
                root.section("delays").map(d -> d.number("correlation", 0)).orElse(0.0), root.text("kit"), root.text("device"), assumed.all(), unused(), hash(text), alone));
    }

    /** The battery sheets that the kit's packs name must exist. */
    private void kitPacks() {
        Optional<String> name = root.text("kit").filter(k -> catalogue.has("kit", k));
        if (name.isEmpty()) return;
        catalogue.find(Kinds.KIT, name.get(), root.at("kit"), c).ifPresent(kit -> kit.packs().stream().filter(p -> !catalogue.has("battery", p.sheet()))
                .forEach(p -> catalogue.missing("battery", p.sheet(), root.at("kit"), c)));
    }

    /** Where the ventilator's sheet names its pack. */
    private Place ownPackAt(Optional<Ventilator> ventilator) {
        return ventilator.flatMap(v -> catalogue.sheet(Kinds.VENTILATOR, v.name(), root.at("ventilator"), new Complaints())).map(s -> s.section().at("battery")).orElse(root.at());
    }

    private JourneyReader.Names names(String key, List<String> more) {
        List<String> names = new ArrayList<>(root.sections(key).stream().map(s -> s.text("name")).flatMap(Optional::stream).toList());
        int items = root.node().get(key).filter(Node.Items.class::isInstance).map(n -> ((Node.Items) n).items().size()).orElse(0);
        boolean whole = names.size() == items && root.written(key) == root.has(key);
        names.addAll(more);
        return new JourneyReader.Names(names, whole);
    }

    private <T> Optional<T> sheet(SheetKind<T> kind, Optional<String> otherwise, String why) {
        if (root.written(kind.word())) return root.text(kind.word()).flatMap(n -> catalogue.find(kind, n, root.at(kind.word()), c));
        if (otherwise.isEmpty()) return Optional.empty();
        assumed.add(kind.word() + ": " + otherwise.get() + why);
        return catalogue.find(kind, otherwise.get(), root.at(), c);
    }

    private <T> Optional<T> inPatient(Optional<Section> p, SheetKind<T> kind, String otherwise, String why) {
        if (p.isEmpty()) return Optional.empty();
        if (p.get().written(kind.word())) return p.get().text(kind.word()).flatMap(n -> catalogue.find(kind, n, p.get().at(kind.word()), c));
        assumed.add(kind.word() + ": " + otherwise + why);
        return catalogue.find(kind, otherwise, p.get().at(), c);
    }

    private String strategy() {
        if (!root.written("strategy")) {
            assumed.add("strategy: " + BY_ILLNESS);
            return BY_ILLNESS;
        }
        Optional<String> name = root.text("strategy");
        if (name.isEmpty() || name.get().equals(BY_ILLNESS) || catalogue.has("strategy", name.get())) return name.orElse(BY_ILLNESS);
        List<String> names = new ArrayList<>(catalogue.names("strategy"));
        names.add(BY_ILLNESS);
        c.add(root.at("strategy"), "there is no strategy " + Complaints.echo(name.get()), "\"leeway catalogue strategy\" lists what there is.", () -> Nearest.of(name.get(), names));
        return BY_ILLNESS;
    }

    private Optional<Policy> policy() {
        Optional<Value> v = root.value("policy");
        if (v.isPresent() && v.get().value() instanceof Section inline) {
            Optional<String> like = inline.text("like");
            if (like.isEmpty() || inline.values().size() < inline.node().entries().size()) return Optional.empty();
            return catalogue.inline(Kinds.POLICY, inline.node(), like.get(), inline.at("like"), c);
        }
        if (v.isPresent()) return catalogue.find(Kinds.POLICY, (String) v.get().value(), v.get().at(), c);
        if (root.written("policy")) return Optional.empty();
        assumed.add("policy: default");
        return catalogue.find(Kinds.POLICY, "default", root.at(), c);
    }

    private Map<AlarmCondition, AlarmChange> alarms(Optional<Ventilator> ventilator, Optional<Monitor> monitor) {
        Map<AlarmCondition, AlarmChange> out = new EnumMap<>(AlarmCondition.class);
        Optional<Section> all = root.section("alarms");
        if (all.isEmpty()) return out;
        for (AlarmCondition condition : AlarmCondition.values()) {
            Optional<Section> s = all.get().section(condition.words());
            if (s.isEmpty()) continue;
            OptionalDouble low = s.get().table().key("low").isPresent() ? s.get().number("low") : OptionalDouble.empty();
            OptionalDouble high = s.get().table().key("high").isPresent() ? s.get().number("high") : OptionalDouble.empty();
            if (low.isPresent() && high.isPresent() && low.getAsDouble() >= high.getAsDouble()) {
                c.add(s.get().at("low"), "the lower limit does not lie below the upper one", "Swap them.");
            }
            out.put(condition, new AlarmChange(low, high, s.get().number("delay"), s.get().yes("off", false)));
            boolean known = ventilator.isEmpty() || monitor.isEmpty() || ventilator.get().alarms().stream().anyMatch(a -> a.condition() == condition)
                    || monitor.get().alarms().stream().anyMatch(a -> a.condition() == condition);
            if (!known) assumed.add("alarms: neither ventilator nor monitor warns of " + condition.words() + "; what the file says of it has no effect");
        }
        return out;
    }

    /** Keys that are read and checked, but not used yet. */
    private List<String> unused() {
        List<String> out = new ArrayList<>();
        unused(root, out);
        return out;
    }

    private static void unused(Section s, List<String> out) {
        for (Value v : s.values()) {
            if (v.key().later()) out.add("\"" + v.key().name() + "\" is read and checked, and not used yet");
            if (v.value() instanceof Section inner) unused(inner, out);
            if (v.value() instanceof List<?> list) list.stream().filter(Section.class::isInstance).forEach(i -> unused((Section) i, out));
        }
    }

    private static String stem(String fileName) {
        String name = fileName.replaceFirst(".*[/\\\\]", "").replaceFirst("\\.ya?ml$", "");
        return name.isBlank() ? "transport" : name;
    }

    private static String hash(String text) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java has SHA-256", e);
        }
    }
}
