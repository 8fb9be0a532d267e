package leeway.app.web;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/** How often one address of the network may ask: a bucket that fills steadily and holds a burst. */
final class Rates {
    private static final int ADDRESSES = 10_000;
    private final double perS;
    private final double burst;
    private final LongSupplier nanos;
    private final Map<String, double[]> buckets = new LinkedHashMap<>(256, 0.75f, true) {
        @Override protected boolean removeEldestEntry(Map.Entry<String, double[]> eldest) { return size() > ADDRESSES; }
    };

    Rates(double perMin, double burst, LongSupplier nanos) {
        this.perS = perMin / 60;
        this.burst = burst;
        this.nanos = nanos;
    }

    /** Takes one from the bucket of this address; 0 where there was one, otherwise the seconds to wait. */
    synchronized long waitS(String address) {
        double nowS = nanos.getAsLong() / 1e9;
        double[] bucket = buckets.computeIfAbsent(network(address), a -> new double[] {burst, nowS});
        bucket[0] = Math.min(burst, bucket[0] + (nowS - bucket[1]) * perS);
        bucket[1] = nowS;
        if (bucket[0] >= 1) {
            bucket[0] -= 1;
            return 0;
        }
        return (long) Math.ceil((1 - bucket[0]) / perS);
    }

    /** What was taken last and should not have been. */
    synchronized void giveBack(String address) {
        double[] bucket = buckets.get(network(address));
        if (bucket != null) bucket[0] = Math.min(burst, bucket[0] + 1);
    }

    /** One who has an address of IPv6 has the whole network of its first 64 bits, and could ask from another each time. RFC 4291, 2.5.4. */
    static String network(String address) {
        String plain = address.replaceAll("[\\[\\]]|%.*", "");
        if (plain.indexOf(':') < 0) return address;
        try {
            byte[] bytes = InetAddress.getByName(plain).getAddress();        // with a colon it is numbers and not looked up
            return bytes.length == 16 ? HexFormat.of().formatHex(bytes, 0, 8) + "/64" : InetAddress.getByAddress(bytes).getHostAddress();
        } catch (UnknownHostException notAnAddress) {
            return address;
        }
    }
}
