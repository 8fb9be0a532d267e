package leeway.files.yaml;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** The bytes of a file as text, within limits: at most {@value #LIMIT} bytes, UTF-8, no control characters. */
public final class Text {
    /** One megabyte; a long transport file has ten kilobytes. */
    public static final int LIMIT = 1_000_000;

    private Text() { }

    /** Reads a file; never more than the limit, whatever it is. */
    public static Read<String> of(Path file, String name) {
        if (Files.isDirectory(file)) return bad(Place.start(name), "this is a folder", "Give the file itself.");
        try (InputStream in = Files.newInputStream(file)) {
            return of(in.readNBytes(LIMIT + 1), name);
        } catch (NoSuchFileException e) {
            return bad(Place.start(name), "there is no such file", "\"leeway new FILE\" writes one to start from.");
        } catch (AccessDeniedException e) {
            return bad(Place.start(name), "this file may not be read", "Look at its permissions.");
        } catch (IOException e) {
            return bad(Place.start(name), "this file could not be read", "");
        }
    }

    public static Read<String> of(byte[] bytes, String name) {
        if (bytes.length > LIMIT) return tooLong(name);
        if (bytes.length >= 2 && ((bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF) || (bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE))) {
            return bad(Place.start(name), "this is UTF-16 text", "Save it as UTF-8.");
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT).onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer chars = CharBuffer.allocate(bytes.length + 1);
        CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), chars, true);
        chars.flip();
        String text = chars.toString();
        Read<String> printable = of(text, name);
        if (printable instanceof Read.Bad<String> || !result.isError()) return printable;
        return bad(place(text, text.length(), name), "this is not UTF-8 text", "Save it as UTF-8; is it a text at all?");
    }

    /** Text that is already text: its length and its characters are looked at. A byte order mark is taken off. */
    public static Read<String> of(String text, String name) {
        if (text.length() > LIMIT || utf8Length(text) > LIMIT) return tooLong(name);
        String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
        for (int i = 0; i < body.length(); i++) {
            char c = body.charAt(i);
            boolean pair = Character.isHighSurrogate(c) && i + 1 < body.length() && Character.isLowSurrogate(body.charAt(i + 1));
            if (pair) {
                i++;
            } else if (c < 0x20 && c != '\n' && c != '\r' && c != '\t' || c >= 0x7F && c < 0xA0 && c != 0x85 || Character.isSurrogate(c)
                    || c == 0xFFFE || c == 0xFFFF || c == 0xFEFF) {
                return bad(place(body, i, name), "a character that no text has (U+%04X)".formatted((int) c), "Is it a text file at all?");
            }
        }
        return new Read.Good<>(body);
    }

    /** Place of an offset in a text. */
    static Place place(String text, int offset, String name) {
        int line = 1;
        int lineStart = 0;
        for (int i = 0; i < offset; i++) {
            char c = text.charAt(i);
            if (c == '\n' || c == '\r' && !(i + 1 < text.length() && text.charAt(i + 1) == '\n')) {
                line++;
                lineStart = i + 1;
            }
        }
        return new Place(name, line, text.codePointCount(lineStart, offset) + 1);
    }

    private static long utf8Length(String text) {
        long n = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            n += c < 0x80 ? 1 : c < 0x800 ? 2 : Character.isSurrogate(c) ? 2 : 3;
        }
        return n;
    }

    private static Read<String> tooLong(String name) { return bad(Place.start(name), "this file is longer than 1 MB", "A transport file has a few kilobytes."); }

    static <T> Read<T> bad(Place at, String what, String right) {
        Complaints one = new Complaints();
        one.add(at, what, right);
        return new Read.Bad<>(one.all());
    }
}
