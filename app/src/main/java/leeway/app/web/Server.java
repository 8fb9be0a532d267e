package leeway.app.web;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.MethodNotAllowedResponse;
import io.javalin.util.JavalinLogger;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import leeway.app.report.Examples;
import leeway.core.run.Stopped;
import leeway.files.sheet.Catalogue;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The server: routes, limits, and what it says where something goes wrong. */
public final class Server implements AutoCloseable {
    /** Largest body of a request, in bytes; a transport file has a few thousand. */
    public static final int MAX_BODY_BYTES = 1_000_000;
    /** An address with a journey and a pinned one, and twice more as the page that asks: see {@link Packed#MAX_ADDRESS}. */
    private static final int MAX_HEADER_BYTES = 48 * 1024;
    private static final int THREADS = 320;
    private static final int WAITING = 256;
    /** Open connections beyond which whoever says nothing is cut off soon, so that silence cannot keep others out. */
    private static final int CONNECTIONS = 2_000;
    private static final long SILENT_MS = 1_000;
    /** Who sends a body slower than this holds a thread for nothing, bytes/s. */
    private static final long LEAST_BYTES_PER_S = 500;
    /** Who has not told what they want after so long is cut off, however steadily they send. */
    private static final long HEAD_MS = 20_000;
    /** What is under way when the server stops is told so and has this long to hear it. */
    private static final long FAREWELL_MS = 2_000;
    /** Who was answered and reads is left the whole machine for so long. */
    private static final long RESTS_MS = 3_000;

    private final Javalin app;
    private final Desk desk;
    private final Answers answers;
    private final String host;

    private Server(Javalin app, Desk desk, Answers answers, String host) {
        this.answers = answers;
        this.app = app;
        this.desk = desk;
        this.host = host;
    }

    /**
     * How it is run.
     *
     * @param port      0: any free one
     * @param passwords who may use it; needed where others can reach it
     * @param proxies   addresses of proxies before it, whose word on who asks is believed; none where browsers come directly
     * @param limit     longest time for an answer
     * @param catalogue the sheets
     * @param seed      of all chance
     */
    public record Options(String host, int port, Optional<Passwords> passwords, Set<String> proxies, Duration limit, Catalogue catalogue, long seed) {
        public Options { proxies = Set.copyOf(proxies); }

        /** Without a proxy. */
        public Options(String host, int port, Optional<Passwords> passwords, Duration limit, Catalogue catalogue, long seed) { this(host, port, passwords, Set.of(), limit, catalogue, seed); }

        /** For this machine only, on any free port. */
        public static Options local() { return new Options("127.0.0.1", 0, Optional.empty(), Duration.ofSeconds(20), Catalogue.builtIn(), 1); }
    }

    /** Whether only this machine can reach a server on that host. */
    public static boolean loopback(String host) throws UnknownHostException { return InetAddress.getByName(host).isLoopbackAddress(); }

    public static Server start(Options options) throws UnknownHostException {
        boolean loopback = loopback(options.host()) && options.proxies().isEmpty();
        if (!loopback && options.passwords().isEmpty()) throw new IllegalArgumentException("a host that others can reach needs passwords");
        Desk desk = new Desk(Math.max(2, Runtime.getRuntime().availableProcessors()), WAITING, options.limit());
        Site site = new Site(new Gate(loopback ? Optional.of(options.host()) : Optional.empty(), options.passwords(), options.proxies()), desk);
        Answers answers = new SheetAnswers(options.catalogue(), options.seed());
        JourneyPage journey = new JourneyPage(site, answers, Examples.text("night-transfer").orElseThrow());
        LibraryPages library = new LibraryPages(site, options.catalogue());
        Javalin app = Javalin.create(c -> {
            configure(c, options, site);
            journey.routes(c.routes);
            library.routes(c.routes);
            new MapPage(site, answers, journey).routes(c.routes);
            new RehearsalPage(site, answers, journey).routes(c.routes);
            new FaultPage(site, answers, journey).routes(c.routes);
            new PaperPages(site, answers, journey).routes(c.routes);
            new ComparePage(site, answers, journey).routes(c.routes);
            new Api(site, answers).routes(c.routes);
        });
        start(app, desk);
        journey.warm();
        return new Server(app, desk, answers, options.host());
    }

    /** Whoever asked for the server says in a line of their own why it does not start; the framework would say it before them. */
    private static void start(Javalin app, Desk desk) {
        JavalinLogger.enabled = false;
        try {
            app.start();
        } catch (RuntimeException e) {
            desk.close();
            throw e;
        } finally {
            JavalinLogger.enabled = true;
        }
    }

