/**
 * What the stores hold and how long it lasts: cylinders, wall outlets, liquid, concentrators, batteries, the device's own draw.
 * <p>Lives here: the draw of any ventilator that a sheet describes, load and charge, the walk of a journey over its stores,
 * the chance of running dry, the smallest kit, and the part of the loop that empties stores while something goes wrong.
 * <p>Does not: files and sheets ({@code leeway.files}), what a breath needs ({@code leeway.core.breath}), wording of pages,
 * chance of its own (every draw is of {@link leeway.core.run.Draw}, named).
 * <p>Units: litres of oxygen are free gas (15 °C, 1013.25 hPa, dry), minutes along a journey, seconds in the loop, bar
 * gauge, W and Wh. Names of draws: {@code duration of leg i}, {@code delay}, {@code diversion of leg i},
 * {@code gauge of NAME}, {@code reading of NAME}, {@code temperature of NAME}, {@code charge of NAME}.
 * <p>Leans on {@code leeway.core.gas}, {@code leeway.core.kit}, {@code leeway.core.transport}, {@code leeway.core.run}.
 * Formulas and sources: docs/physics/supply.md.
 */
package leeway.core.supply;
