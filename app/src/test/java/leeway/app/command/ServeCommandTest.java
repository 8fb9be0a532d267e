package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ServeCommandTest {
    /** The framework's own log went before it. */
    @Test
    void aPortThatIsTakenIsOneLineOnAllThatIsSaid() throws Exception {
        PrintStream before = System.err;
        ByteArrayOutputStream logged = new ByteArrayOutputStream();
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            System.setErr(new PrintStream(logged, true, StandardCharsets.UTF_8));
            Run run = Run.of("serve", "--port", Integer.toString(taken.getLocalPort()));
            assertThat(run.exit()).isEqualTo(2);
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).isEqualTo("leeway: port " + taken.getLocalPort() + " is taken, or not ours to take. Choose another with --port N, or --port 0 for any free one.\n");
        } finally {
            System.setErr(before);
        }
        assertThat(logged.toString(StandardCharsets.UTF_8)).isEmpty();
    }
}