    /**
     * Works out every example once while nobody asks anything, and stops as soon as somebody does: a machine that has done a
     * thing some twenty times does it in half the time, and the first who comes shall have it so.
     */
    public void practise() {
        Thread thread = new Thread(() -> {
            try {
                for (String example : Examples.names()) {
                    for (boolean done = false; !done && !desk.closed(); ) {
                        done = desk.resting() && practised(Examples.text(example).orElseThrow());
                        if (!done) Thread.sleep(RESTS_MS);
                    }
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }, "practice");
        thread.setDaemon(true);
        thread.start();
    }

    private boolean practised(String text) {
        try {
            answers.plan(text, new Hands(() -> !desk.resting(), 0, share -> { }, () -> false));
            return true;
        } catch (Stopped somebodyAsks) {
            return false;
        }
    }

    /** Whether nobody is being answered. */
    boolean resting() { return desk.resting(); }

    public int port() { return app.port(); }

    /** What to type into a browser. */
    public String address() { return "http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + port() + "/"; }

    /** Whoever waits is told that the server stops; then it does. */
    @Override public void close() {
        desk.close();
        app.stop();
    }

    private static void configure(JavalinConfig c, Options options, Site site) {
        c.startup.showJavalinBanner = false;
        c.startup.showOldJavalinVersionWarning = false;
        c.startup.startupWatcherEnabled = false;
        c.jetty.host = options.host();
        c.jetty.port = options.port();
        c.jetty.threadPool = new QueuedThreadPool(THREADS, 4, 60_000);
        c.jetty.modifyHttpConfiguration(h -> {
            h.setSendServerVersion(false);
            h.setRequestHeaderSize(MAX_HEADER_BYTES);
            h.setResponseHeaderSize(MAX_HEADER_BYTES);
            h.setSendDateHeader(true);
            h.setMinRequestDataRate(LEAST_BYTES_PER_S);
        });
        c.jetty.modifyServer(server -> {
            server.setErrorHandler(new PlainErrors());
            server.setStopTimeout(FAREWELL_MS);
            NetworkConnectionLimit connections = new NetworkConnectionLimit(CONNECTIONS, server);
            connections.setEndPointIdleTimeout(SILENT_MS);
            server.addBean(connections);
            server.addBean(new SlowHeads(server, HEAD_MS));
        });
        // stands around all handlers, so that what is being answered is answered to its end
        c.jetty.modifyServletContextHandler(h -> h.insertHandler(new GracefulHandler()));
        c.jetty.multipartConfig.maxFileSize(MAX_BODY_BYTES, io.javalin.config.SizeUnit.BYTES);
        c.jetty.multipartConfig.maxTotalRequestSize(MAX_BODY_BYTES, io.javalin.config.SizeUnit.BYTES);
        c.jetty.multipartConfig.maxInMemoryFileSize(MAX_BODY_BYTES, io.javalin.config.SizeUnit.BYTES);
        c.http.maxRequestSize = MAX_BODY_BYTES;
        c.http.defaultContentType = "text/html; charset=utf-8";
        c.http.compressionStrategy = CompressionStrategy.GZIP;
        c.http.prefer405over404 = true;
        site.gate().stand(c.routes);
        site.routes(c.routes);
        errors(c.routes, site);
    }

    private static void errors(RoutesConfig routes, Site site) {
        routes.exception(Refused.class, (e, ctx) -> site.error(ctx, e.status(), w -> e.in(w)));
        routes.exception(Desk.TooLong.class, (e, ctx) -> site.error(ctx, 503, w -> w.say("error.slow", Long.toString(e.limitS()))));
        routes.exception(Desk.TooMany.class, (e, ctx) -> {
            ctx.header("Retry-After", "5");
            site.error(ctx, 503, w -> w.say("error.busy"));
        });
        routes.exception(Desk.Closing.class, (e, ctx) -> site.error(ctx, 503, w -> w.say("error.closing")));
        routes.exception(Desk.Replaced.class, (e, ctx) -> {
            // the page that asked has gone on by itself: nothing is to be shown
            if (Site.partly(ctx)) ctx.status(204); else site.error(ctx, 409, w -> w.say("error.replaced"));
        });
        routes.exception(MethodNotAllowedResponse.class, (e, ctx) -> {
            // RFC 9110, 15.5.6: the answer names the methods that there are
            ctx.header("Allow", e.getDetails().getOrDefault("availableMethods", "GET"));
            site.error(ctx, 405, w -> w.say("error.405"));
        });
        routes.exception(HttpResponseException.class, (e, ctx) -> site.error(ctx, e.getStatus(), w -> said(w, e.getStatus())));
        routes.exception(Exception.class, (e, ctx) -> unexpected(ctx, e, site));
        routes.error(404, ctx -> {
            if (ctx.attribute(Site.ANSWERED) == null) site.error(ctx, 404, w -> w.say("error.404"));
        });
        routes.error(405, ctx -> {
            if (ctx.attribute(Site.ANSWERED) == null) site.error(ctx, 405, w -> w.say("error.405"));
        });
    }

    static String said(Words words, int status) {
        String key = "error." + status;
        return words.has(key) ? words.say(key) : words.say("error.form");
    }

    /** What a client sent badly comes up as many kinds of exception; only what is left is a fault of ours. */
    private static void unexpected(Context ctx, Exception e, Site site) {
        for (Throwable t = e; t != null; t = t.getCause()) {
            String kind = t.getClass().getName();
            if (kind.equals("org.eclipse.jetty.http.BadMessageException") || kind.endsWith("EofException") || kind.endsWith("Utf8IllegalArgumentException") || kind.endsWith("CharacterCodingException")) {
                site.error(ctx, 400, w -> w.say("error.form"));
                return;
            }
        }
        System.err.println("leeway: a fault of ours while answering " + ctx.method() + " " + ctx.path() + ": " + e.getClass().getSimpleName());
        for (Throwable t = e; t != null; t = t.getCause()) {
            // names of classes only: a message may hold what somebody typed
            if (t != e) System.err.println("  because of " + t.getClass().getName());
            for (StackTraceElement at : t.getStackTrace()) System.err.println("  at " + at);
        }
        site.error(ctx, 500, w -> w.say("error.500"));
    }
}
