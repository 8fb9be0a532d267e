package leeway.core.kit;

/**
 * What leads into the patient.
 *
 * @param innerDiameterMm of its narrowest long part
 * @param lengthCm        as used, cut or not
 * @param frictionTimes   measured drop over that of a straight smooth pipe (bend, connector, entry)
 * @param bypassShare     share of the extrathoracic dead space that it bypasses, 0 to 1
 * @param deadSpaceMl     its own volume
 * @param cuffed          whether a cuff can seal it
 * @param leakMlPerSPerSqrtCmH2O the leak it usually has
 */
public record Airway(String name, Type type, double innerDiameterMm, double lengthCm, double frictionTimes, double bypassShare,
                     double deadSpaceMl, boolean cuffed, double leakMlPerSPerSqrtCmH2O, String source) {
    /** The same, kept fresh by a flow through it: nothing in it is breathed again. */
    public Airway flushed() {
        return new Airway(name, type, innerDiameterMm, lengthCm, frictionTimes, bypassShare, 0, cuffed, leakMlPerSPerSqrtCmH2O, source);
    }

    /** The kind of airway. */
    public enum Type { TRACHEAL_TUBE, TRACHEOSTOMY, LARYNGEAL_MASK, FACE_MASK }
}
