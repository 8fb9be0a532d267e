/**
 * The settings that a transport starts with: which strategy, what it knows of the patient, and the search on the real model.
 * <p>Lives here: the bridge between {@code leeway.core.settings}, which knows rules and targets, and
 * {@code leeway.core.journey}, which knows where breath and gases settle.
 * <p>Does not: rules, physics, judgement of the plan.
 * <p>Leans on settings, journey, body, breath, gas, kit, transport and run.
 */
package leeway.core.start;
