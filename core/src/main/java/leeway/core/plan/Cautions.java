package leeway.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.core.alarm.Oximeter;
import leeway.core.gas.TwoColours;
import leeway.core.kit.Airway;
import leeway.core.kit.Filter;
import leeway.core.kit.Sensor.Measured;
import leeway.core.kit.Ventilator;
import leeway.core.transport.Leg;
import leeway.core.transport.PatientEntry.Cuff;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/** What this journey asks to be careful about, each with its source or as common practice. */
final class Cautions {
    /** Above this climb a cuff filled with air is worth a sentence: 1820 ft, where half of the cuffs first stood at 50 cmH2O (Anaesthesia 57 (2002) 374). */
    private static final double CUFF_CLIMB_M = 1820 * 0.3048;
    /** Water vapour in the body, mmHg at 37 Cel. */
    private static final double VAPOUR_MMHG = 47;

    /** Saturation of the haemoglobin that can carry oxygen, for an example. */
    private static final double FULL = 0.97;

    private Cautions() { }

    static List<String> of(Transport t, double bodyCel, Pressure pressure) {
        List<String> c = new ArrayList<>();
        c.add("A planning and teaching aid, not a medical device: nothing here is an order. The maker's instructions, local protocols and licensed clinicians come first.");
        climb(t, c, pressure);
        TubeDepth.caution(t.patient(), t.airway()).ifPresent(c::add);
        if (t.patient().carboxyhaemoglobin() + t.patient().methaemoglobin() > 0) {
            double co = t.patient().carboxyhaemoglobin(), met = t.patient().methaemoglobin();
            double carries = FULL * (1 - co - met), shown = TwoColours.shows(FULL, co, met);
            c.add("The oximeter reads " + Words.n(100 * (shown - carries), 0) + " points too high: where " + Words.n(100 * carries, 0) + " % of all haemoglobin carry oxygen it shows "
                    + Words.n(100 * shown, 0) + " %, for carbon monoxide looks like oxygen to it and methaemoglobin draws it towards 85 % (Br J Anaesth 1991;66:625). Go by a blood gas with co-oximetry; give oxygen whatever it shows.");
        }
        late(t, bodyCel).ifPresent(c::add);
        boolean hand = t.ventilator().drive() == Ventilator.Drive.HAND;
        if (t.ventilator().alone()) {
            c.add("Free flow does not ventilate: who breathes too little, or stops, is not helped by more oxygen, and a good saturation hides it for minutes. Look at the chest and at CO2; a hand bag with mask lies ready (common practice, no source).");
        } else if (hand) {
            c.add("Rate, volume and pressure of a hand bag are the hand's: figures here are those of the rate and volume named, and hands differ (common practice, no source).");
        } else {
            c.add("A hand bag with mask, and oxygen for it, within reach all the way: every fault ends there if nothing else helps (common practice, no source).");
        }
        if (t.ventilator().gas().stopsWithoutGas()) {
            c.add("This ventilator is driven by its gas: where the oxygen ends, ventilation ends. Ventilate by hand while a cylinder is changed on a single regulator (common practice, no source).");
        }
        if (!t.ventilator().alone() && !t.filter().name().equals(Filter.NONE.name())) {
            c.add("The filter adds " + Words.n(t.filter().deadSpaceMl(), 0) + " mL of dead space; wet or soiled it resists more with every hour. Never together with a heated humidifier, and take it off for nebulised drugs (common practice, no source).");
        }
        if (t.legs().stream().anyMatch(l -> l.noise().isPresent())) {
            List<String> loud = t.legs().stream().filter(l -> l.noise().isPresent()).map(Leg::name).toList();
            c.add("An alarm may not be heard during " + Words.list(loud) + ": keep the displays in sight (inside an ambulance up to 91 dB(A) at the patient; NIOSH 1986).");
        }
        if (t.legs().stream().anyMatch(l -> l.temperatureCel().orElse(20) <= 5)) {
            c.add("In the cold a cylinder's gauge falls without use, about 1.2 bar for each kelvin at 200 bar, and a pack gives less and may refuse to charge below 0 °C (real-gas equation; charging from memory).");
        }
        if (t.oxygen().stream().anyMatch(s -> s.type() == Store.Type.CYLINDER)) {
            c.add("Open cylinders slowly, keep them free of grease and standing or strapped; open and in use is not the same as connected: look at the gauge while the patient breathes from it (common practice, no source).");
        }
        if (!t.whatIf().isEmpty()) {
            c.add(t.whatIf().size() == 1 ? "The file's what-if is left out of this plan; breathe and rehearse run it."
                    : "The file's " + t.whatIf().size() + " what-ifs are left out of this plan; breathe and rehearse run them.");
        }
        return List.copyOf(c);
    }

