package leeway.files.sheet;

import java.util.List;
import java.util.Optional;

/** Every kind of sheet; one line adds one. */
public final class Kinds {
    public static final VentilatorKind VENTILATOR = new VentilatorKind();
    public static final CircuitKind CIRCUIT = new CircuitKind();
    public static final FilterKind FILTER = new FilterKind();
    public static final AirwayKind AIRWAY = new AirwayKind();
    public static final BatteryKind BATTERY = new BatteryKind();
    public static final MonitorKind MONITOR = new MonitorKind();
    public static final IllnessKind ILLNESS = new IllnessKind();
    public static final PolicyKind POLICY = new PolicyKind();
    public static final StrategyKind STRATEGY = new StrategyKind();
    public static final KitKind KIT = new KitKind();
    public static final FaultKind FAULT = new FaultKind();
    public static final NoiseKind NOISE = new NoiseKind();

    /** In the order in which the catalogue lists them. */
    public static final List<SheetKind<?>> ALL = List.of(VENTILATOR, CIRCUIT, FILTER, AIRWAY, MONITOR, BATTERY, ILLNESS, STRATEGY, POLICY, KIT, FAULT, NOISE);

    private Kinds() { }

    public static List<String> words() { return ALL.stream().<String>map(SheetKind::word).toList(); }

    /** By its word or its plural. */
    public static Optional<SheetKind<?>> find(String word) {
        return ALL.stream().filter(k -> k.word().equals(word) || k.plural().equals(word)).findFirst();
    }
}
