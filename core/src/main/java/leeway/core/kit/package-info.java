/**
 * What is carried, as its sheets say: ventilator, circuit, filter, airway, battery, monitor, illness, policy.
 * <p>Lives here: immutable records of sheets, each value with its unit in its name; modes, settings and alarm
 * conditions as closed lists.
 * <p>Does not: reading of files, physics, the meaning of a strategy's rules ({@code leeway.core.settings}) or of a
 * fault's effects ({@code leeway.core.rehearsal}).
 * <p>Leans on {@code leeway.core.quantity}, and on {@code leeway.core.lung} for what kind of lungs an illness has.
 */
package leeway.core.kit;
