package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leeway.app.report.Examples;
import leeway.files.sheet.Catalogue;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the server does before any page: headers, names, tokens, passwords, limits. */
class ServerTest {
    private static Server server;
    private final HttpClient client = HttpClient.newHttpClient();

    @BeforeAll
    static void start() throws IOException { server = Server.start(Server.Options.local()); }

    @AfterAll
    static void stop() { server.close(); }

    private URI at(String path) { return URI.create(server.address() + path.substring(1)); }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(at(path)).build(), BodyHandlers.ofString());
    }

    private HttpResponse<String> post(String path, String type, String body, String... headers) throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(at(path)).header("Content-Type", type).POST(BodyPublishers.ofString(body));
        if (headers.length > 0) request.headers(headers);
        return client.send(request.build(), BodyHandlers.ofString());
    }

    /** Sends the bytes as they are; the first line of the answer. */
    private String raw(String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            socket.setSoTimeout(5_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            InputStream in = socket.getInputStream();
            StringBuilder line = new StringBuilder();
            for (int c = in.read(); c >= 0 && c != '\r'; c = in.read()) line.append((char) c);
            return line.toString();
        }
    }

    @Test
    void everyAnswerTellsTheBrowserToTrustNothingButUs() throws Exception {
        for (String path : new String[] {"/", "/no/such/page", "/health", "/api/no"}) {
            HttpResponse<String> answer = get(path);
            assertThat(answer.headers().firstValue("Content-Security-Policy")).as(path).hasValueSatisfying(p -> assertThat(p)
                    .contains("default-src 'none'", "script-src 'self'", "style-src 'self'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'")
                    .doesNotContain("unsafe", "data:", "*"));
            assertThat(answer.headers().firstValue("X-Content-Type-Options")).as(path).contains("nosniff");
            assertThat(answer.headers().firstValue("Referrer-Policy")).as(path).contains("same-origin");
            assertThat(answer.headers().firstValue("X-Frame-Options")).as(path).contains("DENY");
            assertThat(answer.headers().firstValue("Server")).as(path).isEmpty();
            assertThat(answer.headers().firstValue("Cache-Control")).as(path).contains("no-store");
        }
    }

    @Test
    void theHealthIsOneLineOfJson() throws Exception {
        HttpResponse<String> answer = get("/health");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type")).contains("application/json;charset=utf-8");
        assertThat(answer.body()).contains("\"status\": \"ok\"");
    }

    @Test
    void assetsAreKeptForGoodAndSentCompressed() throws Exception {
        String page = get("/no/such/page").body();
        Matcher style = Pattern.compile("/assets/[0-9a-f]{12}/leeway\\.css").matcher(page);
        assertThat(style.find()).isTrue();
        HttpResponse<byte[]> zipped = client.send(HttpRequest.newBuilder(at(style.group())).header("Accept-Encoding", "gzip").build(), BodyHandlers.ofByteArray());
        assertThat(zipped.headers().firstValue("Content-Encoding")).contains("gzip");
        assertThat(zipped.headers().firstValue("Cache-Control").orElse("")).contains("immutable");
        assertThat(new java.util.zip.GZIPInputStream(new java.io.ByteArrayInputStream(zipped.body())).readAllBytes()).isEqualTo(get(style.group()).body().getBytes(StandardCharsets.UTF_8));
        assertThat(get("/assets/000000000000/leeway.css").statusCode()).isEqualTo(404);
        assertThat(raw("GET /assets/../../etc/passwd HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")).contains(" 40");
    }

    @Test
    void pagesSpeakTheLanguageOfTheBrowserOrTheOneAskedFor() throws Exception {
        HttpResponse<String> german = client.send(HttpRequest.newBuilder(at("/none")).header("Accept-Language", "fr, de-AT;q=0.8, en;q=0.5").build(), BodyHandlers.ofString());
        assertThat(german.body()).contains("<html lang=\"de\">", "Diese Seite gibt es hier nicht");
        HttpResponse<String> asked = client.send(HttpRequest.newBuilder(at("/none?lang=en")).header("Accept-Language", "de").build(), BodyHandlers.ofString());
        assertThat(asked.body()).contains("<html lang=\"en\">");
        assertThat(asked.headers().firstValue("Set-Cookie").orElse("")).contains("lang=en", "SameSite=Lax", "HttpOnly");
    }

    @Test
    void aFormWithoutTheTokenOfOurPageIsRefused() throws Exception {
        HttpResponse<String> bare = post("/", "application/x-www-form-urlencoded", "text=transport");
        assertThat(bare.statusCode()).isEqualTo(403);
        HttpResponse<String> invented = post("/", "application/x-www-form-urlencoded", "text=transport&token=a.b", "Cookie", "leeway=012345678901234567890123");
        assertThat(invented.statusCode()).isEqualTo(403);
        HttpResponse<String> foreign = post("/api/plan", "text/yaml", "transport: x", "Origin", "http://elsewhere.example");
        assertThat(foreign.statusCode()).isEqualTo(403);
    }

    @Test
    void onlyNamesOfThisMachineAreAnswered() throws Exception {
        assertThat(raw("GET /health HTTP/1.1\r\nHost: rebound.example\r\nConnection: close\r\n\r\n")).contains(" 421");
        assertThat(raw("GET /health HTTP/1.1\r\nHost: localhost:" + server.port() + "\r\nConnection: close\r\n\r\n")).contains(" 200");
    }

    @Test
    void abodyOverOneMegabyteIsRefusedInOneLine() throws Exception {
        HttpResponse<String> answer = post("/api/plan", "text/yaml", "x".repeat(Server.MAX_BODY_BYTES + 1));
        assertThat(answer.statusCode()).isEqualTo(413);
        assertThat(answer.body()).contains("larger than 1 MB");
    }

    @Test
    void aHostThatOthersReachNeedsPasswords() {
        assertThatThrownBy(() -> Server.start(new Server.Options("0.0.0.0", 0, Optional.empty(), Duration.ofSeconds(5), Catalogue.builtIn(), 1))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void withPasswordsNothingButTheHealthIsToldToStrangersAndGuessingIsSlowedDown(@TempDir Path dir) throws Exception {
        Passwords people = Passwords.read(Files.writeString(dir.resolve("people"), PasswordsTest.LINE));
        try (Server open = Server.start(new Server.Options("0.0.0.0", 0, Optional.of(people), Duration.ofSeconds(5), Catalogue.builtIn(), 1))) {
            URI page = URI.create("http://127.0.0.1:" + open.port() + "/none");
            HttpResponse<String> stranger = client.send(HttpRequest.newBuilder(page).build(), BodyHandlers.ofString());
            assertThat(stranger.statusCode()).isEqualTo(401);
            assertThat(stranger.headers().firstValue("WWW-Authenticate").orElse("")).startsWith("Basic");
            assertThat(client.send(HttpRequest.newBuilder(page.resolve("/health")).build(), BodyHandlers.ofString()).statusCode()).isEqualTo(200);
            HttpRequest named = HttpRequest.newBuilder(page).header("Authorization", PasswordsTest.basic("nurse", "a long pass phrase")).build();
            assertThat(client.send(named, BodyHandlers.ofString()).statusCode()).isEqualTo(404);
            int last = 0;
            for (int i = 0; i < 8; i++) {
                last = client.send(HttpRequest.newBuilder(page).header("Authorization", PasswordsTest.basic("nurse", "guess " + i)).build(), BodyHandlers.ofString()).statusCode();
            }
            assertThat(last).isEqualTo(429);
        }
    }

    @Test
    void reportAndCardArePrinted() throws Exception {
        for (String name : new String[] {"card.pdf", "report.pdf"}) {
            HttpResponse<byte[]> pdf = HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(server.address() + name + "?example=infant-by-road")).build(), BodyHandlers.ofByteArray());
            assertThat(pdf.statusCode()).isEqualTo(200);
            assertThat(pdf.headers().firstValue("Content-Type").orElse("")).startsWith("application/pdf");
            assertThat(new String(pdf.body(), 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
        }
        assertThat(get("/card.pdf?s=none").statusCode()).isEqualTo(400);
    }

    @Test
    void whereNothingVentilatesThePageSaysWhyThereIsNoMapAndTheReportIsPrintedWithoutIt() throws Exception {
        String state = "?s=" + Packed.of(Examples.text("free-flow-to-the-ward").orElseThrow());
        HttpResponse<String> map = get("/map" + state);
        assertThat(map.statusCode()).isEqualTo(200);
        assertThat(map.body()).contains("there is no operating map");
        assertThat(get("/map" + state + "&lang=de").body()).contains("gibt es keine Karte");
        assertThat(get("/report.pdf" + state).statusCode()).isEqualTo(200);
    }

    /** A transport file with so many letters of comment that hardly pack. */
    private static String commented(int letters) {
        SplittableRandom random = new SplittableRandom(1);
        StringBuilder out = new StringBuilder(Examples.text("hand-bag-across-town").orElseThrow());
        for (int i = 0; i < letters; i++) out.append(i % 90 == 0 ? "\n# " : "").append((char) random.nextInt('!', '~'));
        return out.append('\n').toString();
    }

    @Test
    void aTextTooLongForAnAddressKeepsItsMapReportAndRehearsals() throws Exception {
        HttpResponse<String> first = get("/new");
        String cookie = first.headers().firstValue("Set-Cookie").orElseThrow().split(";")[0];
        Matcher token = Pattern.compile("name=\"token\" value=\"([^\"]+)\"").matcher(first.body());
        assertThat(token.find()).isTrue();
        Matcher was = Pattern.compile("name=\"was\" value=\"([^\"]+)\"").matcher(first.body());
        assertThat(was.find()).isTrue();
        String form = "token=" + token.group(1) + "&was=" + was.group(1) + "&do=work&text=" + URLEncoder.encode(commented(20_000), StandardCharsets.UTF_8);
        HttpResponse<String> answer = post("/", "application/x-www-form-urlencoded", form, "Cookie", cookie);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(answer.body()).contains("the link works while this server runs");
        Matcher state = Pattern.compile("href=\"/report\\.pdf\\?s=(2[\\w-]{43})\"").matcher(answer.body());
        assertThat(state.find()).isTrue();
        for (String path : List.of("/", "/map", "/gases", "/report.pdf", "/card.pdf", "/rehearse", "/compare", "/rehearse/fault")) {
            String address = path + "?s=" + state.group(1) + (path.endsWith("fault") ? "&fault=disconnection%20at%20the%20patient" : "");
            assertThat(get(address).statusCode()).as(path).isEqualTo(200);
        }
        assertThat(get("/?s=2" + "A".repeat(43)).statusCode()).isEqualTo(410);
    }

    private HttpResponse<String> upload(byte[] file) throws Exception {
        HttpResponse<String> page = get("/new");
        Matcher token = Pattern.compile("name=\"token\" value=\"([^\"]+)\"").matcher(page.body());
        assertThat(token.find()).isTrue();
        java.io.ByteArrayOutputStream body = new java.io.ByteArrayOutputStream();
        body.writeBytes(("--part\r\nContent-Disposition: form-data; name=\"token\"\r\n\r\n" + token.group(1) + "\r\n--part\r\nContent-Disposition: form-data; name=\"file\"; filename=\"t.yaml\"\r\n\r\n").getBytes(StandardCharsets.UTF_8));
        body.writeBytes(file);
        body.writeBytes("\r\n--part--\r\n".getBytes(StandardCharsets.UTF_8));
        HttpRequest asks = HttpRequest.newBuilder(at("/open")).header("Content-Type", "multipart/form-data; boundary=part").header("Cookie", page.headers().firstValue("Set-Cookie").orElseThrow().split(";")[0])
                .POST(BodyPublishers.ofByteArray(body.toByteArray())).build();
        return client.send(asks, BodyHandlers.ofString());
    }

    /** As editors of other systems write it: with a mark at its head, with other ends of lines. In another encoding it is refused, for its names would be lost. */
    @Test
    void aFileOfAnyEditorIsOpenedAndOneInAnotherEncodingIsRefusedInALine() throws Exception {
        String file = Examples.text("hand-bag-across-town").orElseThrow();
        HttpResponse<String> marked = upload(("\uFEFF" + file.replace("\n", "\r\n")).getBytes(StandardCharsets.UTF_8));
        assertThat(marked.statusCode()).isEqualTo(200);
        assertThat(marked.body()).doesNotContain("\uFEFF").contains(file.lines().skip(1).findFirst().orElseThrow().split(":")[0]);
        HttpResponse<String> latin = upload(file.replace("Holm", "H\u00F6lm").getBytes(StandardCharsets.ISO_8859_1));
        assertThat(latin.statusCode()).isEqualTo(422);
        assertThat(latin.body()).contains("this is not UTF-8 text", "Save it as UTF-8").doesNotContain("\uFFFD");
        assertThat(upload(file.getBytes(StandardCharsets.UTF_16)).body()).contains("this is UTF-16 text");
        assertThat(upload(file.replace("  height:", "  hieght:").getBytes(StandardCharsets.UTF_8)).body()).contains("has no key \"hieght\"");
    }

    @Test
    void theLongestAddressesFitWithTheAddressOfThePageThatAsks() throws Exception {
        String state = Packed.of(commented(4_600));
        assertThat(state.length()).isBetween(Packed.MAX_ADDRESS * 8 / 10, Packed.MAX_ADDRESS);
        String page = server.address() + "compare?s=" + state + "&pin=" + state;
        HttpRequest asks = HttpRequest.newBuilder(URI.create(page)).header("Referer", page).header("HX-Current-URL", page).build();
        assertThat(client.send(asks, BodyHandlers.ofString()).statusCode()).isEqualTo(200);
    }

    @Test
    void cookiesOfOursAreForThisSiteAndNoScript() throws Exception {
        for (String cookie : get("/new?lang=de").headers().allValues("Set-Cookie")) assertThat(cookie).contains("SameSite=Lax", "HttpOnly", "Path=/");
        assertThat(get("/new?lang=de").headers().allValues("Set-Cookie")).hasSize(2);
        HttpResponse<String> api = post("/api/plan", "text/yaml", "transport: x");
        assertThat(api.headers().allValues("Set-Cookie")).as("programs get none").isEmpty();
    }

    @Test
    void anAnswerThatTakesTooLongIsStoppedWithAMessage() throws Exception {
        Server.Options local = Server.Options.local();
        try (Server hurried = Server.start(new Server.Options(local.host(), local.port(), local.passwords(), Duration.ofMillis(30), local.catalogue(), local.seed()))) {
            String file = Examples.text("heavy-patient-by-air").orElseThrow();
            HttpRequest asks = HttpRequest.newBuilder(URI.create(hurried.address() + "api/rehearse?draws=200&pairs=yes")).header("Content-Type", "text/yaml").POST(BodyPublishers.ofString(file)).build();
            HttpResponse<String> answer = client.send(asks, BodyHandlers.ofString());
            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(503);
            assertThat(answer.body()).contains("was stopped");
            for (String paper : List.of("report.pdf", "card.pdf")) {
                HttpResponse<String> printed = client.send(HttpRequest.newBuilder(URI.create(hurried.address() + paper + "?example=heavy-patient-by-air")).build(), BodyHandlers.ofString());
                assertThat(printed.statusCode()).as(paper).isEqualTo(503);
                assertThat(printed.body()).as(paper).contains("was stopped");
            }
        }
    }

    @Test
    void whoReachesAServerFromOutsideIsSlowedDown(@TempDir Path dir) throws Exception {
        Passwords people = Passwords.read(Files.writeString(dir.resolve("people"), PasswordsTest.LINE));
        try (Server open = Server.start(new Server.Options("0.0.0.0", 0, Optional.of(people), Duration.ofSeconds(5), Catalogue.builtIn(), 1))) {
            HttpRequest named = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + open.port() + "/health")).build();
            HttpResponse<String> last = client.send(named, BodyHandlers.ofString());
            for (int i = 0; i < 400 && last.statusCode() == 200; i++) last = client.send(named, BodyHandlers.ofString());
            assertThat(last.statusCode()).isEqualTo(429);
            assertThat(last.headers().firstValue("Retry-After")).isPresent();
        }
    }

    @Test
    void noPathThatARequestNamesIsOpened(@TempDir Path dir) throws Exception {
        Path secret = Files.writeString(dir.resolve("secret.yaml"), "a secret of this machine");
        String up = "..%2f".repeat(12);
        for (String path : List.of("/?example=" + up + secret.toString().substring(1), "/?s=" + secret, "/sheets/ventilator/" + up + "etc%2fpasswd", "/sheets/" + up + "etc/passwd", "/figures/" + up + "etc%2fpasswd", "/rehearse/fault?fault=" + secret,
                "/figures/draw?f:ventilator=" + secret, "/assets/x/" + up + "etc%2fpasswd", "/card.pdf?example=" + secret)) {
            HttpResponse<String> answer = get(path);
            assertThat(answer.statusCode()).as(path).isLessThan(500);
            assertThat(answer.body()).as(path).doesNotContain("a secret of this machine", "root:");
        }
        HttpResponse<String> file = post("/api/plan", "text/yaml", Examples.text("hand-bag-across-town").orElseThrow().replace("ventilator: hand bag", "ventilator: " + secret));
        assertThat(file.statusCode()).isEqualTo(422);
        assertThat(file.body()).doesNotContain("a secret of this machine");
    }

    private static final String CLOSE = "Connection: close\r\n";

    /** Sends the bytes as they are; all of the answer. */
    private static String whole(int port, String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void bytesThatAreNoRequestAreAnsweredInPlainTextWithTheSameHeaders() throws Exception {
        for (String odd : List.of("GET / HTTP/1.1\r\nHost: a b\r\n\r\n", "GET /health HTTP/1.1\r\nHost: localhost\r\nHost: elsewhere\r\n\r\n", "GET /<b>" + "a".repeat(60_000) + " HTTP/1.1\r\nHost: localhost\r\n" + CLOSE + "\r\n",
                "POST /api/plan HTTP/1.1\r\nHost: localhost\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET /health HTTP/1.1\r\nHost: localhost\r\n\r\n")) {
            String answer = whole(server.port(), odd);
            assertThat(answer).startsWith("HTTP/1.1 4").contains("nosniff", "no-store", "default-src 'none'", "text/plain").contains("no request that can be answered").doesNotContain("<", "Jetty");
            assertThat(answer.split("HTTP/1\\.1", -1)).as("one answer only").hasSize(2);
        }
    }

    @Test
    void aServerOfThisMachineAnswersUnderTheNameItWasGivenInAnyCase() throws Exception {
        assertThat(raw("GET /health HTTP/1.1\r\nHost: LOCALHOST\r\n" + CLOSE + "\r\n")).contains(" 200");
        try (Server other = Server.start(new Server.Options("127.0.0.2", 0, Optional.empty(), Duration.ofSeconds(5), Catalogue.builtIn(), 1))) {
            assertThat(client.send(HttpRequest.newBuilder(URI.create(other.address() + "health")).build(), BodyHandlers.ofString()).statusCode()).isEqualTo(200);
        }
    }

    @Test
    void aPictureInAPageOfAnotherSiteDoesNotMakeUsWorkAndALinkFromThereIsWelcome() throws Exception {
        String ask = "GET /new HTTP/1.1\r\nHost: localhost\r\n" + CLOSE + "Sec-Fetch-Site: cross-site\r\n";
        assertThat(raw(ask + "Sec-Fetch-Mode: no-cors\r\nSec-Fetch-Dest: image\r\n\r\n")).contains(" 403");
        assertThat(raw(ask + "Sec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: iframe\r\n\r\n")).contains(" 403");
        assertThat(raw(ask + "Sec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: document\r\n\r\n")).contains(" 200");
    }

    @Test
    void aMethodThatThereIsNotIsAnsweredWithThoseThatThereAre() throws Exception {
        assertThat(whole(server.port(), "DELETE /api/plan HTTP/1.1\r\nHost: localhost\r\n" + CLOSE + "\r\n")).startsWith("HTTP/1.1 405").containsPattern("Allow: .*POST");
        assertThat(whole(server.port(), "TRACE / HTTP/1.1\r\nHost: localhost\r\nCookie: secret=1\r\n" + CLOSE + "\r\n")).startsWith("HTTP/1.1 405").doesNotContain("secret");
    }

    @Test
    void aBodyInPiecesHasTheSameLimitAndAPackedOneIsNotUnpacked() throws Exception {
        String piece = "x".repeat(100_000);
        StringBuilder body = new StringBuilder();
        for (int i = 0; i < 15; i++) body.append(Integer.toHexString(piece.length())).append("\r\n").append(piece).append("\r\n");
        String head = " HTTP/1.1\r\nHost: localhost\r\n" + CLOSE;
        for (String path : List.of("/api/plan", "/", "/open")) assertThat(whole(server.port(), "POST " + path + head + "Transfer-Encoding: chunked\r\nContent-Type: text/yaml\r\n\r\n" + body + "0\r\n\r\n")).as(path).startsWith("HTTP/1.1 4").doesNotContain(" 5");
        assertThat(post("/api/plan", "text/yaml", "\u001f\u008b", "Content-Encoding", "gzip").statusCode()).isEqualTo(415);
    }

    /** Each key that is not known was looked for among its neighbours, far beyond those that are shown. */
    @Test
    void aFileOfNothingButMistakesIsAnsweredWithTheFirst() throws Exception {
        StringBuilder file = new StringBuilder();
        for (int i = 0; i < 80_000; i++) file.append('k').append(i).append(": 1\n");
        HttpResponse<String> answer = post("/api/plan", "text/yaml", file.toString());
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("more errors are not shown");
    }

    @Test
    void whoIsBeingAnsweredWhenTheServerStopsIsToldSo() throws Exception {
        Server stopping = Server.start(Server.Options.local());
        HttpRequest asks = HttpRequest.newBuilder(URI.create(stopping.address() + "api/rehearse?draws=200&pairs=yes")).header("Content-Type", "text/yaml").POST(BodyPublishers.ofString(Examples.text("heavy-patient-by-air").orElseThrow())).build();
        while (!stopping.resting()) Thread.sleep(5);     // the first journey is worked out beforehand
        var answer = client.sendAsync(asks, BodyHandlers.ofString());
        while (stopping.resting()) Thread.sleep(5);
        stopping.close();
        assertThat(answer.get().statusCode()).isEqualTo(503);
        assertThat(answer.get().body()).contains("being stopped");
    }

    @Test
    void behindAProxyEachWhoAsksHasABucketOfTheirOwnAndCookiesAreForEncryptedConnectionsOnly(@TempDir Path dir) throws Exception {
        Passwords people = Passwords.read(Files.writeString(dir.resolve("people"), PasswordsTest.LINE));
        Server.Options options = new Server.Options("127.0.0.1", 0, Optional.of(people), java.util.Set.of("127.0.0.1"), Duration.ofSeconds(5), Catalogue.builtIn(), 1);
        try (Server proxied = Server.start(options)) {
            String ask = "GET /none HTTP/1.1\r\nHost: plans.example\r\n" + CLOSE + "X-Forwarded-Proto: https\r\n";
            String guess = "Authorization: " + PasswordsTest.basic("nurse", "a guess") + "\r\n\r\n", right = "Authorization: " + PasswordsTest.basic("nurse", "a long pass phrase") + "\r\n\r\n";
            String last = "";
            for (int i = 0; i < 8; i++) last = whole(proxied.port(), ask + "X-Forwarded-For: 192.0.2." + i + ", 198.51.100.7\r\n" + guess);
            assertThat(last).as("what the guesser writes before the proxy's word does not count").startsWith("HTTP/1.1 429");
            assertThat(whole(proxied.port(), ask + "X-Forwarded-For: 198.51.100.7\r\n" + right)).as("not even tried").startsWith("HTTP/1.1 429");
            String nurse = whole(proxied.port(), ask + "X-Forwarded-For: 203.0.113.5\r\n" + right);
            assertThat(nurse).startsWith("HTTP/1.1 404").containsPattern("Set-Cookie: leeway=.*; Secure");
            assertThat(whole(proxied.port(), ask + "X-Forwarded-For: 198.51.100.7\r\n" + right)).as("proved before").startsWith("HTTP/1.1 404");
        }
        assertThat(whole(server.port(), "GET /none HTTP/1.1\r\nHost: localhost\r\n" + CLOSE + "X-Forwarded-Proto: https\r\n\r\n")).as("nobody's word is believed without").doesNotContain("; Secure");
    }
}
