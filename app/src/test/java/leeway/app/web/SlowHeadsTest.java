package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who never ends the head of a request is cut off; who is slow for other reasons is not. */
class SlowHeadsTest {
    private static final int MOST_MS = 100;
    private static final String WHOLE = "GET / HTTP/1.1\r\nHost: localhost\r\n\r\n";
    private final Server server = new Server(new InetSocketAddress("127.0.0.1", 0));

    @BeforeEach
    void start() throws Exception {
        server.setHandler(new Handler.Abstract() {
            @Override public boolean handle(Request request, Response response, Callback callback) throws Exception {
                byte[] body = Request.asInputStream(request).readAllBytes();
                response.getHeaders().put("Content-Length", 4);
                response.write(true, StandardCharsets.US_ASCII.encode(body.length > 0 ? "body" : "none"), callback);
                return true;
            }
        });
        server.addBean(new SlowHeads(server, MOST_MS));
        server.start();
    }

    @AfterEach
    void stop() throws Exception { server.stop(); }

    private Socket open() throws IOException {
        Socket socket = new Socket("127.0.0.1", ((ServerConnector) server.getConnectors()[0]).getLocalPort());
        socket.setTcpNoDelay(true);
        socket.setSoTimeout(20);
        return socket;
    }

    private static void send(Socket socket, String text) throws IOException { socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII)); }

    /** Whether the other side has ended within a pause. */
    private static boolean ended(Socket socket) throws IOException {
        try {
            return socket.getInputStream().read() < 0;
        } catch (SocketTimeoutException stillOpen) {
            return false;
        }
    }

    private static String answer(Socket socket) throws IOException {
        socket.setSoTimeout(10_000);
        InputStream in = socket.getInputStream();
        StringBuilder out = new StringBuilder();
        for (int c; !out.toString().matches("(?s).*\r\n\r\n(none|body)") && (c = in.read()) >= 0; ) out.append((char) c);
        socket.setSoTimeout(20);
        return out.toString();
    }

    @ParameterizedTest
    @ValueSource(strings = {"GET / HTTP/1.1\r\nX: ", "G", "\r\n", WHOLE + "GET / HTTP/1.1\r\nX: "})
    void aHeadThatNeverEndsIsCutOffHoweverSteadilyItComes(String start) throws Exception {
        try (Socket socket = open()) {
            send(socket, start);
            if (start.startsWith(WHOLE)) assertThat(answer(socket)).contains(" 200 ");
            boolean cut = false;
            try {
                for (int i = 0; i < 1_000 && !cut; i++) {
                    cut = ended(socket);
                    if (!cut) send(socket, start.equals("\r\n") ? start : "x");
                }
            } catch (IOException reset) {
                cut = true;
            }
            assertThat(cut).isTrue();
        }
    }

    @Test
    void whoIsSilentBetweenRequestsOrSendsASlowBodyIsNot() throws Exception {
        try (Socket socket = open()) {
            for (int k = 0; k < 2; k++) {
                send(socket, WHOLE);
                assertThat(answer(socket)).contains(" 200 ");
                for (int i = 0; i < 3 * MOST_MS / 20; i++) assertThat(ended(socket)).as("between requests").isFalse();
            }
            send(socket, "POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 30\r\n\r\n");
            for (int i = 0; i < 30; i++) {
                assertThat(ended(socket)).as("within a body").isFalse();
                send(socket, "x");
            }
            assertThat(answer(socket)).contains(" 200 ", "body");
        }
    }
}
