/**
 * What is carried, as its sheets say: ventilator, circuit, filter, airway, battery, monitor, illness, policy.
 * <p>Lives here: immutable records of sheets, each value with its unit in its name; modes, settings and alarm
 * conditions as closed lists.
 * <p>Does not: reading of files, physics, the meaning of a strategy's rules ({@code leeway.core.settings}) or of a
 * fault's effects ({@code leeway.core.rehearsal}).
 * <p>Leans on {@code leeway.core.quantity} only.
 */
package leeway.core.kit;
