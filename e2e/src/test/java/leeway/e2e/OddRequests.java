package leeway.e2e;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Requests that no browser would send: odd paths, values, bodies, types, methods, headers, cookies, forms of ours tampered with,
 * and bytes that are no request at all. Each goes over a connection of its own, byte by byte as it stands, so that no client
 * mends it or sends it again.
 */
final class OddRequests {
    private static final List<String> PATHS = List.of("/", "/new", "/map", "/compare", "/rehearse", "/rehearse/fault", "/figures/weight", "/figures/cylinder", "/figures/none", "/sheets/illness/nothing", "/sheets/x/y", "/api/plan", "/api/map",
            "/api/rehearse", "/api/breathe", "/api/none", "/assets/1/2", "/download", "/open", "/%7f", "/sheets/..%2f..%2fetc/passwd", "/health", "//", "/%", "/..", "*", "http://elsewhere/", "/\u00c3\u00a9", "/\u00e9", "/a b",
            "/%2e%2e/%2e%2e/etc/passwd", "/none/%2E%2E%2f%2e%2e%5c", "/assets/%2e%2e/%2e%2e", "/..;/map", "/map;x=y", "/%c0%ae%c0%ae/", "/map%00", "/sheets/%u002e/", "/api//plan", "/api/plan/", "/API/PLAN", "/card.pdf?s=x", "/gases?s=x", "/openapi.json", "/?%5B%5D=%5B", "/#x", "/map?%", "/rehearse/fault?fault=%ff");
    private static final List<String> NAMES = List.of("s", "pin", "t", "q", "fault", "at", "act", "lang", "example", "f:height", "u:height", "f:sex", "seed", "draws", "show", "for");
    private static final List<String> VALUES = List.of("", "1", "-1", "1e999", "NaN", "%00", "%FF%FE", "%F0%9F%98%80", "170", "../../etc/passwd", "1".repeat(3_000), "tube%20kinked", "1AAAA", "1eNoDAAAAAAE", "de", "%C3%28", "%3Cscript%3E",
            "0.0000001", "99999", "%", "%zz", "9".repeat(400), "-1e308", "0x7fffffff", "9223372036854775808", "%E2%88%921", "%D9%A1%D9%A2", "%ED%A0%80", "%F4%90%80%80", "%5B%5B%5B", "%0d%0aSet-Cookie:%20x=y", "{{7*7}}", "1;2;3");
    private static final List<String> TYPES = List.of("text/yaml", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "multipart/form-data", "application/json", "x", "text/html; charset=none-such", "application/x-www-form-urlencoded; charset=utf-16", "application/x-www-form-urlencoded; charset=\"", "multipart/mixed; boundary=x", "multipart/form-data; boundary=" + "b".repeat(300), "multipart/form-data; boundary=\"",
            "application/x-yaml; charset=utf-7", "text/yaml\r\nContent-Type: application/json", "*/*", ";", "\u00ff/\u00fe", "");
    private static final List<String> METHODS = List.of("PUT", "DELETE", "PATCH", "OPTIONS", "HEAD", "TRACES", "TRACE", "CONNECT", "get", "G@T", "QUERY", "PROPFIND", "M".repeat(5_000), "GET\t", "\u00e9", "POST\u0000");
    private static final List<String> HEADERS = List.of("Content-Length: -1", "Content-Length: abc", "Content-Length: 99999999999999999999", "Transfer-Encoding: chunked", "Transfer-Encoding: none", "Expect: 100-continue", "Expect: nothing",
            "Range: bytes=5-1", "Cookie: \u0001=;;;=", "Cookie: leeway=x; lang=<b>", "Accept-Language: ;;q=9", "Accept-Encoding: gzip;q=0", "Authorization: Basic !!", "No colon here", ": no name", "X-Long: " + "y".repeat(17_000), "Host: twice",
            "Upgrade: websocket", "Connection: Upgrade, HTTP2-Settings", "HX-Request: true", "Leeway-Page: " + "z".repeat(100),
            "Cookie: leeway=" + "x".repeat(24) + "; leeway=" + "y".repeat(24), "Cookie: leeway=\"; lang=\"de", "Cookie: lang=" + "c".repeat(9_000), "Cookie: $Version=1; leeway=\u00ff\u00fe", "X-Long: " + "y".repeat(60_000), "X: y\r\n".repeat(3_000) + "X: y",
            "X: \u00ff\u00c0\u0080", "X: a\u0000b", "X : y", "X\u00e9: y", "Origin: null", "Origin: http://[", "Origin: http://localhost, http://elsewhere", "Sec-Fetch-Site: cross-site", "Content-Encoding: br", "Content-Encoding: gzip, gzip",
            "Accept-Language: " + "de,".repeat(3_000), "Accept-Language: \u00e9;q=NaN", "X-Forwarded-For: ,,,", "Forwarded: for=\"[", "Content-Length: 1\r\nContent-Length: 2", "Content-Length: +5", "Transfer-Encoding: chunked, chunked", "HX-Request: \u00ff",
            "HX-History-Restore-Request: true", "If-None-Match: \"", "If-Modified-Since: never", "Authorization: Basic " + "A".repeat(9_000), "Authorization: Basic /////w==", "TE: trailers", "Max-Forwards: -1", "Accept: ;;;");
    /** Fields of a form, well and ill named; those of the journey page begin with a letter and a colon. */
    private static final List<String> FIELDS = List.of("f:legs/0/takes", "u:legs/0/takes", "f:patient/height", "f:legs[0][takes]", "f:[[[[[]]]]]", "f:legs/-1/takes", "f:legs/99999999999999999999/takes", "f:" + "legs/0/".repeat(200) + "takes", "f:", "f://", "f:..", "f:legs/0/takes/x",
            "u:patient/height", "f:__proto__", "text", "text[]", "undo", "pinned", "was", "token", "f:settings/fio2", "f:oxygen/0/pressure", "oxygen/0/count", "settings/fio2", "legs/0/takes", "\u00ff", "%", "%00", "=");
    private static final List<String> ACTS = List.of("work", "undo", "pin", "unpin", "back", "add:legs", "add:what%20if", "add:", "add:../..", "add:patient/height", "add:none/none", "remove:", "remove:legs/0", "remove:legs/99999999999", "remove:patient", "up:legs/0", "up:legs", "down:legs/999",
            "place:legs/0/999", "place:legs/999/0", "place:x", "place:///", ":", "none:none", "%FF");
    /** Short, for what is no right file is answered soon. */
    private static final List<String> TEXTS = List.of("transport:%20x", "transport:%20x%0Alegs:%20[[[[[[", "%FF%FE", "%00", "{}", "-%0A-%0A-", "%26a%20%2Aa", "%21%21x%20y", "legs:%20%7B0:%20%7B0:%20%7B", "a:%20%26a%20[*a,*a]", "%EF%BB%BF", "%7C%0A", "transport:%20x%0Atransport:%20y", "[".repeat(2_000));

