/**
 * The transport file.
 * <p>Lives here: its table of keys, what its parts must have in common, its defaults, each named where it is taken; the
 * commented file to start from.
 * <p>Does not: single values ({@code leeway.files.keys}), sheets ({@code leeway.files.sheet}), computing.
 * <p>Leans on {@code leeway.files.sheet}, {@code leeway.files.keys} and the records of {@code leeway.core.transport}.
 */
package leeway.files.transport;
