/**
 * Reading and writing: what stands in a file becomes a record of {@code leeway.core}, and the other way round.
 * <p>Lives here: YAML with positions, units as people write them, sheets, schemas, CSV. Every mistake of the user's
 * becomes a complaint with its place, all of them at once.
 * <p>Does not: computing (that is {@code leeway.core}), wording of results for people ({@code leeway.app}).
 */
package leeway.files;
