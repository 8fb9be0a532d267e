/**
 * The small language in which a strategy sheet says its rules: arithmetic on quantities with units, choices, tables.
 * <p>Lives here: parsing by precedence climbing, the check of dimensions, evaluation. A formula cannot loop, call back,
 * or reach anything but the names it is given, and its length, depth and size are bounded.
 * <p>Does not: know which names there are ({@code leeway.core.settings}), where in a file a formula stands
 * ({@code leeway.files}); a slip names its offset in the formula's text.
 * <p>Amounts are held in coherent SI units. Leans on {@code leeway.core.quantity} only.
 */
package leeway.core.expression;
