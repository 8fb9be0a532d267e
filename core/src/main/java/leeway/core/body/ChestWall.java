package leeway.core.body;

import java.util.Optional;

/**
 * What lying prone or head down does to the elastance of chest wall and lung. Leaves out the way from one to another; the gas
 * left in the lung is {@link Posture}'s, and shunt and circulation stay as they are.
 *
 * @param wallTimes elastance of the chest wall over supine
 * @param lungTimes elastance of the lung over supine
 */
public record ChestWall(double wallTimes, double lungTimes) {
    public static final ChestWall SUPINE = new ChestWall(1, 1);
    /**
     * Prone over supine in acute lung injury, without supports: chest wall 235.2 and 158.1, lung 71.5 and 93.5 mL/cmH2O
     * (Effects of thoraco-pelvic supports, Crit Care 2006;10:R87, table 3).
     */
    private static final ChestWall PRONE = new ChestWall(235.2 / 158.1, 71.5 / 93.5);
    /** The belly presses on the diaphragm: invented. */
    private static final ChestWall HEAD_DOWN = new ChestWall(1.2, 1);

    /** Of a position in the words of {@link Posture#WORDS}. */
    public static ChestWall of(Optional<String> position) {
        return switch (position.orElse("supine")) {
            case "prone" -> PRONE;
            case "head down" -> HEAD_DOWN;
            default -> SUPINE;
        };
    }

    /** Elastance of the whole over supine, where the chest wall had this share of it. */
    public double elastanceTimes(double share) {
        return (1 - share) * lungTimes + share * wallTimes;
    }

    /** The chest wall's share of elastance so. */
    public double share(double supineShare) {
        return Math.min(0.95, supineShare * wallTimes / elastanceTimes(supineShare));
    }
}
