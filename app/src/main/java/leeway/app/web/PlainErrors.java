package leeway.app.web;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/** What is said to bytes that are no request, before any route: a line of plain text that repeats nothing of what was sent. */
final class PlainErrors extends ErrorHandler {
    @Override public boolean handle(Request request, Response response, Callback callback) {
        plain(response.getHeaders());
        response.write(true, line(response.getStatus()), callback);
        return true;
    }

    @Override public ByteBuffer badMessageError(int status, String reason, HttpFields.Mutable fields) {
        plain(fields);
        return line(status);
    }

    private static void plain(HttpFields.Mutable headers) {
        headers.put(HttpHeader.CONTENT_TYPE, "text/plain; charset=utf-8");
        headers.put(HttpHeader.CACHE_CONTROL, "no-store");
        headers.put("X-Content-Type-Options", "nosniff");
        headers.put("Content-Security-Policy", Gate.POLICY);
    }

    private static ByteBuffer line(int status) { return ByteBuffer.wrap((status == 503 ? "The server is being stopped.\n" : "This is no request that can be answered (" + status + ").\n").getBytes(StandardCharsets.UTF_8)); }
}
