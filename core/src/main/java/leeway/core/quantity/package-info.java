/**
 * Numbers with their units: dimensions, a small closed table of units, quantities as people write them.
 * <p>Lives here: units and the families in which a file accepts them, parsing of "185 bar", conversions.
 * <p>Does not: positions in files and complaints ({@code leeway.files}), physics.
 * <p>Internal units: cmH2O airway, mmHg gas tensions, bar gauge in cylinders, mL volumes, L/min flows, s, kg, cm, Cel.
 * <p>Leans on nothing but the language. Every factor is checked in the tests of {@code files} against a UCUM library.
 */
package leeway.core.quantity;
