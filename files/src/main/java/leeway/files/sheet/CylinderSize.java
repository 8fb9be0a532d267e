package leeway.files.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.supply.CylinderSizes;
import leeway.files.keys.Form;
import leeway.files.keys.Forms;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;

/**
 * The size of a cylinder: its water capacity, or a letter with its country.
 *
 * @param written   as in the file
 * @param ratingBar the most that it may be filled to at 15 °C
 */
public record CylinderSize(String written, double waterL, double ratingBar) {
    private static final double LEAST_L = 0.1;
    private static final double MOST_L = 200;

    public static Form form() {
        return Form.written("a water capacity, for example \"2 L\", or a size with its country, for example \"UK E\"", "2 L",
                "^\\s*(\\d+(\\.\\d*)?|\\.\\d+)\\s*(L|l|mL|ml)\\s*$|^(" + String.join("|", CylinderSizes.waterL().keySet()) + ")$", CylinderSize::parse);
    }

    static Forms.Parsed parse(String text) {
        Double known = CylinderSizes.waterL().get(text);
        if (known != null) return Forms.Parsed.good(new CylinderSize(text, known, CylinderSizes.ratingBar(text)));
        String letter = text.strip().toUpperCase(Locale.ROOT).replaceFirst("^(SIZE|CYLINDER)\\s+", "");
        if (letter.matches("[A-Z]{1,2}")) {
            List<String> countries = CylinderSizes.waterL().keySet().stream().filter(s -> s.endsWith(" " + letter)).toList();
            String which = countries.isEmpty() ? "Write the water capacity, for example \"2 L\""
                    : "Write " + countries.stream().map(c -> "\"" + c + "\" (" + litres(CylinderSizes.waterL().get(c)) + ")").collect(Collectors.joining(" or ")) + ", or the water capacity, for example \"2 L\"";
            return Forms.Parsed.bad("%s is a letter alone, and the letters differ between countries".formatted(Complaints.echo(text)), which + ".");
        }
        Optional<Quantity> q = Quantity.parse(text);
        if (q.isPresent() && Kind.STORE_VOLUME.accepted().contains(q.get().unit())) {
            double l = q.get().in(Kind.STORE_VOLUME.internal());
            if (l >= LEAST_L && l <= MOST_L) return Forms.Parsed.good(new CylinderSize(text, l, CylinderSizes.ratingBar(text)));
            return Forms.Parsed.bad("%s is impossible: the water capacity of a cylinder lies between 0.1 L and 200 L".formatted(Complaints.echo(text)),
                    "It is the volume of the bottle, not of the gas in it.");
        }
        List<String> near = new ArrayList<>(Nearest.of(text, CylinderSizes.waterL().keySet()));
        if (Quantity.split(text).map(p -> p.unit().isEmpty()).orElse(false)) {
            return Forms.Parsed.bad("%s has no unit".formatted(Complaints.echo(text)), "A water capacity is in L, for example \"%s L\".".formatted(text.strip()));
        }
        return Forms.Parsed.bad("%s is no size of cylinder".formatted(Complaints.echo(text)), "Write the water capacity, for example \"2 L\", or a size with its country: "
                + String.join(", ", CylinderSizes.waterL().keySet()) + ".", near.toArray(String[]::new));
    }

    private static String litres(double l) { return (l == Math.rint(l) ? Long.toString((long) l) : Double.toString(l)) + " L"; }
}
