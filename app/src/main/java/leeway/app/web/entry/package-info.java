/**
 * The form of a transport, as a mirror of its text: fields made from the table of keys, and what was typed into them
 * written back into the text in place.
 * <p>Lives here: fields, groups, complaints at their field, the diff of a posted form, undo. Does not: HTML, HTTP, computing.
 * <p>The text is the only truth: a form shows what a text says, a posted form says how to change that text.
 * <p>Leans on {@code leeway.files.yaml} and {@code leeway.files.keys}.
 */
package leeway.app.web.entry;