    private OddRequests() { }

    /**
     * @param cookie of a browser that has opened a page
     * @param token  what a form of that page proves itself with
     * @param was    the journey that the page was made from
     */
    static String next(SplittableRandom random, String cookie, String token, String was) {
        if (random.nextInt(20) == 0) return of(random, List.of("\r\n\r\n\r\nGET\r\n\r\n", "GET /\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", "\u0016\u0003\u0001\u0002\u0000\u0001\r\n\r\n", "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", "GET / HTTP/1.1\r\nHost: a b\r\n\r\n", "GET / HTTP/1.1\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\n folded: yes\r\n\r\n", "GET /" + "a".repeat(20_000) + " HTTP/1.1\r\nHost: localhost\r\n\r\n", "POST / HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\nzz\r\n",
                "GET / HTTP/1.1 x\r\nHost: localhost\r\n\r\n", "GET  / HTTP/1.1\r\nHost: localhost\r\n\r\n", "\u00ff\u00fe\u0000G\u0000E\u0000T", "GET / HTTP/1.1\nHost: localhost\nConnection: close\n\n", "GET / HTTP/1.0\r\n\r\n", "GET / HTTP/1.1\r\nHost: localhost\r\nHost:\r\n\r\n", "GET / HTTP/1.1\r\nHost: " + "h".repeat(9_000) + "\r\n\r\n",
                "POST /api/plan HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\nFFFFFFFFFFFFFFFFF\r\nx", "POST /api/plan HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n3;x=\"\r\nabc\r\n0\r\nX: y\r\n\u00ff\r\n\r\n",
                "POST /api/plan HTTP/1.1\r\nHost: localhost\r\nContent-Length: 900\r\nConnection: close\r\n\r\ntransport: x"));
        if (random.nextInt(4) == 0) return form(random, cookie, token, was);
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

    /** A form of a page of ours that somebody has tampered with: most prove themselves rightly and come as far as its fields. */
    private static String form(SplittableRandom random, String cookie, String token, String was) {
        List<String> fields = new ArrayList<>();
        if (random.nextInt(8) > 0) fields.add("token=" + token);
        if (random.nextInt(8) == 0) fields.add(random.nextInt(fields.size() + 1), "token=" + of(random, VALUES));
        if (random.nextInt(4) > 0) fields.add("was=" + was);
        if (random.nextInt(4) == 0) fields.add("was=" + (random.nextBoolean() ? was.substring(0, random.nextInt(was.length())) : of(random, VALUES)));
        fields.add("text=" + of(random, TEXTS));
        fields.add("do=" + of(random, ACTS));
        for (int k = random.nextInt(5); k > 0; k--) fields.add(of(random, FIELDS) + "=" + of(random, VALUES));
        boolean parts = random.nextInt(3) == 0;
        String body = parts ? parts(random, fields) : String.join(random.nextInt(9) == 0 ? "&&" : "&", fields);
        return "POST " + of(random, List.of("/", "/", "/compare", "/open", "/download")) + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nCookie: " + cookie + "\r\n" + (random.nextBoolean() ? "HX-Request: true\r\n" : "")
                + "Content-Type: " + (parts ? "multipart/form-data; boundary=x" : "application/x-www-form-urlencoded") + "\r\nContent-Length: " + body.length() + "\r\n\r\n" + body;
    }

    /** The same in parts, some of them broken, and mostly with an end. */
    private static String parts(SplittableRandom random, List<String> fields) {
        StringBuilder out = new StringBuilder();
        for (String field : fields) {
            int at = field.indexOf('=');
            out.append("--x\r\nContent-Disposition: form-data; name=\"").append(field, 0, at).append("\"\r\n\r\n").append(field.substring(at + 1)).append("\r\n");
        }
        out.append(of(random, List.of("", "--x\r\n", "--x\r\n\r\n", "--x\r\nContent-Disposition: form-data\r\n\r\nz\r\n", "--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"../../../etc/passwd\"\r\n\r\n\u00ff\u00fe\u0000\r\n",
                "--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"\"\r\nContent-Type: " + "y".repeat(9_000) + "\r\n\r\n[\r\n", "--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a\u0000b\"\r\nContent-Transfer-Encoding: base64\r\n\r\n====\r\n",
                "--x\r\nContent-Type: multipart/mixed; boundary=y\r\nContent-Disposition: form-data; name=\"file\"\r\n\r\n--y\r\n\r\nz\r\n--y--\r\n", "--x\r\nno colon\r\n\r\n", "--x\r\nContent-Disposition: form-data; name=\"file\"; filename*=utf-9''%zz\r\n\r\n{\r\n")));
        return out.append(random.nextInt(4) == 0 ? "" : "--x--\r\n").toString();
    }

    private static String typed(SplittableRandom random, String body, boolean odd) {
        return "Content-Type: " + of(random, TYPES) + "\r\n" + (odd && random.nextBoolean() ? "" : "Content-Length: " + body.length() + "\r\n") + "\r\n" + body;
    }

    private static String of(SplittableRandom random, List<String> any) { return any.get(random.nextInt(any.size())); }

    /** The first line of the answer; empty where the connection ends without one. What we send has ended, so a server that waits for more has to say so. */
    static String send(int port, String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(60_000);
            OutputStream out = socket.getOutputStream();
            out.write(request.getBytes(StandardCharsets.ISO_8859_1));     // a character is a byte
            out.flush();
            socket.shutdownOutput();
            StringBuilder line = new StringBuilder();
            InputStream in = socket.getInputStream();
            for (int c; (c = in.read()) >= 0 && c != '\n' && line.length() < 200; ) line.append((char) c);
            return line.toString().strip();
        }
    }
}
