package leeway.core.body;

/** Where gas exchange keeps what: offsets into its slice of the state. Amounts mL STPD, contents mL/dL, in the order oxygen, carbon dioxide, nitrogen. */
final class GasSlot {
    /** End of the last stretch, s. */
    static final int LAST_S = 0;
    /** Since then: into the lung and its oxygen, out of it, mL BTPS; integral of alveolar pressure, cmH2O·s. */
    static final int IN_ML = 1, IN_O2_ML = 2, OUT_ML = 3, PRESSURE_S = 4;
    /** What the airway was during the stretch: 1 closed, gas at its mouth, share of the lung it reaches. */
    static final int CLOSED = 5, MOUTH_GAS = 6, REACHED = 7;
    /** Mean alveolar pressure, smoothed. */
    static final int PRESSURE = 8;
    /** Shares of oxygen and carbon dioxide in all gas of the last expiration, and of the last inspiration. */
    static final int MIXED_O2 = 9, MIXED_CO2 = 10, INLET_O2 = 11, INLET_CO2 = 12;
    /** End-tidal tension, NaN without an expiration since the last row. */
    static final int END_TIDAL = 13;
    /** Since the last row: taken up by blood, given off at the mouth. */
    static final int ROW_UPTAKE = 14, ROW_OUTPUT = 15;
    /** Net through the mouth since the start, by gas; used and made by tissues. */
    static final int LEDGER = 16, USED = 19, MADE = 20;
    /** Gas by compartment, three gases each: well ventilated, poorly ventilated, behind a blocked bronchus, without blood. */
    static final int MAIN = 21, LOW = 24, BLOCKED = 27, DEAD = 30;
    /** Series dead space, from the mouth to the lung. */
    static final int TANK = 33;
    /** Contents of the arteries' tank, of each tissue's own veins and of the large veins where they meet, two gases a tank. */
    static final int ARTERY = 42, VEIN = 44, LARGE_VEIN = 50;
    /** Contents where an arterial sample is drawn. */
    static final int SAMPLE = 52;
    /** Carbon dioxide held by the tissues beside their blood. */
    static final int TISSUE = 54;
    /** Where the searches of {@link Warm} ended: main, low, blocked, three tissues, artery. */
    static final int WARM = 57;
    static final int WARM_MAIN = 0, WARM_LOW = 1, WARM_BLOCKED = 2, WARM_TISSUE = 3, WARM_ARTERY = 6;
    /** Blood on its way from the lung to the place of the sample, in parcels, oldest first: how many, then volume and two contents of each. */
    static final int PARCELS = WARM + 7 * Warm.EACH, MOST_PARCELS = 16;
    static final int COUNT = PARCELS + 1 + 3 * MOST_PARCELS;

    private GasSlot() {
    }
}
