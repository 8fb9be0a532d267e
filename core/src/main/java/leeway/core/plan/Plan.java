package leeway.core.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import leeway.core.alarm.AlarmLimit;
import leeway.core.journey.OwnBreathing;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.settings.Suggested;
import leeway.core.supply.SupplyResult;

/**
 * All that follows from a transport file.
 *
 * @param title       of the transport
 * @param sourceHash  SHA-256 of the file, hexadecimal
 * @param assumed     every default taken, a sentence each
 * @param patient     what the patient is taken to be
 * @param suggested   what to set, each with its because
 * @param expected    the steady state of the first leg; absent where nothing sets a breath
 * @param bands       within what the expected lies in 9 of 10 such patients
 * @param byLeg       the state at each leg's end
 * @param legs        the journey at its medians
 * @param alarmLimits on both devices; empty where nothing alarms
 * @param supply      oxygen and charge
 * @param rehearsals  each fault once, at its worst moment, all medians; sorted, uncovered first
 * @param course      the patient's gases along the journey; empty where no gas is exchanged
 * @param banded      the same with the band of likely patients: worked out when first asked for, for it takes as long as the rest
 * @param ownBreathing the patient's own part in the breaths of the first leg; absent where there is none
 * @param monitorEndsMin when the monitor's own battery ends, from departure; absent where it lasts
 * @param suppliesEndMin when gas or charge ends by itself at medians, from departure; absent where they last
 * @param breath      one breath of the first leg, sampled; absent where nothing sets a breath
 */
public record Plan(String title, long seed, String sourceHash, Verdict verdict, List<String> assumed, Patient patient, Suggested suggested,
                   Optional<Expected> expected, Optional<Bands> bands, List<AtLeg> byLeg, List<LegTime> legs, List<AlarmLimit> alarmLimits,
                   SupplyResult supply, List<Rehearsal> rehearsals, List<Moment> course, Supplier<List<Moment>> banded, Optional<Breath> breath, List<String> turnaround, List<String> cautions,
                   Optional<OwnBreathing> ownBreathing, OptionalDouble monitorEndsMin, OptionalDouble suppliesEndMin) {
    public Plan {
        assumed = List.copyOf(assumed);
        byLeg = List.copyOf(byLeg);
        legs = List.copyOf(legs);
        alarmLimits = List.copyOf(alarmLimits);
        rehearsals = List.copyOf(rehearsals);
        course = List.copyOf(course);
        turnaround = List.copyOf(turnaround);
        cautions = List.copyOf(cautions);
    }

    /**
     * The patient in figures.
     *
     * @param predictedBodyWeightKg what volumes go by; a child's ideal weight
     * @param summary               a line for the reader: "woman of 58 years, 170 cm, 74 kg; moderate pneumonia"
     */
    public record Patient(OptionalDouble predictedBodyWeightKg, String summary, String kit) { }

    /** What is expected at the end of a leg. */
    public record AtLeg(String leg, Expected expected) { }

    /** A leg at the medians, minutes from departure. */
    public record LegTime(String leg, double startMin, double endMin, double worstMin) { }

    /** The gases at one moment of the journey, with their band where it was worked out. */
    public record Moment(double atMin, double pao2MmHg, double paco2MmHg, double spo2, Optional<Span> span) { }

    /** Within what the gases lie in 9 of 10 such patients. */
    public record Span(double pao2LowMmHg, double pao2HighMmHg, double paco2LowMmHg, double paco2HighMmHg, double spo2Low, double spo2High) { }

    /** One breath, sampled from the start of inspiration; of two lungs each beside the whole. */
    public record Breath(double[] atS, double[] pressureCmH2O, double[] flowLPerMin, double[] volumeMl, double inspiratoryTimeS, double peepCmH2O,
                         OptionalDouble plateauCmH2O, Optional<TwoLungs> lungs) { }

    /** What each of two lungs or parts holds of the breath, from the least that it holds. */
    public record TwoLungs(String first, String second, double[] firstMl, double[] secondMl) { }
}
