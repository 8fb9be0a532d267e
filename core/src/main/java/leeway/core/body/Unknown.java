package leeway.core.body;

/** What of a patient's gas exchange is doubtful, and a blood gas tells something of. The words are also the names of the draws. */
public enum Unknown {
    OXYGEN_UPTAKE("oxygen uptake"),
    QUOTIENT("respiratory quotient"),
    DEAD_SPACE("alveolar dead space"),
    SHUNT("shunt"),
    LOW_VENTILATION("low ventilation"),
    CARDIAC_OUTPUT("cardiac output"),
    BASE_EXCESS("base excess");

    private final String words;

    Unknown(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
