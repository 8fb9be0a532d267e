/**
 * Single calculations, shown with their working and their source.
 * <p>Lives here: the registry of calcs, their keys, reading of what was given, results with the names of the contract.
 * A new calc is a class that implements {@link leeway.core.calc.Calc} and a line in {@link leeway.core.calc.Calcs}.
 * <p>Does not: formulas, which live in the rooms of their subjects; commands and pages ({@code leeway.app}); reading of
 * sheets, which are handed in as {@link leeway.core.calc.Sheets}.
 * <p>Units: a number is held in the unit of its {@link leeway.core.quantity.Kind}; result keys carry theirs in the name.
 */
package leeway.core.calc;
