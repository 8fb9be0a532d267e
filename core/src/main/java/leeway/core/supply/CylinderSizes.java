package leeway.core.supply;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Sizes of cylinders by the letters of a country. A letter alone is no size: an E of one country is not the E of another.
 * <p>Water capacities are from memory, on the small side where makes differ. Nominal contents of UK sizes D, E and F were
 * looked up (hospital transfer guidance, transfer equipment text); US factors in L/psi too (respiratory care texts); they
 * derive from 28.3 L per ft³ over 2200 psi and lie about 16 % under the real gas, which is cautious.
 */
public final class CylinderSizes {
    /** Oxygen at 15 °C and 1013.25 hPa by the equation of state: 1.3544 kg/m³. */
    static final double OXYGEN_KG_PER_FREE_L = 1.3544e-3;
    private static final Map<String, Double> WATER_L = new LinkedHashMap<>();
    private static final Map<String, Double> L_PER_PSI = new LinkedHashMap<>();

    static {
        // from memory
        WATER_L.put("UK C", 1.2);
        WATER_L.put("UK D", 2.32);
        WATER_L.put("UK E", 4.68);
        WATER_L.put("UK F", 9.4);
        WATER_L.put("UK G", 23.6);
        WATER_L.put("UK J", 47.2);
        // from memory; makes of D hold 2.8 to 3, of E 4.5 to 4.7, of M 21 to 22, of G 32 to 38, of H and K 43 to 50
        WATER_L.put("US D", 2.8);
        WATER_L.put("US E", 4.5);
        WATER_L.put("US M", 21.0);
        WATER_L.put("US G", 32.0);
        WATER_L.put("US H", 43.0);
        WATER_L.put("US K", 43.0);
        // respiratory care texts, table of cylinder factors
        L_PER_PSI.put("US D", 0.16);
        L_PER_PSI.put("US E", 0.28);
        L_PER_PSI.put("US M", 1.56);
        L_PER_PSI.put("US G", 2.41);
        L_PER_PSI.put("US H", 3.14);
        L_PER_PSI.put("US K", 3.14);
    }

    /** UK letters: filled to 137 bar at 15 °C (nominal contents of hospital transfer guidance; pressure from memory). */
    private static final double UK_BAR = 137;
    /** US letters: 2015 psi and the 10 % that may be added, 2216 psi at 70 °F; from memory. */
    private static final double US_BAR = 2216 * 0.06894757;
    /** A cylinder known by its water capacity: the highest of the usual 150, 200 and 300 bar; common practice, no source. */
    private static final double HIGHEST_USUAL_BAR = 300;
    /** What most of them are filled to; above it a plan says that it takes the cylinder to be made for more. */
    public static final double USUAL_BAR = 200;

    private CylinderSizes() { }

    /** The most to which a cylinder of this size may be filled, bar on the gauge at 15 °C. */
    public static double ratingBar(String size) {
        return size.startsWith("UK ") ? UK_BAR : size.startsWith("US ") ? US_BAR : HIGHEST_USUAL_BAR;
    }

    /** Water capacity in L by name, "US E" or "UK E", in the order of size. */
    public static Map<String, Double> waterL() { return Collections.unmodifiableMap(WATER_L); }

    /** The trade's factor by US name, litres per psi of gauge reading. */
    public static Map<String, Double> litresPerPsi() { return Collections.unmodifiableMap(L_PER_PSI); }

    /** Mass of a filled steel cylinder with its valve, kg, where a file names none: 1.2 kg per litre of water and 1 kg, and its gas; common practice, no source. */
    public static double massKg(double waterL, double freeGasL) {
        return 1 + 1.2 * waterL + freeGasL * OXYGEN_KG_PER_FREE_L;
    }
}
