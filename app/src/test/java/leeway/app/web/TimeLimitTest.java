package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leeway.app.report.Examples;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every route that works something out stops at the limit of time, says so, and leaves its worker free. */
class TimeLimitTest {
    /** A leg of a week takes any machine seconds; a map takes no longer than for a short one, so the limit is short. */
    private static final Duration LIMIT = Duration.ofMillis(40);
    private static final String WEEK = Examples.text("heavy-patient-by-air").orElseThrow().replace("takes: 55 min", "takes: 167 h").replace("at worst: 80 min", "at worst: 168 h");
    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static Server server;
    private static String cookie;
    private static String token;

    @BeforeAll
    static void start() throws Exception {
        Server.Options local = Server.Options.local();
        server = Server.start(new Server.Options(local.host(), local.port(), local.passwords(), LIMIT, local.catalogue(), local.seed()));
        rests(6_000);       // the journey that is worked out beforehand
        HttpResponse<String> page = send(HttpRequest.newBuilder(at("new")).build());
        // a machine that has just begun may need longer than the limit even for an empty journey
        for (int i = 0; i < 100 && page.statusCode() != 200; i++) page = send(HttpRequest.newBuilder(at("new")).build());
        cookie = page.headers().firstValue("Set-Cookie").orElseThrow().split(";")[0];
        Matcher m = Pattern.compile("name=\"token\" value=\"([^\"]+)\"").matcher(page.body());
        assertThat(m.find()).isTrue();
        token = m.group(1);
    }

    @AfterAll
    static void stop() { server.close(); }

    private static URI at(String path) { return URI.create(server.address() + path); }

    private static HttpResponse<String> send(HttpRequest asks) throws IOException, InterruptedException { return CLIENT.send(asks, BodyHandlers.ofString()); }

    /** Looks until nobody works any more. */
    private static void rests(int looks) throws InterruptedException {
        for (int i = 0; i < looks && !server.resting(); i++) Thread.sleep(10);
        assertThat(server.resting()).as("the worker is free").isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"GET /?", "POST /", "GET /map?", "GET /gases?", "POST /compare", "GET /compare?", "GET /rehearse?", "GET /rehearse/fault?fault=tube%20kinked&", "GET /card.pdf?", "GET /report.pdf?",
            "POST /api/plan", "POST /api/plan?seed=3", "POST /api/map", "POST /api/rehearse", "POST /api/rehearse?draws=200&pairs=yes", "POST /api/breathe"})
    void theLimitHoldsAndLeavesTheWorkerFree(String route) throws Exception {
        String path = route.substring(route.indexOf('/') + 1);
        HttpRequest.Builder asks = HttpRequest.newBuilder(at(route.startsWith("GET") ? path + "s=" + Packed.of(WEEK) : path)).header("Cookie", cookie);
        if (path.startsWith("api/")) {
            asks.header("Content-Type", "text/yaml").POST(BodyPublishers.ofString(WEEK));
        } else if (route.startsWith("POST")) {
            asks.header("Content-Type", "application/x-www-form-urlencoded").POST(BodyPublishers.ofString("token=" + token + "&was=" + Packed.of(WEEK) + "&pinned=&do=work&text=" + URLEncoder.encode(WEEK, StandardCharsets.UTF_8)));
        }
        HttpResponse<String> answer = send(asks.build());
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(503);
        assertThat(answer.body()).contains("This took longer than", "was stopped");
        rests(300);         // the whole would take longer
    }
}
