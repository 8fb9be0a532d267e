package leeway.app.web;

import java.util.concurrent.Executor;
import java.util.function.BooleanSupplier;

/**
 * What somebody who works out an answer has at hand.
 *
 * @param unwanted true once nobody waits for the answer any more; to be asked now and then
 * @param idle     processors that nobody needed when the work began
 * @param others   hands them a share of the work; one that none of them begins is left to whoever shared it out
 * @param needed   true while others wait to be answered; who has taken a share gives the rest of it back then
 */
record Hands(BooleanSupplier unwanted, int idle, Executor others, BooleanSupplier needed) {
    /** Alone, for somebody who waits as long as it takes. */
    static final Hands ALONE = new Hands(() -> false, 0, Runnable::run, () -> false);
}
