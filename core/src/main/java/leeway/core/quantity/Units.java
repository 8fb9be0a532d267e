package leeway.core.quantity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The closed table of units that files, commands and sheets may use, with every accepted spelling.
 * Factors are exact by definition unless a line says otherwise.
 */
public final class Units {
    private static final Map<String, Unit> SPELLINGS = new LinkedHashMap<>();
    private static final List<Unit> ALL = new ArrayList<>();

    private Units() { }

    public static final Unit ONE = add("", "1", Dimension.NONE, 1);
    public static final Unit PERCENT = add("%", "%", Dimension.NONE, 0.01, "percent");

    public static final Unit CM = add("cm", "cm", Dimension.LENGTH, 0.01);
    public static final Unit MM = add("mm", "mm", Dimension.LENGTH, 0.001);
    public static final Unit M = add("m", "m", Dimension.LENGTH, 1);
    /** International foot, 0.3048 m exactly (1959 agreement; UCUM [ft_i]). */
    public static final Unit FT = add("ft", "[ft_i]", Dimension.LENGTH, 0.3048, "feet", "[ft_i]");
    public static final Unit INCH = add("in", "[in_i]", Dimension.LENGTH, 0.0254, "inch", "[in_i]");

    public static final Unit KG = add("kg", "kg", Dimension.MASS, 1);
    public static final Unit G = add("g", "g", Dimension.MASS, 0.001);
    /** Avoirdupois pound, 0.45359237 kg exactly (UCUM [lb_av]). */
    public static final Unit LB = add("lb", "[lb_av]", Dimension.MASS, 0.45359237, "[lb_av]");

    public static final Unit S = add("s", "s", Dimension.TIME, 1, "sec", "second", "seconds");
    public static final Unit MS = add("ms", "ms", Dimension.TIME, 0.001);
    public static final Unit MIN = add("min", "min", Dimension.TIME, 60, "minute", "minutes");
    public static final Unit H = add("h", "h", Dimension.TIME, 3600, "hour", "hours", "hr");
    public static final Unit DAY = add("days", "d", Dimension.TIME, 86_400, "day", "d");
    /** Mean Julian month, 30.4375 d (UCUM mo_j). */
    public static final Unit MONTH = add("months", "mo_j", Dimension.TIME, 30.4375 * 86_400, "month", "mo");
    /** Julian year, 365.25 d (UCUM a_j). */
    public static final Unit YEAR = add("years", "a_j", Dimension.TIME, 365.25 * 86_400, "year", "a");

    public static final Unit CEL = new Unit("Cel", "Cel", Dimension.TEMPERATURE, 1, 273.15);
    public static final Unit KELVIN = add("K", "K", Dimension.TEMPERATURE, 1);
    /** Fahrenheit: T/K = (t + 459.67) × 5/9. */
    public static final Unit FAHRENHEIT = new Unit("degF", "[degF]", Dimension.TEMPERATURE, 5.0 / 9.0, 459.67 * 5.0 / 9.0);

    static {
        spell(CEL, "Cel", "°C", "degC");
        spell(FAHRENHEIT, "degF", "°F", "[degF]");
    }

    public static final Unit ML = add("mL", "mL", Dimension.VOLUME, 1e-6, "ml");
    public static final Unit L = add("L", "L", Dimension.VOLUME, 1e-3, "l");

    /** Conventional centimetre of water, 98.0665 Pa exactly (UCUM cm[H2O]). */
    public static final Unit CMH2O = add("cmH2O", "cm[H2O]", Dimension.PRESSURE, 98.0665, "cm[H2O]");
    /** UCUM m[Hg] is 133.322 kPa: 133.322 Pa a millimetre, not 133.322387. */
    public static final Unit MMHG = add("mmHg", "mm[Hg]", Dimension.PRESSURE, 133.322, "mm[Hg]");
    public static final Unit PA = add("Pa", "Pa", Dimension.PRESSURE, 1);
    public static final Unit HPA = add("hPa", "hPa", Dimension.PRESSURE, 100);
    public static final Unit MBAR = add("mbar", "mbar", Dimension.PRESSURE, 100);
    public static final Unit KPA = add("kPa", "kPa", Dimension.PRESSURE, 1000);
    public static final Unit BAR = add("bar", "bar", Dimension.PRESSURE, 1e5);
    public static final Unit MPA = add("MPa", "MPa", Dimension.PRESSURE, 1e6);
    public static final Unit ATM = add("atm", "atm", Dimension.PRESSURE, 101_325);
    /** Pound-force a square inch: 0.45359237 × 9.80665 / 0.0254² Pa (UCUM [psi]). */
    public static final Unit PSI = add("psi", "[psi]", Dimension.PRESSURE, 0.45359237 * 9.80665 / (0.0254 * 0.0254), "[psi]");

    public static final Unit PER_MIN = add("/min", "/min", Dimension.RATE, 1.0 / 60, "1/min", "min-1");
    public static final Unit PER_S = add("/s", "/s", Dimension.RATE, 1, "1/s");
    public static final Unit HZ = add("Hz", "Hz", Dimension.RATE, 1);

