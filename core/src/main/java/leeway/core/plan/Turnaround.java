package leeway.core.plan;

import java.util.ArrayList;
import java.util.List;
import leeway.core.kit.Filter;
import leeway.core.kit.Ventilator;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/**
 * The device's way back to the shelf after this journey: what is thrown away, cleaned, charged, restocked, tested.
 * <p>Leaves out what only the maker's instructions know: agents, contact times, intervals. Every step is common practice,
 * no source, and the maker's instructions and the service's hygiene plan come first.
 */
final class Turnaround {
    private Turnaround() { }

    static List<String> of(Transport t, List<String> supplyLeft) {
        List<String> steps = new ArrayList<>();
        boolean hand = t.ventilator().drive() == Ventilator.Drive.HAND;
        boolean alone = t.ventilator().alone();
        if (!alone && !t.filter().name().equals(Filter.NONE.name())) {
            steps.add("Throw away the filter (" + t.filter().name() + "): one patient, one filter, whatever its hours.");
        }
        if (alone) {
            steps.add("Throw away mask or T-piece and its hose; wipe the flowmeter down.");
        } else if (hand) {
            steps.add("Take the bag, its valve and its reservoir apart: single use is thrown away, the rest reprocessed as its maker says; then put together and test by squeezing against a closed outlet.");
        } else {
            steps.add("Take off the circuit (" + t.circuit().name() + ") with its valve: single use is thrown away, reusable parts go to reprocessing.");
            steps.add("Wipe down ventilator, hoses and cables with an agent its maker allows; leave it wet for the agent's time, then dry; nothing is sprayed into an opening.");
        }
        for (String left : supplyLeft) steps.add(left);
        if (t.ventilator().battery().isPresent()) {
            steps.add("Put the ventilator on its charger and look that it says it charges: plugged in is not charging, and below freezing a pack refuses.");
        }
        if (!t.monitor().name().equals("none")) steps.add("Wipe the finger sensor and its cable; throw away the CO2 sampling line and its water trap; charge the monitor.");
        if (alone) steps.add("Restock: mask or T-piece, hose.");
        else steps.add(hand ? "Restock: bag with mask, airway, filter." : "Restock one of each that was used: filter, circuit, catheter mount, suction catheters; check their dates.");
        if (!hand && !alone) {
            steps.add("With a new circuit run the device's own check (tightness, valve, alarms, sensor); take back this patient's settings and alarm limits to those of the shelf.");
        }
        if (t.oxygen().stream().anyMatch(s -> s.type() == Store.Type.CYLINDER)) {
            steps.add("Close the cylinders, let the line blow off, open each once to read its gauge, and write the reading down.");
        }
        steps.add("Enter the turnaround and anything that failed; a device with an open fault does not go back to the shelf.");
        return List.copyOf(steps);
    }
}
