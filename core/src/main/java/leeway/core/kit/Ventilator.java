package leeway.core.kit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A ventilator as its data sheet describes it.
 *
 * @param called           what this device calls a setting or a mode, where it differs; keys are {@link Setting#words()} or mode codes
 * @param ranges           what it lets one set; a setting that is absent cannot be set on it
 * @param defaults         what it stands at when nothing is set (its bias flow, rise time, cycle off …)
 * @param maxFlowLPerMin   the largest inspiratory flow it gives
 * @param maxPressureCmH2O the largest airway pressure it gives
 * @param responseS        time constant of its valve or blower
 * @param compensatesCircuit whether the set volume is what reaches the patient
 * @param decelerating     whether volume control ends with less flow than it begins
 * @param battery          name of its own pack's sheet; empty without one
 * @param source           where the values come from, or "invented"
 */
public record Ventilator(
        String name,
        Drive drive,
        List<Mode> modes,
        Map<Setting, Range> ranges,
        Settings defaults,
        Map<String, String> called,
        double maxFlowLPerMin,
        double maxPressureCmH2O,
        double responseS,
        double expiratoryResistanceCmH2OSPerL,
        boolean compensatesCircuit,
        boolean compensatesLeak,
        boolean decelerating,
        Gas gas,
        Optional<Load> load,
        Optional<String> battery,
        List<Sensor> sensors,
        List<AlarmRow> alarms,
        OptionalDouble apnoeaBackupAfterS,
        double massKg,
        String source) {

    /** How it moves gas. */
    public enum Drive {
        PNEUMATIC, TURBINE, HAND,
        /** Nothing moves gas but the patient: oxygen flows past an open airway. */
        FREE_FLOW
    }

    /** Whether a machine ventilates; else a hand, or nobody. */
    public boolean machine() { return drive == Drive.PNEUMATIC || drive == Drive.TURBINE; }

    /** Whether the patient breathes alone, from oxygen that flows past. */
    public boolean alone() { return drive == Drive.FREE_FLOW; }

    public Ventilator {
        modes = List.copyOf(modes);
        ranges = Map.copyOf(ranges);
        called = Map.copyOf(called);
        sensors = List.copyOf(sensors);
        alarms = List.copyOf(alarms);
    }

    /** On which basis a displayed or set volume stands. */
    public enum VolumeBasis { BTPS, ATPD, ATPS, STPD, FREE }

    /** How delivered volume and draw answer to altitude. */
    public enum Altitude {
        /** The set volume is kept as volume; the draw falls with pressure. */
        COMPENSATED,
        /** A critical orifice keeps mass flow: the draw stays, the delivered volume grows as pressure falls. */
        FIXED_MASS_FLOW
    }

    /** What it takes its oxygen with. */
    public enum Inlet { HIGH_PRESSURE, FLOWMETER }

    /**
     * What it draws and how.
     *
     * @param inlets              how oxygen may be connected
     * @param entrainedFio2       FiO2 of its air mixture, where it entrains; a blender between this and pure oxygen if {@code blender}
     * @param driveLPerMin        drive gas that never reaches the patient, L/min free
     * @param driveShare          drive gas as a share of minute volume
     * @param purgeLPerMin        steady loss of its mixing valve while it ventilates
     * @param standbyLPerMin      drawn in standby
     * @param checkL              drawn by its start-up check, L free
     * @param minimumInletBar     below this supply pressure a gas-driven device stops, a turbine goes on with air
     * @param stopsWithoutGas     whether ventilation stops then
     * @param fio2Error           half-width of the delivered FiO2's error, as a fraction
     * @param nebuliserLPerMin    what its nebuliser takes while it runs; absent without one
     * @param suctionLPerMin      what its suction ejector takes while it is open; absent without one
     * @param reservoirMl         of free flow: what fills with it between breaths
     */
    public record Gas(
            List<Inlet> inlets, OptionalDouble entrainedFio2, boolean blender, double driveLPerMin, double driveShare,
            double purgeLPerMin, double standbyLPerMin, double checkL, double minimumInletBar, double maximumInletBar,
            boolean stopsWithoutGas, VolumeBasis volumeBasis, Altitude altitude, double fio2Error, OptionalDouble nebuliserLPerMin,
            OptionalDouble suctionLPerMin, double reservoirMl) {
        public Gas { inlets = List.copyOf(inlets); }

        /** A device without nebuliser and suction. */
        public Gas(List<Inlet> inlets, OptionalDouble entrainedFio2, boolean blender, double driveLPerMin, double driveShare, double purgeLPerMin,
                   double standbyLPerMin, double checkL, double minimumInletBar, double maximumInletBar, boolean stopsWithoutGas, VolumeBasis volumeBasis,
                   Altitude altitude, double fio2Error) {
            this(inlets, entrainedFio2, blender, driveLPerMin, driveShare, purgeLPerMin, standbyLPerMin, checkL, minimumInletBar, maximumInletBar, stopsWithoutGas,
                    volumeBasis, altitude, fio2Error, OptionalDouble.empty(), OptionalDouble.empty(), 0);
        }
    }

    /**
     * What it takes from battery or socket.
     *
     * @param baseW            controller, valves, sensors
     * @param displayW         screen at full brightness
     * @param blowerIdleW      turbine turning without load; 0 for a gas-driven device
     * @param blowerEfficiency pneumatic power over electrical power beyond idle; 1 without a blower
     * @param standbyW         in standby
     * @param alarmW           more while an alarm sounds
     * @param chargerW         what an outside source can give in all, load and charging together
     * @param heatingW         heated humidifier, hose or sensor, where it has one
     */
    public record Load(double baseW, double displayW, double blowerIdleW, double blowerEfficiency, double standbyW, double alarmW, double chargerW, double heatingW) {
        /** Share of the time in which an alarm is reckoned to sound: common practice, no source. */
        private static final double ALARM_SHARE = 0.1;

        /** Without heating. */
        public Load(double baseW, double displayW, double blowerIdleW, double blowerEfficiency, double standbyW, double alarmW, double chargerW) {
            this(baseW, displayW, blowerIdleW, blowerEfficiency, standbyW, alarmW, chargerW, 0);
        }

        /** At work, all that does not depend on the breaths. */
        public double steadyW() { return baseW + displayW + blowerIdleW + heatingW + ALARM_SHARE * alarmW; }
    }
}
