package leeway.app.web;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * A page that was made once and is sent often: what is the same for every reader is kept compressed, and the gaps between,
 * such as a form's token, are filled anew for each.
 * <p>In the compressed form (RFC 1952 around RFC 1951) each stretch ends on a byte and refers to nothing before it; what
 * fills a gap stands there as a stored block.
 */
final class KeptPage {
    /** RFC 1952, 2.3: magic, deflate, no flags, no time, no hint, unknown system. */
    private static final byte[] HEAD = {0x1f, (byte) 0x8b, 8, 0, 0, 0, 0, 0, 0, (byte) 0xff};
    /** RFC 1951, 3.2.4: the final stored block, empty. */
    private static final byte[] LAST_BLOCK = {1, 0, 0, (byte) 0xff, (byte) 0xff};
    private final List<byte[]> plain = new ArrayList<>();
    private final List<byte[]> packed = new ArrayList<>();
    private int size;

    /** @param gap what stands in the text where a reader's own belongs */
    KeptPage(String text, String gap) {
        int from = 0;
        for (int at; (at = text.indexOf(gap, from)) >= 0; from = at + gap.length()) add(text.substring(from, at));
        add(text.substring(from));
    }

    private void add(String stretch) {
        byte[] bytes = stretch.getBytes(StandardCharsets.UTF_8);
        plain.add(bytes);
        size += bytes.length;
        Deflater deflater = new Deflater(Deflater.DEFAULT_COMPRESSION, true);
        try {
            deflater.setInput(bytes);
            byte[] out = new byte[bytes.length + bytes.length / 1000 + 64];
            int n = 0;
            for (int more; (more = deflater.deflate(out, n, out.length - n, Deflater.SYNC_FLUSH)) > 0; ) n += more;
            packed.add(java.util.Arrays.copyOf(out, n));
        } finally {
            deflater.end();
        }
    }

    /** As it is read. */
    byte[] plain(String fill) {
        byte[] own = fill.getBytes(StandardCharsets.UTF_8);
        ByteArrayOutputStream out = new ByteArrayOutputStream(size + plain.size() * own.length);
        for (int i = 0; i < plain.size(); i++) {
            if (i > 0) out.writeBytes(own);
            out.writeBytes(plain.get(i));
        }
        return out.toByteArray();
    }

    /** As gzip. */
    byte[] zipped(String fill) {
        byte[] own = fill.getBytes(StandardCharsets.UTF_8);
        byte[] stored = {0, (byte) own.length, (byte) (own.length >> 8), (byte) ~own.length, (byte) (~own.length >> 8)};
        CRC32 sum = new CRC32();
        long length = 0;
        ByteArrayOutputStream out = new ByteArrayOutputStream(size / 4 + 256);
        out.writeBytes(HEAD);
        for (int i = 0; i < plain.size(); i++) {
            if (i > 0) {
                out.writeBytes(stored);
                out.writeBytes(own);
                sum.update(own);
                length += own.length;
            }
            out.writeBytes(packed.get(i));
            sum.update(plain.get(i));
            length += plain.get(i).length;
        }
        out.writeBytes(LAST_BLOCK);
        little(out, sum.getValue());
        little(out, length);
        return out.toByteArray();
    }

    private static void little(ByteArrayOutputStream out, long value) { for (int i = 0; i < 4; i++) out.write((int) (value >> 8 * i)); }
}
