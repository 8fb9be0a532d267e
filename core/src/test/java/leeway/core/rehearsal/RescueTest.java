package leeway.core.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import leeway.core.rehearsal.Rescue.Tried;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RescueTest {
    private static final double STRUCK_S = 1000;

    /** A branch whose only measure has this room so long after the fault; a row every 3 s. */
    private static Course course(DoubleUnaryOperator room, double harmS) {
        Course course = new Course(1);
        for (double s = 0; s < harmS + 3; s += 3) course.add(STRUCK_S + s, new double[] {room.applyAsDouble(s)});
        return course;
    }

    private int tries;

    /** The remedy turns the measure after so long: the least room is that of then. */
    private DoubleFunction<Tried> turnsAfter(double s, DoubleUnaryOperator room) {
        return tS -> {
            tries++;
            double least = room.applyAsDouble(tS - STRUCK_S + s);
            return new Tried(least < 0, least);
        };
    }

    @ParameterizedTest @ValueSource(longs = {1, 2, 3, 4, 5})
    void theAnswerHelpsAndHalfASecondLaterDoesNot(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 200; i++) {
            double harmS = random.nextDouble(20, 1500), turnS = random.nextDouble(0.1, 60), power = random.nextDouble(0.3, 4);
            DoubleUnaryOperator room = s -> s < harmS ? StrictMath.pow(1 - s / harmS, power) : 1 - s / harmS;
            double by = new Rescue(course(room, harmS), 0, STRUCK_S + harmS).byS(STRUCK_S, turnsAfter(turnS, room));
            double later = by + Rescue.FINE_S + 1e-6;
            if (turnS > harmS) assertThat(by).isZero();
            else assertThat(room.applyAsDouble(by + turnS)).isNotNegative();
            assertThat(room.applyAsDouble(later + turnS)).as("%s s, turned after %s s, harm after %s s", later, turnS, harmS).isNegative();
        }
    }

    @Test void aGuessThatFitsNeedsFewTries() {
        DoubleUnaryOperator room = s -> 1 - s / 300;
        assertThat(new Rescue(course(room, 300), 0, STRUCK_S + 300).byS(STRUCK_S, turnsAfter(4, room))).isCloseTo(296, within(Rescue.FINE_S));
        assertThat(tries).isLessThanOrEqualTo(4);
    }

    @Test void aGuessThatMisleadsOnlyCostsTime() {
        DoubleUnaryOperator room = s -> 1 - s / 300;
        DoubleFunction<Tried> lies = tS -> new Tried(tS > STRUCK_S + 77, tS % 7 < 3 ? 0.9 : Double.POSITIVE_INFINITY);
        assertThat(new Rescue(course(room, 300), 0, STRUCK_S + 300).byS(STRUCK_S, lies)).isBetween(77 - Rescue.FINE_S, 77.0);
    }

    @Test void whatEvenAtOnceIsTooLateHasNoTime() {
        DoubleUnaryOperator room = s -> 1 - s / 300;
        assertThat(new Rescue(course(room, 300), 0, STRUCK_S + 300).byS(STRUCK_S, tS -> new Tried(true, -1))).isZero();
    }

    @Test void aCourseKnowsWhenItFallsForTheLastTime() {
        Course course = new Course(2);
        double[] first = {5, 3, 4, 2, 1};
        for (int i = 0; i < first.length; i++) course.add(10 * i, new double[] {first[i], -first[i]});
        assertThat(course.fallsToS(0, 3.5)).isCloseTo(22.5, within(1e-12));
        assertThat(course.fallsToS(0, 1)).isNaN();
        assertThat(course.fallsToS(0, 6)).isNaN();
        assertThat(course.fallsToS(1, -1)).isNaN();
    }
}
