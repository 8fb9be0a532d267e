package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import leeway.Approved;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What {@code leeway plan} says of three journeys, whole, so that a change nobody meant is seen: an adult on a machine driven
 * by gas, an infant on a turbine, a hand bag. The text to the letter; of the JSON every key, its numbers to three digits,
 * without the curves, the tables for the wall, the legs of each rehearsal, the version and the file's hash.
 * {@code -Dsurefire.args=-Dapprove} writes them anew; the difference is then reviewed.
 */
class PlanApprovalTest {
    private static final String FOLDER = "app/src/test/resources/leeway/approved/plan/";
    private static final List<String> LEFT_OUT = List.of("/version", "/sourceHash", "/oxygen/series", "/oxygen/wall", "/power/series");
    private static final MathContext THREE = new MathContext(3);

    @ParameterizedTest @ValueSource(strings = {"night-transfer", "infant-by-road", "hand-bag-across-town"})
    void thePlanReadsAsApproved(String name) throws IOException {
        String file = Approved.root().resolve("examples").resolve(name + ".yaml").toString();
        Run text = Run.of("plan", file);
        assertThat(text.err()).isEmpty();
        Approved.same(FOLDER + name + ".txt", text.out());
        ObjectMapper mapper = new ObjectMapper();
        JsonNode plan = mapper.readTree(Run.of("plan", file, "--format", "json").out());
        for (String path : LEFT_OUT) leaveOut((ObjectNode) plan, path);
        for (JsonNode row : plan.get("rehearsals")) ((ObjectNode) row).remove("byLeg");
        DefaultPrettyPrinter lines = new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
        Approved.same(FOLDER + name + ".json", mapper.writer(lines).writeValueAsString(rounded(plan)) + "\n");
    }

    private static void leaveOut(ObjectNode plan, String path) {
        int last = path.lastIndexOf('/');
        if (plan.at(path.substring(0, last)) instanceof ObjectNode parent) parent.remove(path.substring(last + 1));
    }

    private static JsonNode rounded(JsonNode node) {
        if (node.isNumber()) return DecimalNode.valueOf(new BigDecimal(new BigDecimal(node.asText()).round(THREE).stripTrailingZeros().toPlainString()));
        if (node instanceof ArrayNode array) for (int i = 0; i < array.size(); i++) array.set(i, rounded(array.get(i)));
        if (node instanceof ObjectNode object) object.fieldNames().forEachRemaining(key -> object.set(key, rounded(object.get(key))));
        return node;
    }
}
