/**
 * The workbench in the browser and the interface for other programs: {@code leeway serve}.
 * <p>Lives here: routes, pages (templates in {@code src/main/jte}), the guard in front of them, what goes into an address.
 * <p>Does not: reading of transport files ({@code leeway.files}), computing ({@code leeway.core}), pictures and JSON
 * ({@code leeway.app.report}). Nothing of a request is kept: its state is the text of the transport file, in the form
 * that is posted or packed into the address. No file path of a request is ever opened.
 * <p>Units: as the records say, in the names of their components.
 */
package leeway.app.web;
