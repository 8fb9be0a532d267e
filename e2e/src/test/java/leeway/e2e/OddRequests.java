package leeway.e2e;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Requests that no browser would send: odd paths, values, bodies, types, methods, and bytes that are no request at all. Each goes
 * over a connection of its own, byte by byte as it stands, so that no client mends it or sends it again.
 */
final class OddRequests {
    private static final List<String> PATHS = List.of("/", "/new", "/map", "/compare", "/rehearse", "/rehearse/fault", "/figures/weight", "/figures/cylinder", "/figures/none", "/sheets/illness/nothing", "/sheets/x/y", "/api/plan", "/api/map",
            "/api/rehearse", "/api/breathe", "/api/none", "/assets/1/2", "/download", "/open", "/%7f", "/sheets/..%2f..%2fetc/passwd", "/health", "//", "/%", "/..", "*", "http://elsewhere/", "/\u00e9", "/a b");
    private static final List<String> NAMES = List.of("s", "pin", "t", "q", "fault", "at", "act", "lang", "example", "f:height", "u:height", "f:sex", "seed", "draws", "show", "for");
    private static final List<String> VALUES = List.of("", "1", "-1", "1e999", "NaN", "%00", "%FF%FE", "%F0%9F%98%80", "170", "../../etc/passwd", "1".repeat(3_000), "tube%20kinked", "1AAAA", "1eNoDAAAAAAE", "de", "%C3%28", "%3Cscript%3E",
            "0.0000001", "99999", "%", "%zz");
    private static final List<String> TYPES = List.of("text/yaml", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "multipart/form-data", "application/json", "x", "text/html; charset=none-such");
    private static final List<String> METHODS = List.of("PUT", "DELETE", "PATCH", "OPTIONS", "HEAD", "TRACES", "TRACE", "CONNECT", "get", "G@T");
    private static final List<String> HEADERS = List.of("Content-Length: -1", "Content-Length: abc", "Content-Length: 99999999999999999999", "Transfer-Encoding: chunked", "Transfer-Encoding: none", "Expect: 100-continue", "Expect: nothing",
            "Range: bytes=5-1", "Cookie: \u0001=;;;=", "Cookie: leeway=x; lang=<b>", "Accept-Language: ;;q=9", "Accept-Encoding: gzip;q=0", "Authorization: Basic !!", "No colon here", ": no name", "X-Long: " + "y".repeat(17_000), "Host: twice",
            "Upgrade: websocket", "Connection: Upgrade, HTTP2-Settings", "HX-Request: true", "Leeway-Page: " + "z".repeat(100));

    private OddRequests() { }

    static String next(SplittableRandom random, String cookie) {
        if (random.nextInt(20) == 0) return of(random, List.of("\r\n\r\n\r\nGET\r\n\r\n", "GET /\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", "\u0016\u0003\u0001\u0002\u0000\u0001\r\n\r\n", "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", "GET / HTTP/1.1\r\nHost: a b\r\n\r\n", "GET / HTTP/1.1\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\n folded: yes\r\n\r\n", "GET /" + "a".repeat(20_000) + " HTTP/1.1\r\nHost: localhost\r\n\r\n", "POST / HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\nzz\r\n"));
        StringBuilder path = new StringBuilder(of(random, PATHS));
        for (int k = random.nextInt(4); k > 0; k--) path.append(path.indexOf("?") < 0 ? '?' : '&').append(URLEncoder.encode(of(random, NAMES), StandardCharsets.UTF_8)).append('=').append(of(random, VALUES));
        String body = random.nextBoolean() ? "--x\r\n\0" + of(random, VALUES) : "token=%zz&was=" + of(random, VALUES) + "&%=&text";
        StringBuilder head = new StringBuilder("Host: localhost\r\nConnection: close\r\n");
        boolean odd = random.nextInt(3) == 0;
        if (odd) head.append(of(random, HEADERS)).append("\r\n");
        return switch (random.nextInt(4)) {
            case 0 -> "POST " + path + " HTTP/1.1\r\n" + head + typed(random, body, odd);
            case 1 -> "POST " + path + " HTTP/1.1\r\n" + head + "Cookie: " + cookie + "\r\nHX-Request: true\r\n" + typed(random, body, odd);
            case 2 -> of(random, METHODS) + " " + path + " HTTP/1.1\r\n" + head + "\r\n";
            default -> "GET " + path + " HTTP/1.1\r\n" + head + "\r\n";
        };
    }

    private static String typed(SplittableRandom random, String body, boolean odd) {
        return "Content-Type: " + of(random, TYPES) + "\r\n" + (odd && random.nextBoolean() ? "" : "Content-Length: " + body.getBytes(StandardCharsets.UTF_8).length + "\r\n") + "\r\n" + body;
    }

    private static String of(SplittableRandom random, List<String> any) { return any.get(random.nextInt(any.size())); }

    /** The first line of the answer; empty where the connection ends without one. What we send has ended, so a server that waits for more has to say so. */
    static String send(int port, String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(60_000);
            OutputStream out = socket.getOutputStream();
            out.write(request.getBytes(StandardCharsets.UTF_8));
            out.flush();
            socket.shutdownOutput();
            StringBuilder line = new StringBuilder();
            InputStream in = socket.getInputStream();
            for (int c; (c = in.read()) >= 0 && c != '\n' && line.length() < 200; ) line.append((char) c);
            return line.toString().strip();
        }
    }
}
