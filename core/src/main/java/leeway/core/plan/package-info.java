/**
 * The plan: all that follows from a transport, assembled from what the other rooms compute, and judged.
 * <p>Lives here: the records of a plan, the verdict with its sentences, turnaround, cautions.
 * <p>Does not: physics, settings, supply, alarms (each in its own room), the layout of pages ({@code leeway.app.report}).
 * <p>Units stand in every name; fractions are 0 to 1; what is not known is absent. The top of {@code leeway.core}: leans on
 * every room below it, and no room of core leans on this one.
 */
package leeway.core.plan;
