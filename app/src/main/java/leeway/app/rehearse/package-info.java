/**
 * Rehearsals as commands and pages ask for them: which faults, when, how many draws, on how many threads.
 * <p>Lives here: threads for draws (the numbers of the draws are handed out, the answers put in their order, so that the
 * answer does not depend on the threads), the what-ifs of a file.
 * <p>Does not: what a rehearsal is ({@code leeway.core.rehearsal}), words and pictures ({@code leeway.app.report}).
 */
package leeway.app.rehearse;
