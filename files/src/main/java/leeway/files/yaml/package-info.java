/**
 * YAML text as a tree that knows where everything stands, and complaints about it.
 * <p>Lives here: the limits on what is read at all, the tree with start and end of every value, places, complaints,
 * nearest names, changing one value of a text in place.
 * <p>Does not: which keys there are and what they mean ({@code leeway.files.keys}).
 * <p>Lines and columns count from 1; a column counts characters, a surrogate pair as one.
 * <p>Leans on the YAML library for tokens only: the tree is built from its events, so that a limit stops reading at once.
 */
package leeway.files.yaml;
