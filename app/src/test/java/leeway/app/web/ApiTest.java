package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.ParseOptions;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import leeway.app.report.Examples;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The interface for programs answers as its own description says. */
class ApiTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String NIGHT = Examples.text("night-transfer").orElseThrow();
    private static Server server;
    private static JsonNode description;
    private final HttpClient client = HttpClient.newHttpClient();

    @BeforeAll
    static void start() throws IOException {
        server = Server.start(Server.Options.local());
        description = MAPPER.readTree(JourneyPage.resource("/leeway/docs/api/openapi.json"));
    }

    @AfterAll
    static void stop() { server.close(); }

    private HttpResponse<String> post(String path, String body) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(URI.create(server.address() + path.substring(1))).header("Content-Type", "text/yaml").POST(BodyPublishers.ofString(body)).build(), BodyHandlers.ofString());
    }

    /** What the description's schema of an answer finds wrong with it. */
    private static List<String> wrong(String path, int status, String json) {
        JsonNode schema = description.at("/paths/" + path.replace("/", "~1") + "/post/responses/" + status + "/content/application~1json/schema");
        assertThat(schema.isMissingNode()).as("%s answers %d by description", path, status).isFalse();
        ObjectNode whole = schema.deepCopy();
        whole.set("components", description.get("components").deepCopy());
        nothingElse(whole);
        List<String> out = new ArrayList<>();
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(whole.toString()).validate(json, InputFormat.JSON).forEach(e -> out.add(e.toString()));
        return out;
    }

    /** A key that the description lacks is an error here; a client that reads by the description may meet newer ones. */
    private static void nothingElse(JsonNode schema) {
        if (schema.has("properties") && !schema.has("additionalProperties")) ((ObjectNode) schema).put("additionalProperties", false);
        schema.forEach(ApiTest::nothingElse);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/plan", "/api/map", "/api/rehearse?fault=tube%20kinked", "/api/breathe?for=3%20min"})
    void aRightFileIsAnsweredAsDescribed(String path) throws Exception {
        HttpResponse<String> answer = post(path, NIGHT);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(wrong(path.replaceAll("\\?.*", ""), 200, answer.body())).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/plan", "/api/map", "/api/rehearse", "/api/breathe"})
    void aWrongFileIsAnsweredWithEveryMistakeAndItsPlace(String path) throws Exception {
        HttpResponse<String> answer = post(path, NIGHT.replace("example pneumatic", "exmple pneumatic").replace("185 bar", "185"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(wrong(path, 422, answer.body())).isEmpty();
        JsonNode errors = MAPPER.readTree(answer.body()).at("/files/0/errors");
        assertThat(errors).hasSize(2);
        assertThat(errors.get(0).get("nearest").asText()).isEqualTo("example pneumatic");
        assertThat(errors.get(0).get("line").asInt()).isEqualTo(14);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/rehearse?fault=nothing%20such", "/api/rehearse?at=soon", "/api/rehearse?draws=-1", "/api/rehearse?draws=100000", "/api/rehearse?pairs=perhaps", "/api/rehearse?seed=3000000000", "/api/rehearse?draw=5"})
    void aWrongParameterIsAnsweredInOneLine(String path) throws Exception {
        HttpResponse<String> answer = post(path, NIGHT);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(wrong("/api/rehearse", 422, answer.body())).isEmpty();
        assertThat(answer.body()).contains(path.replaceAll(".*\\?(\\w+)=.*", "$1").replace("fault", "nothing such"));
    }

    /** What the description gives as an example is a file that is answered, and an answer that is given. */
    @Test
    void theExamplesOfTheDescriptionAreReal() throws Exception {
        for (String path : List.of("/api/plan", "/api/map", "/api/rehearse", "/api/breathe")) {
            String file = description.at("/paths/" + path.replace("/", "~1") + "/post/requestBody/content/text~1yaml/example").asText();
            HttpResponse<String> answer = post(path + (path.endsWith("rehearse") ? "?fault=tube%20kinked" : path.endsWith("breathe") ? "?for=1%20min" : ""), file);
            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        }
        HttpResponse<String> health = client.send(HttpRequest.newBuilder(URI.create(server.address() + "health")).build(), BodyHandlers.ofString());
        assertThat(MAPPER.readTree(health.body())).isEqualTo(description.at("/paths/~1health/get/responses/200/content/application~1json/example"));
    }

    @Test
    void aPlanIsMadeWithTheSeedAskedFor() throws Exception {
        assertThat(MAPPER.readTree(post("/api/plan?seed=7", NIGHT).body()).path("seed").asLong()).isEqualTo(7);
        assertThat(MAPPER.readTree(post("/api/plan", NIGHT).body()).path("seed").asLong()).isEqualTo(1);
    }

    /** What the description allows of a parameter and what the server takes are one: the ends of each range and just beyond. */
    @Test
    void everyParameterIsTakenAsDescribed() throws Exception {
        for (String path : List.of("/api/plan", "/api/map", "/api/rehearse", "/api/breathe")) {
            JsonNode parameters = description.at("/paths/" + path.replace("/", "~1") + "/post/parameters");
            for (JsonNode p : parameters) {
                JsonNode schema = p.get("schema");
                String name = p.get("name").asText();
                List<String> good = new ArrayList<>(), bad = new ArrayList<>();
                if (schema.has("minimum")) bad.add(Long.toString(schema.get("minimum").asLong() - 1));
                if (schema.has("maximum")) bad.add(Long.toString(schema.get("maximum").asLong() + 1));
                if (name.equals("seed")) good.add(schema.get("maximum").asText());
                schema.path("enum").forEach(e -> good.add(e.asText()));
                schema.path("examples").forEach(e -> good.add(e.asText()));
                if (schema.has("enum")) bad.add("neither");
                // a broken file is refused after its parameters were taken, and costs nothing
                for (String value : good) assertThat(MAPPER.readTree(post(path + "?" + name + "=" + value.replace(" ", "%20"), "transport: x").body()).has("files")).as("%s %s=%s", path, name, value).isTrue();
                for (String value : bad) assertThat(MAPPER.readTree(post(path + "?" + name + "=" + value, "transport: x").body()).path("message").asText()).as("%s %s=%s", path, name, value).contains(name);
            }
            assertThat(MAPPER.readTree(post(path + "?unheard-of=1", "transport: x").body()).path("message").asText()).as(path).contains("unheard-of");
        }
    }

    /** By a general-purpose parser of such descriptions: nothing unknown, nothing missing, every reference leads somewhere, every operation has a name of its own. */
    @Test
    void anIndependentParserReadsTheDescriptionWithoutAWord() {
        ParseOptions options = new ParseOptions();
        options.setResolve(true);
        SwaggerParseResult read = new OpenAPIV3Parser().readContents(JourneyPage.resource("/leeway/docs/api/openapi.json"), List.of(), options);
        assertThat(read.getMessages()).isEmpty();
        assertThat(read.getOpenAPI().getSpecVersion()).hasToString("V31");
        assertThat(read.getOpenAPI().getPaths().keySet()).containsExactlyInAnyOrder("/health", "/api/plan", "/api/rehearse", "/api/breathe", "/api/map", "/api/openapi.json");
        assertThat(read.getOpenAPI().getPaths().values().stream().flatMap(p -> p.readOperations().stream()).map(o -> o.getOperationId())).doesNotContainNull().doesNotHaveDuplicates();
        SwaggerParseResult broken = new OpenAPIV3Parser().readContents(JourneyPage.resource("/leeway/docs/api/openapi.json").replaceFirst("\"description\": \"the answer\"", "\"decsription\": \"the answer\""), List.of(), options);
        assertThat(broken.getMessages()).as("it does look").isNotEmpty();
    }

    /** Every key of an answer stands in the description. */
    @ParameterizedTest
    @ValueSource(strings = {"infant-by-road", "copd-by-ferry", "hand-bag-across-town", "mode-support"})
    void everyKeyOfAnAnswerIsDescribed(String example) throws Exception {
        String file = Examples.text(example).orElseThrow();
        for (String path : List.of("/api/plan", "/api/breathe?for=2%20min")) {
            HttpResponse<String> answer = post(path, file);
            assertThat(answer.statusCode()).as(path).isEqualTo(200);
            assertThat(wrong(path.replaceAll("\\?.*", ""), 200, answer.body())).as("%s of %s", path, example).isEmpty();
        }
    }

    @Test
    void theDescriptionSaysOfEveryKeyWhatItIs() {
        List<String> silent = new ArrayList<>();
        for (String name : List.of("Plan", "Rehearsal", "Rehearsals", "Breaths", "Map", "Check", "Refusal")) silent(name, description.at("/components/schemas/" + name), silent);
        assertThat(silent).isEmpty();
    }

    private static void silent(String at, JsonNode schema, List<String> silent) {
        if (schema.has("properties")) {
            schema.get("properties").properties().forEach(e -> {
                if (!e.getValue().path("description").asText().matches(".{2,}")) silent.add(at + "." + e.getKey());
                silent(at + "." + e.getKey(), e.getValue(), silent);
            });
        }
        if (schema.has("items")) silent(at + "[]", schema.get("items"), silent);
    }

    @Test
    void everyRefusalIsDescribed() {
        description.get("paths").properties().stream().filter(p -> p.getKey().startsWith("/api/")).forEach(p -> p.getValue().properties().forEach(o -> {
            for (String code : o.getKey().equals("post") ? List.of("400", "401", "403", "413", "415", "421", "422", "429", "500", "503") : List.of("401", "421", "429")) assertThat(o.getValue().at("/responses/" + code).isMissingNode()).as("%s %s", p.getKey(), code).isFalse();
        }));
    }

    @Test
    void theDescriptionNamesEveryRoute() throws Exception {
        assertThat(description.get("openapi").asText()).isEqualTo("3.1.0");
        for (String path : List.of("/api/plan", "/api/rehearse", "/api/map", "/api/breathe")) assertThat(description.at("/paths/" + path.replace("/", "~1") + "/post").isMissingNode()).as(path).isFalse();
        HttpResponse<String> served = client.send(HttpRequest.newBuilder(URI.create(server.address() + "api/openapi.json")).build(), BodyHandlers.ofString());
        assertThat(MAPPER.readTree(served.body())).isEqualTo(description);
    }

    /** A thousand damaged files: cut, doubled, bytes exchanged. Never a fault of ours. */
    @Test
    void aThousandMalformedFilesAreEachAnsweredAndNoneIsAFaultOfOurs() throws Exception {
        SplittableRandom random = new SplittableRandom(20_261_125);
        for (int i = 0; i < 1_000; i++) {
            StringBuilder text = new StringBuilder(NIGHT);
            for (int k = random.nextInt(1, 6); k > 0; k--) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(4)) {
                    case 0 -> text.setCharAt(at, (char) random.nextInt(0x20, 0x2FF));
                    case 1 -> text.delete(at, Math.min(text.length(), at + random.nextInt(1, 40)));
                    case 2 -> text.insert(at, "{[:\n\t-&*!|>'\"%@`,#".charAt(random.nextInt(18)));
                    default -> text.insert(at, text.substring(0, Math.min(60, text.length())));
                }
                if (text.isEmpty()) text.append('x');
            }
            if (i % 97 == 0) text.setLength(Math.min(text.length(), 3));
            HttpResponse<String> answer = post("/api/plan", text.toString());
            assertThat(answer.statusCode()).as("damage %d:%n%s%n%s", i, text, answer.body()).isIn(200, 422);
        }
    }
}
