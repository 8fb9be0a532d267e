/**
 * What people touch: commands, reports, pages.
 * <p>Lives here: picocli commands, text, JSON, HTML and SVG made from the records of {@code leeway.core}.
 * <p>Does not: any computing of its own; a figure on a page is a figure of a record.
 */
package leeway.app;
