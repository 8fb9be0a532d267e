/**
 * The one loop: everything that moves in time is stepped here.
 * <p>Lives here: the state of a moment, parts, layered changes, sinks, the counter-based draws.
 * <p>Does not: physics. A part knows only its own slice of the state and lives in the room of its subject.
 * <p>Leans on nothing but the language.
 */
package leeway.core.run;
