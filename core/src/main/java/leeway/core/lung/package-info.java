/**
 * What air meets on its way: tubes, leaks, the elastic lung, the muscles that pull on it.
 * <p>Lives here: pressure drops of airway tubes, the orifice law of leaks, pressure-volume curves, what opens and closes,
 * the largest flow that airways let out, effort profiles.
 * <p>Does not: breaths, settings, ventilators ({@code leeway.core.breath}), gas exchange.
 * <p>Units: cmH2O, L/s and cmH2O.s/L at the border of this room, as handbooks print them. Sources: docs/physics/breath.md and lungs.md.
 * Leans on nothing but the language.
 */
package leeway.core.lung;
