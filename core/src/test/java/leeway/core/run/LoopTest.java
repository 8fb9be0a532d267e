package leeway.core.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LoopTest {
    /** A bucket that fills at a knob's rate and is emptied when full: as simple as a part can be. */
    private static final class Bucket implements Part {
        private int at;
        private double rate;

        @Override public void claim(Claims claims) {
            at = claims.state(2);
            claims.reads(Knob.RESISTANCE);
        }

        @Override public void begin(Now n) { }

        @Override public void retune(Now n) {
            rate = n.get(Knob.RESISTANCE);
        }

        @Override public double nextS(Now n, double latestS) {
            return n.tS + (100 - n.y[at]) / rate;
        }

        @Override public void pass(Now n, double dtS) {
            n.y[at] += rate * dtS;
            n.flux[Flux.IN_ML.ordinal()] += rate * dtS;
        }

        @Override public void hit(Now n, Script script, Sink out) {
            n.y[at] = 0;
            n.rowEnds = true;
        }

        @Override public void row(Now n, Script script, Sink out) {
            n.set(Column.END_S, n.tS);
        }
    }

    /** Sums the flux of the part before it. */
    private static final class Meter implements Part {
        private int at;
        @Override public void claim(Claims claims) {
            at = claims.state(1);
        }
        @Override public void begin(Now n) { }
        @Override public double nextS(Now n, double latestS) {
            return Double.POSITIVE_INFINITY;
        }
        @Override public void pass(Now n, double dtS) {
            n.y[at] += n.get(Flux.IN_ML);
        }
        @Override public void row(Now n, Script script, Sink out) {
            n.set(Column.INSPIRED_ML, n.y[at]);
            n.y[at] = 0;
        }
    }

    /** Asks for now, for ever. */
    private static final class Stuck implements Part {
        @Override public void claim(Claims claims) { }
        @Override public void begin(Now n) { }
        @Override public double nextS(Now n, double latestS) {
            return n.tS;
        }
        @Override public void pass(Now n, double dtS) { }
    }

    /** Creeps: always a little later, never by as much as a nanosecond; first some honest seconds. */
    private static final class Creeping implements Part {
        @Override public void claim(Claims claims) { }
        @Override public void begin(Now n) { }
        @Override public double nextS(Now n, double latestS) {
            return n.tS < 3 ? n.tS + 1 : n.tS + 1e-12;
        }
        @Override public void pass(Now n, double dtS) { }
        @Override public String who() {
            return "Creeping (asked for a crumb)";
        }
    }

    /** Has this many things to do at one moment, each second. */
    private static final class Busy implements Part {
        private final int things;
        private int done;
        private double secondS = 1;
        Busy(int things) {
            this.things = things;
        }
        @Override public void claim(Claims claims) { }
        @Override public void begin(Now n) { }
        @Override public double nextS(Now n, double latestS) {
            return secondS;
        }
        @Override public void pass(Now n, double dtS) { }
        @Override public void hit(Now n, Script script, Sink out) {
            if (++done < things) return;
            done = 0;
            secondS++;
        }
    }

    private static List<double[]> rows(double endS, Loop loop, Now n, Script script) {
        List<double[]> rows = new ArrayList<>();
        loop.to(endS, n, script, new Sink() {
            @Override public void row(Now now) {
                rows.add(now.row.clone());
            }
        });
        return rows;
    }

    @Test
    void partsAreHitWhenTheyAskAndLaterPartsReadTheFlux() {
        Loop loop = new Loop(new Bucket(), new Meter());
        Script script = new Script().base(Knob.RESISTANCE, 10).add(Change.during(15, 25, Knob.RESISTANCE, How.TIMES, 2));
        List<double[]> rows = rows(60, loop, loop.begin(script), script);
        assertThat(rows).extracting(r -> r[Column.END_S.ordinal()]).usingElementComparator((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : 1)
                .containsExactly(10.0, 17.5, 22.5, 30.0, 40.0, 50.0);
        assertThat(rows).allSatisfy(r -> assertThat(r[Column.INSPIRED_ML.ordinal()]).isCloseTo(100, within(1e-9)));
    }

    @Test
    void aCopyIsABranchAndPartsServeBothInTurn() {
        Loop loop = new Loop(new Bucket(), new Meter());
        Script script = new Script().base(Knob.RESISTANCE, 10);
        Now now = loop.begin(script);
        loop.to(12, now, script, Sink.NONE);
        Now branch = now.copy();
        Script faulty = script.copy().add(Change.at(12, Knob.RESISTANCE, How.TIMES, 4));
        loop.to(13, branch, faulty, Sink.NONE);
        loop.to(13, now, script, Sink.NONE);
        loop.to(14, branch, faulty, Sink.NONE);
        assertThat(now.y[0]).isCloseTo(30, within(1e-9));
        assertThat(branch.y[0]).isCloseTo(100, within(1e-9));
    }

    @Test
    void aPartWithoutItsKnobIsRefusedByName() {
        Loop loop = new Loop(new Bucket());
        assertThatThrownBy(() -> loop.begin(new Script())).hasMessageContaining("RESISTANCE");
    }

    @Test
    void aPartThatMakesNoProgressIsStoppedAndNamed() {
        Loop loop = new Loop(new Stuck());
        Script script = new Script();
        assertThatThrownBy(() -> loop.to(1, loop.begin(script), script, Sink.NONE))
                .isInstanceOf(IllegalStateException.class).hasMessageContaining("no progress at 0.0 s in Stuck");
    }

    @Test
    void aPartThatOnlyCreepsIsStoppedAndSaysWhatItAskedFor() {
        Loop loop = new Loop(new Bucket(), new Creeping());
        Script script = new Script().base(Knob.RESISTANCE, 10);
        Now now = loop.begin(script);
        assertThatThrownBy(() -> loop.to(5, now, script, Sink.NONE)).isInstanceOf(IllegalStateException.class).hasMessageStartingWith("no progress at 3.0").hasMessageEndingWith("in Creeping (asked for a crumb)");
        assertThat(now.tS).as("it stopped where it stuck").isBetween(3.0, 3.001);
    }

    @Test
    void manyThingsAtOneMomentAreNoStandstillAndTooManyAre() {
        Script script = new Script();
        Loop busy = new Loop(new Busy(60));
        Now now = busy.begin(script);
        busy.to(100, now, script, Sink.NONE);
        assertThat(now.tS).isEqualTo(100);
        Loop stuck = new Loop(new Busy(80));
        assertThatThrownBy(() -> stuck.to(100, stuck.begin(script), script, Sink.NONE)).isInstanceOf(IllegalStateException.class).hasMessageContaining("no progress at 1.0 s in Busy");
    }

    @Test
    void aSinkThatHasEnoughStopsTheRun() {
        Loop loop = new Loop(new Bucket());
        Script script = new Script().base(Knob.RESISTANCE, 10);
        Now now = loop.begin(script);
        int[] heard = {0};
        loop.to(1e6, now, script, new Sink() {
            @Override public void row(Now n) {
                heard[0]++;
            }
            @Override public boolean enough() {
                return heard[0] == 3;
            }
        });
        assertThat(now.tS).isCloseTo(30, within(1e-9));
    }

    @Test
    void aRunThatNobodyWaitsForStopsAndOneThatIsAwaitedIsTheSame() {
        Script script = new Script().base(Knob.RESISTANCE, 2_000);
        Loop loop = new Loop(new Bucket());
        int[] asked = {0};
        Now now = loop.begin(script);
        assertThatThrownBy(() -> loop.until(() -> ++asked[0] == 3).to(1e9, now, script.copy(), Sink.NONE)).isInstanceOf(Stopped.class);
        assertThat(now.tS).isLessThan(100);
        Now plain = loop.begin(script);
        loop.to(20, plain, script.copy(), Sink.NONE);
        Now awaited = loop.begin(script);
        loop.until(() -> false).to(20, awaited, script.copy(), Sink.NONE);
        assertThat(awaited.y).isEqualTo(plain.y);
        assertThat(awaited.tS).isEqualTo(plain.tS);
    }
}
