package leeway.e2e;

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
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leeway.app.command.SheetLibrary;
import leeway.app.rehearse.Shared;
import leeway.app.report.Examples;
import leeway.app.web.Server;
import leeway.core.plan.PlanMaker;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/**
 * The server under load: never an error of ours. What was measured goes to {@code target/load.txt}, for a busy machine's
 * times prove nothing. A minute in all; ten with the long evidence, or as many seconds as {@code -Dload.s=} says.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class LoadTest {
    private static final int SECONDS = Integer.getInteger("load.s", System.getProperty("long") == null ? 60 : 600);
    private static final String TEXT = Examples.text("night-transfer").orElseThrow();
    private static final List<String> MEASURED = new ArrayList<>();
    private static final AtomicInteger NEXT = new AtomicInteger();
    private static Server server;
    private static String cookie;
    private static String page;

    @BeforeAll
    static void start() throws Exception {
        Server.Options local = Server.Options.local();
        // what takes its time on a busy machine is no error
        server = Server.start(new Server.Options(local.host(), local.port(), local.passwords(), Duration.ofMinutes(3), local.catalogue(), local.seed()));
        HttpResponse<String> first = client().send(HttpRequest.newBuilder(URI.create(server.address())).build(), BodyHandlers.ofString());
        cookie = first.headers().firstValue("Set-Cookie").orElseThrow().split(";")[0];
        page = first.body();
    }

    @AfterAll
    static void stop() throws IOException {
        server.close();
        Files.write(Path.of("target", "load.txt"), MEASURED);
        MEASURED.forEach(System.out::println);
    }

    private static HttpClient client() { return HttpClient.newBuilder().executor(Runnable::run).build(); }

    private static String hidden(String name) {
        Matcher m = Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page);
        assertThat(m.find()).as(name).isTrue();
        return m.group(1);
    }

    private static String encoded(String text) { return URLEncoder.encode(text, StandardCharsets.UTF_8); }

    /** Never the same, and below what the file says it takes at worst for a hundred thousand changes. */
    private static String takesMin(int n) { return String.format(Locale.ROOT, "%.5f", 20 + n * 0.00005); }

    /** A change in a field: every one another, so that no kept answer helps. */
    private static HttpRequest change() {
        int n = NEXT.incrementAndGet();
        String takes = takesMin(n);
        String form = "token=" + encoded(hidden("token")) + "&was=" + encoded(hidden("was")) + "&undo=&pinned=&text=" + encoded(TEXT) + "&do=work&" + encoded("f:legs/0/takes") + "=" + takes + "&" + encoded("u:legs/0/takes") + "=min";
        return HttpRequest.newBuilder(URI.create(server.address())).header("Content-Type", "application/x-www-form-urlencoded").header("Cookie", cookie).header("HX-Request", "true").POST(BodyPublishers.ofString(form)).build();
    }

    private static String quantiles(List<Long> nanos) {
        long[] sorted = nanos.stream().mapToLong(Long::longValue).sorted().toArray();
        return String.format(Locale.ROOT, "%d answers, p50 %.1f ms, p90 %.1f ms, p99 %.1f ms, slowest %.1f ms", sorted.length, sorted[sorted.length / 2] / 1e6, sorted[sorted.length * 9 / 10] / 1e6,
                sorted[Math.min(sorted.length - 1, sorted.length * 99 / 100)] / 1e6, sorted[sorted.length - 1] / 1e6);
    }

    private static List<Long> many(int atOnce, int seconds, Callable<HttpRequest> request, int... allowed) throws Exception {
        ConcurrentLinkedQueue<Long> nanos = new ConcurrentLinkedQueue<>();
        ConcurrentLinkedQueue<Integer> odd = new ConcurrentLinkedQueue<>();
        ExecutorService people = Executors.newFixedThreadPool(atOnce);
        long end = System.nanoTime() + seconds * 1_000_000_000L;
        List<Future<?>> all = new ArrayList<>();
        for (int i = 0; i < atOnce; i++) {
            all.add(people.submit(() -> {
                HttpClient client = client();
                while (System.nanoTime() < end) {
                    long from = System.nanoTime();
                    int status = client.send(request.call(), BodyHandlers.discarding()).statusCode();
                    nanos.add(System.nanoTime() - from);
                    if (Arrays.stream(allowed).noneMatch(s -> s == status)) odd.add(status);
                }
                return null;
            }));
        }
        for (Future<?> f : all) f.get();
        people.shutdown();
        assertThat(odd).as("answers that are none of %s", Arrays.toString(allowed)).isEmpty();
        return new ArrayList<>(nanos);
    }

    @Test @Order(1)
    void oneUserChangesAFieldAgainAndAgain() throws Exception {
        many(1, SECONDS / 8, LoadTest::change, 200);
        List<Long> own = new ArrayList<>();
        Catalogue catalogue = Catalogue.builtIn();
        SheetLibrary library = new SheetLibrary(catalogue);
        long end = System.nanoTime() + Math.max(2, SECONDS / 10) * 1_000_000_000L;
        for (int i = 0; System.nanoTime() < end; i++) {
            String text = TEXT.replace("takes: 12 min", "takes: " + takesMin(i) + " min");
            long from = System.nanoTime();
            PlanMaker.plan(TransportReader.read("t", text, catalogue).good().orElseThrow(), library, 1, Shared::begin);
            own.add(System.nanoTime() - from);
        }
        MEASURED.add("plan alone, shared among the processors, same machine and moment: " + quantiles(own));
        MEASURED.add("one user, a change in a field: " + quantiles(many(1, SECONDS / 5, LoadTest::change, 200)));
    }

    @Test @Order(2)
    void twentyPeopleChangeFieldsAtOnce() throws Exception {
        MEASURED.add("twenty at once, a change in a field: " + quantiles(many(20, SECONDS * 3 / 10, LoadTest::change, 200)));
    }

    @Test @Order(3)
    void twoHundredReadersAreServedAndMemoryStaysFlat() throws Exception {
        URI address = URI.create(server.address());
        many(200, SECONDS / 15, () -> HttpRequest.newBuilder(address).build(), 200);
        long before = used();
        List<Long> nanos = many(200, SECONDS / 5, () -> HttpRequest.newBuilder(address).build(), 200);
        long after = used();
        MEASURED.add("two hundred readers: " + quantiles(nanos));
        MEASURED.add(String.format(Locale.ROOT, "heap in use: %.1f MB before, %.1f MB after", before / 1e6, after / 1e6));
        assertThat(after - before).as("bytes that stayed").isLessThan(30_000_000);
    }

    private static long used() throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            System.gc();
            Thread.sleep(50);
        }
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    @Test @Order(4)
    void aThousandOddRequestsAreRefusedAndNoneIsAFaultOfOurs() throws Exception {
        SplittableRandom random = new SplittableRandom(20_261_125);
        List<String> faults = new ArrayList<>();
        for (int i = 0; i < 1_000; i++) {
            String request = OddRequests.next(random, cookie, hidden("token"), hidden("was"));
            String answer = OddRequests.send(server.port(), request);
            // a version that is not spoken is answered with 505 by the standard: RFC 9110, 15.6.6
            boolean foreign = answer.startsWith("HTTP/1.1 505") && !request.lines().findFirst().orElse("").endsWith("HTTP/1.1");
            if (!foreign && !answer.matches("HTTP/1\\.1 [1-4]\\d\\d.*")) faults.add("[" + answer + "] to " + (request.length() > 300 ? request.substring(0, 300) : request));
        }
        assertThat(faults).isEmpty();
    }
}
