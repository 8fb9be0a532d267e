package leeway.core.transport;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.kit.Airway;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.Circuit;
import leeway.core.kit.Filter;
import leeway.core.kit.Illness;
import leeway.core.kit.Monitor;
import leeway.core.kit.Policy;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;

/**
 * A transport: patient, kit, journey; sheets resolved, defaults filled in and named.
 *
 * @param strategy         the strategy's name, "by illness" unless the file says
 * @param prescribed       what the file sets
 * @param delayCorrelation correlation of the legs' delays, 0 unless the file says
 * @param kit              name of the sheet of what can be carried
 * @param device           serial from the ledger
 * @param alone            what the kit does without the patient
 * @param assumed          every default taken, a sentence each
 * @param unused           what was read and is not used yet, a sentence each
 * @param sourceHash       SHA-256 of the file, hexadecimal
 */
public record Transport(String title, PatientEntry patient, Illness illness, Airway airway, Ventilator ventilator, Circuit circuit, Filter filter,
                        Monitor monitor, String strategy, Settings prescribed, List<Store> oxygen, List<PowerStore> power, List<Leg> legs,
                        List<Event> events, List<WhatIf> whatIf, Policy policy, Map<AlarmCondition, AlarmChange> alarms, double delayCorrelation,
                        Optional<String> kit, Optional<String> device, List<String> assumed, List<String> unused, String sourceHash, KitAlone alone) {
    public Transport {
        oxygen = List.copyOf(oxygen);
        power = List.copyOf(power);
        legs = List.copyOf(legs);
        events = List.copyOf(events);
        whatIf = List.copyOf(whatIf);
        alarms = Map.copyOf(alarms);
        assumed = List.copyOf(assumed);
        unused = List.copyOf(unused);
    }

    /** A transport of whose kit nothing is known but the journey with the patient. */
    public Transport(String title, PatientEntry patient, Illness illness, Airway airway, Ventilator ventilator, Circuit circuit, Filter filter, Monitor monitor,
                     String strategy, Settings prescribed, List<Store> oxygen, List<PowerStore> power, List<Leg> legs, List<Event> events, List<WhatIf> whatIf,
                     Policy policy, Map<AlarmCondition, AlarmChange> alarms, double delayCorrelation, Optional<String> kit, Optional<String> device,
                     List<String> assumed, List<String> unused, String sourceHash) {
        this(title, patient, illness, airway, ventilator, circuit, filter, monitor, strategy, prescribed, oxygen, power, legs, events, whatIf, policy, alarms,
                delayCorrelation, kit, device, assumed, unused, sourceHash, KitAlone.NONE);
    }

    /** The same journey with another ventilator. */
    public Transport with(Ventilator other) {
        return new Transport(title, patient, illness, airway, other, circuit, filter, monitor, strategy, prescribed, oxygen, power, legs, events, whatIf, policy,
                alarms, delayCorrelation, kit, device, assumed, unused, sourceHash, alone);
    }

    /** The store of that name; legs name only stores that exist. */
    public Store store(String name) {
        return oxygen.stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow(() -> new AssertionError("store " + name));
    }
}
