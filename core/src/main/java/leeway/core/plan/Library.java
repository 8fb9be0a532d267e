package leeway.core.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.alarm.Noise;
import leeway.core.kit.Kit;
import leeway.core.kit.Ventilator;
import leeway.core.rehearsal.Fault;
import leeway.core.settings.Strategy;

/** The sheets that a plan needs beside those that the transport names: strategies to choose from, faults to rehearse, what can be carried. */
public interface Library {
    /** The strategy of this name; a transport names only strategies that exist. */
    Strategy strategy(String name);

    /** All faults, in the order of their sheets. */
    List<Fault> faults();

    /** All noises by name. */
    Map<String, Noise> noises();

    /** What can be carried, its packs looked up. */
    Optional<Kit> kit(String name);

    /** All ventilators, to say what another one would save. */
    default List<Ventilator> ventilators() { return List.of(); }
}
