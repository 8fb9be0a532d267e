package leeway.core.transport;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the kit does without the patient: it stands by before departure, and comes home.
 *
 * @param standbyMin how long the ventilator stands by, switched on, between the reading of gauges and charge and the departure
 * @param back       the way home after the handover; empty where the file says nothing of it
 */
public record KitAlone(double standbyMin, List<Back> back) {
    /** Nothing before, nothing after. */
    public static final KitAlone NONE = new KitAlone(0, List.of());

    public KitAlone { back = List.copyOf(back); }

    /**
     * A stretch of the way home.
     *
     * @param power   name of the power store; empty: the ventilator's own pack
     * @param standby switched on and standing by; otherwise truly off
     */
    public record Back(String name, double takesMin, OptionalDouble temperatureCel, Optional<String> power, boolean standby) { }
}
