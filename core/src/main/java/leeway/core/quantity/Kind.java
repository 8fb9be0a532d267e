package leeway.core.quantity;

import java.util.List;
import java.util.stream.Collectors;

/** A family of quantities as a file accepts it: its dimension, the units one may write, the unit we hold it in, an example. */
public enum Kind {
    FRACTION("a share", Units.ONE, "60 %", Units.PERCENT),
    HEIGHT("a height", Units.CM, "170 cm", Units.CM, Units.M, Units.FT, Units.INCH),
    ALTITUDE("an altitude", Units.M, "6500 ft", Units.FT, Units.M),
    LENGTH("a length", Units.CM, "22 cm", Units.CM, Units.MM, Units.M),
    DIAMETER("a diameter", Units.MM, "7.5 mm", Units.MM, Units.CM),
    MASS("a mass", Units.KG, "74 kg", Units.KG, Units.G, Units.LB),
    AGE("an age", Units.YEAR, "58 years", Units.YEAR, Units.MONTH, Units.DAY),
    TIME("a time", Units.S, "12 min", Units.S, Units.MIN, Units.H, Units.MS),
    JOURNEY_TIME("a time", Units.MIN, "12 min", Units.MIN, Units.H, Units.S),
    TEMPERATURE("a temperature", Units.CEL, "20 Cel", Units.CEL, Units.KELVIN, Units.FAHRENHEIT),
    VOLUME("a volume", Units.ML, "420 mL", Units.ML, Units.L),
    STORE_VOLUME("a volume", Units.L, "2 L", Units.L, Units.ML),
    AIRWAY_PRESSURE("a pressure", Units.CMH2O, "8 cmH2O", Units.CMH2O, Units.MBAR, Units.HPA, Units.KPA, Units.MMHG),
    GAS_TENSION("a gas tension", Units.MMHG, "45 mmHg", Units.MMHG, Units.KPA),
    STORE_PRESSURE("a pressure", Units.BAR, "185 bar", Units.BAR, Units.PSI, Units.KPA, Units.MPA),
    AMBIENT_PRESSURE("a pressure", Units.HPA, "1013 hPa", Units.HPA, Units.MBAR, Units.KPA, Units.MMHG, Units.BAR, Units.ATM),
    RATE("a rate", Units.PER_MIN, "20 /min", Units.PER_MIN),
    FLOW("a flow", Units.L_PER_MIN, "5 L/min", Units.L_PER_MIN, Units.ML_PER_MIN, Units.L_PER_S),
    COMPLIANCE("a compliance", Units.ML_PER_CMH2O, "35 mL/cmH2O", Units.ML_PER_CMH2O, Units.ML_PER_MBAR, Units.L_PER_KPA),
    RESISTANCE("a resistance", Units.CMH2O_S_PER_L, "11 cmH2O.s/L", Units.CMH2O_S_PER_L, Units.MBAR_S_PER_L, Units.KPA_S_PER_L),
    CYLINDER_FACTOR("a cylinder factor", Units.L_PER_PSI, "0.28 L/psi", Units.L_PER_PSI, Units.L_PER_BAR, Units.L_PER_KPA),
    HAEMOGLOBIN("a haemoglobin concentration", Units.G_PER_L, "120 g/L", Units.G_PER_L, Units.G_PER_DL),
    CONCENTRATION("a concentration", Units.MMOL_PER_L, "24 mmol/L", Units.MMOL_PER_L),
    BLOOD_CONTENT("a gas content", Units.ML_PER_DL, "20 mL/dL", Units.ML_PER_DL, Units.ML_PER_L),
    ENERGY("an energy", Units.WH, "90 Wh", Units.WH),
    POWER("a power", Units.W, "18 W", Units.W),
    BREATHING_POWER("a mechanical power", Units.J_PER_MIN, "12 J/min", Units.J_PER_MIN),
    VOLUME_PER_MASS("a volume per body weight", Units.ML_PER_KG, "6 mL/kg", Units.ML_PER_KG),
    FLOW_PER_MASS("a flow per body weight", Units.ML_PER_MIN_PER_KG, "3.5 mL/min/kg", Units.ML_PER_MIN_PER_KG),
    COMPLIANCE_PER_MASS("a compliance per body weight", Units.ML_PER_CMH2O_PER_KG, "1.2 mL/cmH2O/kg", Units.ML_PER_CMH2O_PER_KG),
    /** A bare number on purpose: a pH, a ratio, a count. */
    NUMBER("a plain number", Units.ONE, "7.31", Units.ONE);

    private final String words;
    private final Unit internal;
    private final String example;
    private final List<Unit> accepted;

    Kind(String words, Unit internal, String example, Unit... accepted) {
        this.words = words;
        this.internal = internal;
        this.example = example;
        this.accepted = List.of(accepted);
    }

    /** With its article: "a pressure". */
    public String words() { return words; }

    /** The unit in which the rest of the program holds it. */
    public Unit internal() { return internal; }

    public String example() { return example; }

    public List<Unit> accepted() { return accepted; }

    /** "bar, psi, kPa or MPa". */
    public String unitsInWords() {
        List<String> names = accepted.stream().map(Unit::symbol).collect(Collectors.toList());
        if (names.size() == 1) return names.get(0);
        return String.join(", ", names.subList(0, names.size() - 1)) + " or " + names.get(names.size() - 1);
    }
}
