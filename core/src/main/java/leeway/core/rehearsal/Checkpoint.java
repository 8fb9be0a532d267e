package leeway.core.rehearsal;

import leeway.core.run.Now;
import leeway.core.run.Script;

/**
 * A moment to branch from: the state, and the script as it stands there, for parts and crew add layers of their own on the way
 * (a store that ran dry, a pause of the audio) that belong to this branch only.
 */
record Checkpoint(Now now, Script script) {
    static Checkpoint of(Now now, Script script) { return new Checkpoint(now.copy(), script.copy()); }

    Checkpoint branch() { return of(now, script); }

    double tS() { return now.tS; }
}
