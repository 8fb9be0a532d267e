package leeway.core.settings;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import leeway.core.expression.Type;
import leeway.core.expression.Value;
import leeway.core.kit.Illness;
import leeway.core.kit.Ventilator;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;

/** A name that every formula of a strategy sheet may use: the patient's, the illness's or the device's. */
public enum Fact {
    SEX("sex", "\"female\" or \"male\""),
    GROUP("group", "\"infant\" (under one year), \"child\" (under 16) or \"adult\""),
    EFFORT("effort", "\"none\", \"weak\", \"normal\" or \"strong\""),
    ILLNESS("illness", "the name of its sheet"),
    ILLNESS_GROUP("illness group", "as the illness's sheet says"),
    DRIVE("drive", "of the ventilator: \"pneumatic\", \"turbine\" or \"hand\""),
    AGE("age", Kind.AGE, "as given or estimated"),
    HEIGHT("height", Kind.HEIGHT, "as given or estimated"),
    WEIGHT("weight", Kind.MASS, "measured, or the ideal where nobody measured"),
    PREDICTED_BODY_WEIGHT("predicted body weight", Kind.MASS, "what tidal volumes go by"),
    BODY_MASS_INDEX("body mass index", Type.of(leeway.core.quantity.Dimension.MASS.over(leeway.core.quantity.Dimension.LENGTH.power(2))), Optional.empty(), "weight over height squared, kg/m2"),
    COMPLIANCE("compliance", Kind.COMPLIANCE, "static, of the respiratory system"),
    RESISTANCE("resistance", Kind.RESISTANCE, "of airways, tube and filter, in expiration"),
    TIME_CONSTANT("time constant", Kind.TIME, "resistance times compliance"),
    DEAD_SPACE("dead space", Kind.VOLUME, "all of it: airways, tube, filter, alveolar"),
    CO2_OUTPUT("CO2 output", Kind.FLOW, "made by the body, STPD"),
    SHUNT("shunt", Kind.FRACTION, "share of the cardiac output that passes no ventilated lung"),
    BAROMETRIC_PRESSURE("barometric pressure", Kind.GAS_TENSION, "around the patient at the start");

    private final String words;
    private final Type type;
    private final Optional<Unit> unit;
    private final String meaning;

    Fact(String words, String meaning) { this(words, Type.WORD, Optional.empty(), meaning); }

    Fact(String words, Kind kind, String meaning) { this(words, Type.of(kind), Optional.of(kind.internal()), meaning); }

    Fact(String words, Type type, Optional<Unit> unit, String meaning) {
        this.words = words;
        this.type = type;
        this.unit = unit;
        this.meaning = meaning;
    }

    public String words() { return words; }

    public Type type() { return type; }

    /** The unit in which a page shows it. */
    public Optional<Unit> unit() { return unit; }

    public String meaning() { return meaning; }

    public static Optional<Fact> ofWords(String words) { return Arrays.stream(values()).filter(f -> f.words.equals(words)).findFirst(); }

    Value of(PatientFacts p, Illness illness, Ventilator ventilator) {
        return switch (this) {
            case SEX -> Value.of(p.sex().name().toLowerCase(Locale.ROOT));
            case GROUP -> Value.of(p.group().word());
            case EFFORT -> Value.of(p.effort().name().toLowerCase(Locale.ROOT));
            case ILLNESS -> Value.of(illness.name());
            case ILLNESS_GROUP -> Value.of(illness.group());
            case DRIVE -> Value.of(ventilator.drive().name().toLowerCase(Locale.ROOT));
            case AGE -> Value.of(p.ageYears(), Kind.AGE);
            case HEIGHT -> Value.of(p.heightCm(), Kind.HEIGHT);
            case WEIGHT -> Value.of(p.weightKg(), Kind.MASS);
            case PREDICTED_BODY_WEIGHT -> Value.of(p.predictedBodyWeightKg(), Kind.MASS);
            case BODY_MASS_INDEX -> Value.amount(p.bodyMassIndex(), type.dimension());
            case COMPLIANCE -> Value.of(p.complianceMlPerCmH2O(), Kind.COMPLIANCE);
            case RESISTANCE -> Value.of(p.resistanceCmH2OSPerL(), Kind.RESISTANCE);
            case TIME_CONSTANT -> Value.of(p.timeConstantS(), Kind.TIME);
            case DEAD_SPACE -> Value.of(p.deadSpaceMl(), Kind.VOLUME);
            case CO2_OUTPUT -> Value.of(p.co2OutputMlPerMin(), Units.ML_PER_MIN);
            case SHUNT -> Value.of(p.shunt(), Kind.FRACTION);
            case BAROMETRIC_PRESSURE -> Value.of(p.barometerMmHg(), Kind.GAS_TENSION);
        };
    }
}
