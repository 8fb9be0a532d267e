/**
 * The computing heart of Leeway: pure functions over immutable records.
 * <p>Lives here: everything that works out what follows from a patient, a kit and a journey, one room a package.
 * <p>Does not: files, commands, pages, clocks, threads, locales, logging, unseeded chance. Time, seed and catalogue
 * are parameters. {@code HouseTest} holds this.
 * <p>Results flow one way: transport, settings, breaths, supply, alarms, rehearsals, plan, card.
 */
package leeway.core;