    public static final Unit L_PER_MIN = add("L/min", "L/min", Dimension.FLOW, 1e-3 / 60, "l/min");
    public static final Unit ML_PER_MIN = add("mL/min", "mL/min", Dimension.FLOW, 1e-6 / 60, "ml/min");
    public static final Unit L_PER_S = add("L/s", "L/s", Dimension.FLOW, 1e-3, "l/s");

    public static final Unit ML_PER_CMH2O = add("mL/cmH2O", "mL/cm[H2O]", Dimension.COMPLIANCE, 1e-6 / 98.0665, "ml/cmH2O", "mL/cm[H2O]");
    public static final Unit ML_PER_MBAR = add("mL/mbar", "mL/mbar", Dimension.COMPLIANCE, 1e-8, "mL/hPa", "ml/mbar", "ml/hPa");
    public static final Unit L_PER_KPA = add("L/kPa", "L/kPa", Dimension.COMPLIANCE, 1e-6);
    public static final Unit ML_PER_KPA = add("mL/kPa", "mL/kPa", Dimension.COMPLIANCE, 1e-9);
    public static final Unit L_PER_BAR = add("L/bar", "L/bar", Dimension.COMPLIANCE, 1e-8);
    public static final Unit L_PER_PSI = add("L/psi", "L/[psi]", Dimension.COMPLIANCE, 1e-3 / (0.45359237 * 9.80665 / (0.0254 * 0.0254)), "L/[psi]");
    public static final Unit CMH2O_S_PER_L = add("cmH2O.s/L", "cm[H2O].s/L", Dimension.RESISTANCE, 98.0665e3, "cmH2O/(L/s)", "cmH2O/L/s", "cmH2O·s/L", "cm[H2O].s/L");
    public static final Unit MBAR_S_PER_L = add("mbar.s/L", "mbar.s/L", Dimension.RESISTANCE, 1e5, "mbar/(L/s)", "hPa.s/L", "hPa/(L/s)", "mbar·s/L");
    public static final Unit KPA_S_PER_L = add("kPa.s/L", "kPa.s/L", Dimension.RESISTANCE, 1e6, "kPa/(L/s)", "kPa·s/L");

    public static final Unit G_PER_L = add("g/L", "g/L", Dimension.DENSITY, 1);
    public static final Unit G_PER_DL = add("g/dL", "g/dL", Dimension.DENSITY, 10);
    public static final Unit MMOL_PER_L = add("mmol/L", "mmol/L", Dimension.CONCENTRATION, 1);
    /** Gas content of blood: a plain ratio of volumes. */
    public static final Unit ML_PER_DL = add("mL/dL", "mL/dL", Dimension.NONE, 0.01, "ml/dL");
    public static final Unit ML_PER_L = add("mL/L", "mL/L", Dimension.NONE, 0.001, "ml/L");

    public static final Unit WH = add("Wh", "W.h", Dimension.ENERGY, 3600, "W.h");
    public static final Unit J = add("J", "J", Dimension.ENERGY, 1);
    public static final Unit W = add("W", "W", Dimension.POWER, 1);
    public static final Unit J_PER_MIN = add("J/min", "J/min", Dimension.POWER, 1.0 / 60);

    public static final Unit ML_PER_KG = add("mL/kg", "mL/kg", Dimension.VOLUME_PER_MASS, 1e-6, "ml/kg");
    public static final Unit ML_PER_MIN_PER_KG = add("mL/min/kg", "mL/min/kg", Dimension.FLOW_PER_MASS, 1e-6 / 60, "mL/kg/min", "ml/kg/min");
    public static final Unit ML_PER_CMH2O_PER_KG = add("mL/cmH2O/kg", "mL/cm[H2O]/kg", Dimension.COMPLIANCE.over(Dimension.MASS), 1e-6 / 98.0665, "ml/cmH2O/kg");
    public static final Unit J_PER_MIN_PER_KG = add("J/min/kg", "J/min/kg", Dimension.POWER.over(Dimension.MASS), 1.0 / 60);

    /** Every unit, in the order of the table. */
    public static List<Unit> all() { return Collections.unmodifiableList(ALL); }

    /** Every accepted spelling. */
    public static Map<String, Unit> spellings() { return Collections.unmodifiableMap(SPELLINGS); }

    /** The unit written so, exactly; units are case-sensitive but for the litre. */
    public static Optional<Unit> find(String spelling) { return Optional.ofNullable(SPELLINGS.get(spelling)); }

    private static Unit add(String symbol, String ucum, Dimension dimension, double factor, String... also) {
        Unit unit = new Unit(symbol, ucum, dimension, factor, 0);
        spell(unit, symbol);
        spell(unit, also);
        return unit;
    }

    private static void spell(Unit unit, String... spellings) {
        if (!ALL.contains(unit)) ALL.add(unit);
        for (String spelling : spellings) SPELLINGS.put(spelling, unit);
    }
}
