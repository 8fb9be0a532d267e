/**
 * Tables of keys, the one truth about what a file may say.
 * <p>Lives here: keys with their form, bounds, defaults and meaning; reading a tree by a table, with every complaint;
 * what was read, ready to become a record; the JSON Schema of a table.
 * <p>Does not: which keys a transport or a sheet has ({@code leeway.files.transport}, {@code leeway.files.sheet}).
 * <p>Values are held in the unit of their {@code Kind}.
 * <p>Leans on {@code leeway.files.yaml} and {@code leeway.core.quantity}.
 */
package leeway.files.keys;