    /** Where a weak or cold circulation makes the oximeter late by more than this, s. */
    private static final double WORTH_S = 5;

    private static Optional<String> late(Transport t, double bodyCel) {
        double share = t.patient().cardiacOutputLPerMin().isPresent() ? 1 : t.illness().cardiacOutputTimes().central();
        return t.monitor().sensors().stream().filter(s -> s.measured() == Measured.SATURATION && !t.illness().testLung()).findFirst().flatMap(s -> {
            double here = Oximeter.lateS(s, share, bodyCel) + s.averageS() / 2, usual = Oximeter.lateS(s, 1, 37) + s.averageS() / 2;
            if (here - usual < WORTH_S) return Optional.empty();
            String weak = s.weakBelow() > 0 && share < 1 ? " Below " + Words.n(100 * s.weakBelow(), 0) + " % of the usual output it reads nothing; it starts at " + Words.n(100 * share, 0) + " %." : "";
            return Optional.of("The oximeter shows a fall about " + Words.n(here, 0) + " s late in this patient, " + Words.n(usual, 0) + " s in others: blood takes longer to the probe where output is low, and a cold body closes the fingers (Anaesthesia 2005;60:65). "
                    + "An ear or the forehead is faster." + weak);
        });
    }

    /** Barometric pressure in mmHg at an altitude in metres. */
    interface Pressure { double mmHg(double altitudeM); }

    private static void climb(Transport t, List<String> c, Pressure pressure) {
        double lowestM = t.legs().stream().mapToDouble(Leg::altitudeM).min().orElse(0);
        double highestM = t.legs().stream().mapToDouble(Leg::altitudeM).max().orElse(0);
        double low = Math.min(lowestM, 0);
        if (highestM - low < 150) return;
        double times = (pressure.mmHg(low) - VAPOUR_MMHG) / (pressure.mmHg(highestM) - VAPOUR_MMHG);
        boolean cuffed = t.airway().cuffed() && t.airway().type() != Airway.Type.LARYNGEAL_MASK;
        Cuff cuff = t.patient().cuff().orElse(Cuff.AIR);
        if (cuffed && cuff == Cuff.AIR && highestM - low >= CUFF_CLIMB_M) {
            c.add("The cuff is filled with air: on the climb to " + Words.altitude(highestM) + " its pressure rises, in a study with a mean climb of 2260 ft from 29 to 63 cmH2O "
                    + "(Ann. Emerg. Med. 56 (2010) 89). Measure and adjust it on the climb and again on the descent, or fill it with saline.");
        }
        c.add("Closed gas in the body grows on the climb to " + Words.altitude(highestM) + ", free to expand by a factor of " + Words.n(times, 2)
                + " (moist gas at 37 °C): " + (t.patient().chestDrain() ? "see that the chest drain is open and not clamped"
                : "an undrained pneumothorax is drained before") + ", and the stomach tube is open.");
    }

    /** Stores of the file that no leg names. */
    static List<String> unusedStores(Transport t) {
        List<String> used = t.legs().stream().flatMap(l -> l.oxygen().stream()).toList();
        return t.oxygen().stream().map(Store::name).filter(n -> !used.contains(n)).toList();
    }
}
