package leeway.files.edf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file as the format's own description has it (Kemp and Olivan, Clin. Neurophysiol. 114 (2003) 1755), read back by a plain reader. */
class EdfWriterTest {
    private static final List<EdfWriter.Signal> TWO = List.of(new EdfWriter.Signal("Paw", "cmH2O", 200), new EdfWriter.Signal("Flow", "L/min", 300));

    @TempDir
    Path folder;

    private static String text(byte[] b, int at, int length) { return new String(b, at, length, StandardCharsets.US_ASCII); }

    @Test
    void headerRecordsAndTimesAreWhereTheFormatWantsThem() throws IOException {
        Path file = folder.resolve("a.edf");
        EdfWriter.write(file, "bench one", 10, TWO, sink -> {
            for (int i = 0; i < 25; i++) sink.sample(i, -2.0 * i);
        });
        byte[] b = Files.readAllBytes(file);
        int header = 256 * 4;
        assertThat(text(b, 0, 8).strip()).isEqualTo("0");
        assertThat(text(b, 8, 80).strip()).isEqualTo("X X X X");
        assertThat(text(b, 88, 80).strip()).isEqualTo("Startdate X X X bench_one");
        assertThat(text(b, 184, 8).strip()).isEqualTo(Integer.toString(header));
        assertThat(text(b, 192, 44).strip()).isEqualTo("EDF+C");
        assertThat(text(b, 236, 8).strip()).isEqualTo("3");
        assertThat(text(b, 244, 8).strip()).isEqualTo("1");
        assertThat(text(b, 252, 4).strip()).isEqualTo("3");
        assertThat(text(b, 256, 48)).isEqualTo("Paw             Flow            EDF Annotations ");
        int record = 2 * 10 * 2 + 16;
        assertThat(b).hasSize(header + 3 * record);
        ByteBuffer data = ByteBuffer.wrap(b).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < 25; i++) {
            int at = header + i / 10 * record + 2 * (i % 10);
            assertThat(data.getShort(at) / 32_767.0 * 200).isCloseTo(i, within(0.0031));        // half a step of 400/65,534
            assertThat(data.getShort(at + 20) / 32_767.0 * 300).isCloseTo(-2.0 * i, within(0.0046));
        }
        assertThat(text(b, header + record + 40, 5)).isEqualTo("+1\u0014\u0014\0");
    }

    @Test
    void whatLiesBeyondTheRangeIsItsEnd() throws IOException {
        Path file = folder.resolve("b.edf");
        EdfWriter.write(file, "x", 1, TWO, sink -> sink.sample(1e9, -1e9));
        ByteBuffer data = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(data.getShort(1024)).isEqualTo((short) 32_767);
        assertThat(data.getShort(1026)).isEqualTo((short) -32_767);
    }

    @Test
    void aRateThatIsNoWholeNumberIsRefused() {
        assertThatThrownBy(() -> EdfWriter.write(folder.resolve("c.edf"), "x", 12.5, TWO, sink -> { })).hasMessageContaining("12.5");
    }
}
