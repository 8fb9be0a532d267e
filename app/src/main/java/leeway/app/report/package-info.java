/**
 * A plan as people and programs read it: text for a terminal, JSON, one HTML file with its pictures.
 * <p>Lives here: {@link leeway.app.report.Json}, text of 80 columns, SVG strings made from records.
 * <p>Does not: computing. A figure on a page is a figure of a record, rounded once, here, to what the model can know.
 * <p>Units stand in every key, head or label. Leans on the records of {@code leeway.core}.
 */
package leeway.app.report;
