package leeway.core.kit;

/** A filter with or without heat and moisture exchange, between circuit and airway. */
public record Filter(String name, double deadSpaceMl, double resistanceCmH2OSPerL, String source) {
    public static final Filter NONE = new Filter("none", 0, 0, "nothing fitted");
}
