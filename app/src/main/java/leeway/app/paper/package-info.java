/**
 * Paper: the report and the crew's card as PDF.
 * <p>Lives here: what stands on the card, and how a page of HTML becomes tagged pages with their fonts inside. Lives not here:
 * figures and pictures ({@code leeway.app.report}), commands. Leans on {@code leeway.app.report} and the results of core.
 */
package leeway.app.paper;
