/**
 * How far one may turn each knob before something breaks, and what moves the results most.
 * <p>Lives here: the operating map (room to the nearest limit over volume or pressure × rate), its limits and lines, the
 * sensitivity of the main results to each uncertain input.
 * <p>Does not: the model of breath and gas, pictures ({@code leeway.app.report}), judgement of the plan.
 * <p>Grids are rows of y, columns of x. Leans on start, journey, supply, settings and the rooms below them.
 */
package leeway.core.map;
