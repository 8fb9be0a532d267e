/**
 * Who speaks first: faults, what they do, when harm begins, until when it can still be prevented, what margin is left.
 * <p>Lives here: faults as layered changes, what a kit must have for them, harm watched breath by breath, the rehearsal of
 * one fault at one moment, of all faults at their worst moments, of pairs, over many draws.
 * <p>Does not: physics, sensors and alarm conditions ({@code leeway.core.alarm}), sheets, threads (a draw is a function of
 * its number; whoever has threads hands out the numbers and sums in their order).
 * <p>Units: s, otherwise as in the name. Method, sources and limits: docs/physics/alarms.md; each fault: docs/faults.md.
 * <p>Leans on {@code leeway.core.journey}, whose run it branches, on {@code leeway.core.alarm}, and on the rooms of breath, gas and supply below them.
 */
package leeway.core.rehearsal;
