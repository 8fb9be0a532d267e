/**
 * The one loop: everything that moves in time is stepped here.
 * <p>Lives here: the state of a moment ({@link leeway.core.run.Now}), parts, layered changes, sinks, the counter-based draws.
 * <p>Does not: physics. A part knows only its own slice of the state and lives in the room of its subject.
 * <p><b>Who writes what.</b> The breath part passes first and writes {@link leeway.core.run.Flux} (integrals over this
 * pass) and {@link leeway.core.run.Level} (where it stands at the end of the pass); the parts after it read both in the
 * same pass. Flux is cleared after each pass, levels stay. A pass is never longer than the stretch that some part asked
 * for; a part that must not be stepped further than 2 s at once says so in its own {@code nextS}.
 * <p><b>Rows.</b> The breath part completes a row at the end of each breath, and every 2 s where there is no breath; then
 * every part fills its own {@link leeway.core.run.Column}s in order, later parts seeing those of the earlier ones.
 * <p><b>Units.</b> s, mL (BTPS), mL/s, cmH2O between the parts; knobs, columns and settings carry theirs in name or table.
 * <p>Leans on nothing but the language.
 */
package leeway.core.run;
