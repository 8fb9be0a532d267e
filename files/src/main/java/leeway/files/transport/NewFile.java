package leeway.files.transport;

import java.util.Set;
import leeway.files.keys.Commented;

/** The transport file to start from: a small journey that can be planned as it stands, every other key in a comment. */
public final class NewFile {
    private static final Set<String> WRITTEN = Set.of("transport", "patient/sex", "patient/height", "patient/illness", "patient/airway", "oxygen/cylinder", "oxygen/pressure",
            "legs/at worst", "legs/oxygen");

    private NewFile() { }

    public static String text() {
        return """
                # A transport file: one journey of one patient. Every quantity is a number and a unit.
                # Lines that begin with "# " after the indentation are possible and left out; take the "# " out to use one.
                # "leeway check FILE" checks it, "leeway plan FILE" plans it, "leeway catalogue" lists the sheets it may name.
                """ + Commented.of(TransportKeys.TRANSPORT, WRITTEN);
    }
}
