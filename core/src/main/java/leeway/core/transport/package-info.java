/**
 * One journey of one patient, as a transport file describes it, with its sheets found and its defaults named.
 * <p>Lives here: the records of a transport. Does not: reading, defaults' values (those are in the sheets), computing.
 * <p>Leans on {@code leeway.core.kit}, and on {@code leeway.core.lung} for what kind of lungs a patient has.
 */
package leeway.core.transport;
