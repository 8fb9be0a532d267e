package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PasswordsTest {
    /** Made by {@code htpasswd -nbB -C 10 nurse "a long pass phrase"} (apache2-utils 2.4). */
    static final String LINE = "nurse:$2y$10$cdb5oUwK12GS97xahqkT9uD5Q7SXvJrsrKB/c3s25XisW2k8sUMAC";
    @TempDir Path dir;

    static String basic(String name, String password) {
        return "Basic " + Base64.getEncoder().encodeToString((name + ":" + password).getBytes(StandardCharsets.UTF_8));
    }

    private Path file(String text) throws IOException { return Files.writeString(dir.resolve("people"), text); }

    @Test
    void theRightPasswordOfANamedPersonPassesAndNothingElse() throws Exception {
        Passwords p = Passwords.read(file("# who\n\n" + LINE + "\n"));
        assertThat(p.known(basic("nurse", "a long pass phrase"))).as("not proved yet").isFalse();
        assertThat(p.fit(basic("nurse", "a long pass phrase"))).isTrue();
        assertThat(p.known(basic("nurse", "a long pass phrase"))).isTrue();
        assertThat(p.fit(basic("nurse", "a long pass phrase"))).as("again, now remembered").isTrue();
        assertThat(p.fit(basic("nurse", "a long pass phras"))).isFalse();
        assertThat(p.fit(basic("doctor", "a long pass phrase"))).isFalse();
        assertThat(p.fit(basic("nobody", "nobody"))).isFalse();
        assertThat(p.fit(null)).isFalse();
        assertThat(p.fit("Basic %%%")).isFalse();
        assertThat(p.fit("Bearer x")).isFalse();
    }

    @Test
    void aFileThatCannotBeUsedSaysWhichLineAndWhatToDo() throws IOException {
        assertThatThrownBy(() -> Passwords.read(file("nurse:secret\n"))).isInstanceOf(Passwords.Unusable.class)
                .hasMessageContaining("people:1:").hasMessageContaining("htpasswd -nB").hasMessageNotContaining("secret");
        assertThatThrownBy(() -> Passwords.read(file("a:$2y$05$" + "a".repeat(53)))).as("too cheap a hash").isInstanceOf(Passwords.Unusable.class);
        assertThatThrownBy(() -> Passwords.read(file("a:$2y$31$" + "a".repeat(53)))).as("a hash that nobody could prove in an hour").isInstanceOf(Passwords.Unusable.class).hasMessageContaining("10 to 15");
        assertThatThrownBy(() -> Passwords.read(file(LINE + "\n" + LINE + "\n"))).hasMessageContaining("people:2:").hasMessageContaining("twice");
        assertThatThrownBy(() -> Passwords.read(file("\n"))).hasMessageContaining("names nobody");
        assertThatThrownBy(() -> Passwords.read(dir.resolve("none"))).hasMessageContaining("cannot be read");
    }
}
