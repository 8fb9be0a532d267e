package leeway.app.command;

import java.io.IOException;
import java.net.BindException;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import leeway.app.report.Json;
import leeway.app.web.Passwords;
import leeway.app.web.Server;
import leeway.files.sheet.Catalogue;
import picocli.CommandLine;
import picocli.CommandLine.Option;

/** Serves the workbench until it is stopped. */
@CommandLine.Command(name = "serve", sortOptions = false,
        header = {"Example:  leeway serve --port 8080", ""},
        description = "Opens the workbench for a browser on this machine, and the interface for other programs; runs until you stop it (Ctrl-C).",
        footer = {"", "Others reach it only with --host, and then every request needs a name and a",
                "password of the password file. It speaks plain HTTP: put a proxy with TLS before",
                "it on any network that you do not own, with --proxy, a Host header passed on",
                "and --host left out where it runs on this machine. Make a line of the file with:",
                "  htpasswd -nB -C 12 NAME"})
final class ServeCommand extends Command {
    /** Written in numbers; a name is not looked up. */
    private static final String ADDRESS = "[0-9]{1,3}(\\.[0-9]{1,3}){3}|[0-9A-Fa-f:.]*:[0-9A-Fa-f:.]*";

    @Option(names = "--port", paramLabel = "N", description = "the port; 8080 unless you say, 0 for any free one")
    int port = 8080;

    @Option(names = "--host", paramLabel = "H", description = "the address it listens at; 127.0.0.1 unless you say, which only this machine reaches")
    String host = "127.0.0.1";

    @Option(names = "--password-file", paramLabel = "FILE", description = "who may use it: a line NAME:HASH (bcrypt) for each person")
    Path passwordFile;

    @Option(names = "--proxy", paramLabel = "ADDRESS", description = "the address of a proxy before it, whose X-Forwarded-For says who asks; may be repeated")
    Set<String> proxies = new LinkedHashSet<>();

    @Option(names = "--time-limit", paramLabel = "SECONDS", description = "the longest time for one answer, its waiting included; then it is stopped and says so. Paper has three times as long. 20 unless you say")
    int limitS = 20;

    @Override public Integer call() throws IOException, InterruptedException {
        if (port < 0 || port > 65_535) return wrong("a port is a number from 0 to 65535, not " + port + ".");
        if (limitS < 1 || limitS > 600) return wrong("a time limit is 1 to 600 seconds, not " + limitS + ".");
        Optional<Passwords> passwords = Optional.empty();
        try {
            if (passwordFile != null) passwords = Optional.of(Passwords.read(passwordFile));
            for (String proxy : proxies) if (!proxy.matches(ADDRESS)) return wrong("--proxy wants the address of a proxy, such as 127.0.0.1, not \"" + Nearest.shortened(proxy) + "\".");
            if (!proxies.isEmpty() && passwords.isEmpty()) return wrong("whoever reaches the proxy reaches this server, so it needs --password-file FILE with a line for each person (htpasswd -nB -C 12 NAME).");
            if (!Server.loopback(host) && passwords.isEmpty()) {
                return wrong("others can reach " + host + ", so it needs --password-file FILE with a line for each person (htpasswd -nB -C 12 NAME). Without --host only this machine reaches it.");
            }
        } catch (Passwords.Unusable e) {
            return wrong(e.getMessage());
        } catch (UnknownHostException e) {
            return wrong("this machine knows no host \"" + Nearest.shortened(host) + "\". Leave --host out, or give an address of this machine.");
        }
        Server server;
        try {
            server = Server.start(new Server.Options(host, port, passwords, proxies, Duration.ofSeconds(limitS), Catalogue.of(sheets), seed));
        } catch (RuntimeException e) {
            if (!bound(e)) throw e;
            return wrong("port " + port + " is taken, or not ours to take. Choose another with --port N, or --port 0 for any free one.");
        }
        // Ctrl-C or the system's word to end: what is under way is told so
        Runtime.getRuntime().addShutdownHook(new Thread(server::close, "farewell"));
        try (server) {
            if (json()) {
                try (Json out = new Json(terminal.out())) {
                    out.text("address", server.address());
                }
            } else {
                terminal.out().println("Leeway is ready at " + server.address());
            }
            terminal.out().flush();
            server.practise();
            new CountDownLatch(1).await();
        }
        return DONE;
    }

    private int wrong(String message) {
        terminal.err().println("leeway: " + message);
        if (json()) UsageJson.write(terminal.out(), message, java.util.List.of());
        return BAD_INPUT;
    }

    private static boolean bound(Throwable e) {
        for (Throwable t = e; t != null; t = t.getCause()) if (t instanceof BindException) return true;
        return false;
    }
}
