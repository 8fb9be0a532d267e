package leeway.app.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import leeway.app.report.MapPicture;

/**
 * Style, script and type of the pages. They come from the program itself, read once at the start; the address of each
 * holds a digest of its content, so a browser keeps it for good and never keeps an old one.
 */
final class Assets {
    private static final String TYPE = "/leeway/app/report/";
    private static final String HERE = "/leeway/web/";
    private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js";
    private final Map<String, Asset> byAddress = new LinkedHashMap<>();
    private final Map<String, String> addresses = new LinkedHashMap<>();

    /** One of them. */
    record Asset(byte[] plain, byte[] zipped, String type) { }

    Assets() {
        add("text.woff2", TYPE + "text.woff2", "font/woff2");
        add("text-bold.woff2", TYPE + "text-bold.woff2", "font/woff2");
        add("htmx.js", HTMX, "text/javascript; charset=utf-8");
        add("idiomorph.js", HERE + "idiomorph.js", "text/javascript; charset=utf-8");
        add("leeway.js", HERE + "leeway.js", "text/javascript; charset=utf-8");
        add("icon.svg", HERE + "icon.svg", "image/svg+xml");
        add("leeway.css", HERE + "leeway.css", "text/css; charset=utf-8");
    }

    /** Where a page finds it. */
    String at(String name) {
        String address = addresses.get(name);
        if (address == null) throw new IllegalArgumentException("no asset " + name);
        return address;
    }

    Optional<Asset> get(String address) { return Optional.ofNullable(byAddress.get(address)); }

    private void add(String name, String resource, String type) {
        byte[] plain = read(resource);
        if (name.endsWith(".css")) {
            plain = (new String(plain, java.nio.charset.StandardCharsets.UTF_8) + MapPicture.rules()).replace("\"text.woff2", "\"" + at("text.woff2")).replace("\"text-bold.woff2", "\"" + at("text-bold.woff2")).getBytes(java.nio.charset.StandardCharsets.UTF_8);
        }
        String address = "/assets/" + digest(plain) + "/" + name;
        addresses.put(name, address);
        byAddress.put(address, new Asset(plain, type.startsWith("font/") ? plain : zipped(plain), type));
    }

    private static byte[] read(String resource) {
        try (InputStream in = Assets.class.getResourceAsStream(resource)) {
            if (in == null) throw new IllegalStateException("the program lacks its own part " + resource);
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] zipped(byte[] plain) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(out) {{ def.setLevel(9); }}) {
            zip.write(plain);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static String digest(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content), 0, 6);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
