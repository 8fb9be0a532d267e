/**
 * The commands of {@code ./leeway}: what is typed, what is printed, the exit code.
 * <p>Lives here: one class a command, below {@link leeway.app.command.Command}; the table of them,
 * {@link leeway.app.command.Commands}; the terminal.
 * <p>Does not: computing ({@code leeway.core}), reading of files ({@code leeway.files}), the layout of a plan
 * ({@code leeway.app.report}).
 * <p>A new command is a class and one line in the table. Only the class of the command that was asked for is loaded, so
 * that a short command starts fast. Results go to {@link leeway.app.command.Terminal#out}, everything else to
 * {@link leeway.app.command.Terminal#err}. A command returns 0 (done), 1 (done, and the answer is no) or 2 (bad input);
 * an exception that leaves it is a fault of ours, 3.
 */
package leeway.app.command;
