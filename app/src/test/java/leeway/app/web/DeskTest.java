package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import leeway.app.web.Desk.Asker;
import leeway.app.web.Desk.Question;
import leeway.core.run.Stopped;
import org.junit.jupiter.api.Test;

class DeskTest {
    private static final Duration LONG = Duration.ofSeconds(30);

    private static Asker of(String user) { return new Asker(user, ""); }

    private static Question q(String key) { return new Question("plan", key); }

    private static Integer untilUnwanted(Hands hands) {
        while (!hands.unwanted().getAsBoolean()) Thread.onSpinWait();
        throw new Stopped(0);
    }

    private static <T> CompletableFuture<T> ask(Desk desk, Asker who, Question what, Function<Hands, T> work) { return CompletableFuture.supplyAsync(() -> desk.answer(who, what, work), r -> new Thread(r).start()); }

    @Test
    void whatTakesTooLongIsStoppedAndItsWorkerIsFree() {
        try (Desk desk = new Desk(1, 4, Duration.ofMillis(80))) {
            assertThatThrownBy(() -> desk.answer(of("a"), q("endless"), DeskTest::untilUnwanted)).isInstanceOf(Desk.TooLong.class);
            assertThat((Integer) desk.answer(of("a"), q("quick"), hands -> 7)).isEqualTo(7);
        }
    }

    @Test
    void severalQuestionsOfOneRequestHaveOneLimit() {
        try (Desk desk = new Desk(1, 4, Duration.ofSeconds(30))) {
            assertThatThrownBy(() -> desk.answer(of("a"), q("last of three"), Duration.ofMillis(40), DeskTest::untilUnwanted)).isInstanceOf(Desk.TooLong.class).hasMessageContaining("30 s");
            assertThatThrownBy(() -> desk.answer(of("a"), q("nothing left"), Duration.ofSeconds(-1), DeskTest::untilUnwanted)).isInstanceOf(Desk.TooLong.class);
            assertThat((Integer) desk.answer(of("a"), q("quick"), hands -> 7)).isEqualTo(7);
            assertThat((Integer) desk.answer(of("a"), q("quick"), Duration.ofSeconds(-1), hands -> 8)).as("what is kept needs no time").isEqualTo(7);
        }
    }

    @Test
    void itRestsOnlyWhileNobodyAsks() {
        try (Desk desk = new Desk(1, 4, LONG)) {
            assertThat((Boolean) desk.answer(of("a"), q("first"), hands -> desk.resting())).isFalse();
        }
    }

    @Test
    void theSameQuestionIsWorkedOutOnce() throws Exception {
        try (Desk desk = new Desk(2, 8, LONG)) {
            AtomicInteger times = new AtomicInteger();
            CountDownLatch go = new CountDownLatch(1);
            Function<Hands, Integer> work = hands -> {
                try {
                    go.await();
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return times.incrementAndGet();
            };
            List<CompletableFuture<Integer>> all = new ArrayList<>();
            for (int i = 0; i < 5; i++) all.add(ask(desk, of("user " + i), q("same"), work));
            while (!desk.awaited(q("same"), 5)) Thread.onSpinWait();
            go.countDown();
            for (CompletableFuture<Integer> one : all) assertThat(one.get(10, TimeUnit.SECONDS)).isEqualTo(1);
            assertThat((Integer) desk.answer(of("later"), q("same"), work)).isEqualTo(1);
        }
    }

    @Test
    void aPageThatAsksAnewNoLongerWaitsForWhatItAskedBefore() {
        try (Desk desk = new Desk(1, 8, LONG)) {
            CountDownLatch begun = new CountDownLatch(1);
            CompletableFuture<Integer> old = ask(desk, new Asker("a", "page"), q("old"), hands -> {
                begun.countDown();
                return untilUnwanted(hands);
            });
            assertThatThrownBy(() -> {
                begun.await();
                desk.replace("page", "new");
                old.get(10, TimeUnit.SECONDS);
            }).hasCauseInstanceOf(Desk.Replaced.class);
            assertThat((Integer) desk.answer(new Asker("a", "page"), q("new"), hands -> 2)).isEqualTo(2);
        }
    }

    @Test
    void whatAnotherStillWaitsForGoesOn() throws Exception {
        try (Desk desk = new Desk(1, 8, LONG)) {
            CountDownLatch begun = new CountDownLatch(1);
            CountDownLatch go = new CountDownLatch(1);
            Function<Hands, Boolean> work = hands -> {
                begun.countDown();
                try {
                    go.await();
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return hands.unwanted().getAsBoolean();
            };
            CompletableFuture<Boolean> one = ask(desk, new Asker("a", "page"), q("shared"), work);
            begun.await();
            CountDownLatch asked = new CountDownLatch(1);
            CompletableFuture<Boolean> other = CompletableFuture.supplyAsync(() -> {
                asked.countDown();
                return desk.answer(of("b"), q("shared"), work);
            }, r -> new Thread(r).start());
            asked.await();
            while (!desk.awaited(q("shared"), 2)) Thread.onSpinWait();
            desk.replace("page", "new");
            go.countDown();
            assertThat(other.get(10, TimeUnit.SECONDS)).isFalse();
            assertThat(one).failsWithin(Duration.ofSeconds(10));
        }
    }

    @Test
    void usersAreServedInTurn() throws Exception {
        try (Desk desk = new Desk(1, 16, LONG)) {
            CountDownLatch go = new CountDownLatch(1);
            CountDownLatch begun = new CountDownLatch(1);
            List<String> order = Collections.synchronizedList(new ArrayList<>());
            List<CompletableFuture<?>> all = new ArrayList<>();
            all.add(ask(desk, of("first"), q("first"), hands -> {
                begun.countDown();
                try {
                    go.await();
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return 0;
            }));
            begun.await();
            for (String who : List.of("greedy 1", "greedy 2", "greedy 3", "modest 1")) {
                all.add(ask(desk, of(who.substring(0, 6)), q(who), hands -> order.add(who)));
                while (!desk.awaited(q(who), 1)) Thread.onSpinWait();
            }
            go.countDown();
            for (CompletableFuture<?> one : all) one.get(10, TimeUnit.SECONDS);
            assertThat(order).containsExactly("greedy 1", "modest 1", "greedy 2", "greedy 3");
        }
    }

    @Test
    void moreThanTheQueueHoldsIsRefused() throws Exception {
        try (Desk desk = new Desk(1, 1, LONG)) {
            CountDownLatch begun = new CountDownLatch(1);
            ask(desk, of("a"), q("one"), hands -> {
                begun.countDown();
                return untilUnwanted(hands);
            });
            begun.await();
            ask(desk, of("b"), q("two"), hands -> 2);
            while (!desk.awaited(q("two"), 1)) Thread.onSpinWait();
            assertThatThrownBy(() -> desk.answer(of("c"), q("three"), hands -> 3)).isInstanceOf(Desk.TooMany.class);
        }
    }

    /** Programs that ask much, and for long, must not keep a person waiting before a page. */
    @Test
    void programsNeverHoldTheLastProcessor() throws Exception {
        try (Desk desk = new Desk(2, 64, LONG)) {
            CountDownLatch begun = new CountDownLatch(1);
            for (int i = 0; i < 8; i++) {
                Question long0 = q("long " + i);
                ask(desk, new Asker("program", "", true), long0, hands -> {
                    begun.countDown();
                    return untilUnwanted(hands);
                });
                while (!desk.awaited(long0, 1)) Thread.onSpinWait();
            }
            begun.await();
            assertThat((Integer) desk.answer(of("nurse"), q("page"), hands -> hands.needed().getAsBoolean() ? -1 : 7)).isEqualTo(7);
        }
    }

    @Test
    void whatNobodyWaitsForLeavesTheQueueAndNobodyFillsMoreThanHalfOfIt() throws Exception {
        try (Desk desk = new Desk(1, 4, LONG)) {
            CountDownLatch begun = new CountDownLatch(1);
            ask(desk, of("a"), q("long"), hands -> {
                begun.countDown();
                return untilUnwanted(hands);
            });
            begun.await();
            for (int i = 0; i < 20; i++) {
                int n = i;
                assertThatThrownBy(() -> desk.answer(of("a"), q("given up " + n), Duration.ZERO, hands -> 1)).isInstanceOf(Desk.TooLong.class);
            }
            for (int i = 0; i < 2; i++) {
                Question waits = q("waits " + i);
                ask(desk, of("a"), waits, hands -> 1);
                while (!desk.awaited(waits, 1)) Thread.onSpinWait();
            }
            assertThatThrownBy(() -> desk.answer(of("a"), q("a third"), hands -> 1)).isInstanceOf(Desk.TooMany.class);
            assertThatThrownBy(() -> desk.answer(of("b"), q("of another"), Duration.ZERO, hands -> 1)).as("waits").isInstanceOf(Desk.TooLong.class);
        }
    }

    @Test
    void whoeverWaitsIsToldThatItCloses() throws Exception {
        Desk desk = new Desk(1, 4, LONG);
        CountDownLatch begun = new CountDownLatch(1);
        CompletableFuture<Integer> under = ask(desk, of("a"), q(""), hands -> {
            begun.countDown();
            return untilUnwanted(hands);
        });
        begun.await();
        CompletableFuture<Integer> queued = ask(desk, of("b"), q("queued"), hands -> 1);
        while (!desk.awaited(q("queued"), 1)) Thread.onSpinWait();
        desk.close();
        for (CompletableFuture<Integer> one : java.util.List.of(under, queued)) assertThatThrownBy(() -> one.get(10, TimeUnit.SECONDS)).hasCauseInstanceOf(Desk.Closing.class);
        assertThatThrownBy(() -> desk.answer(of("c"), q("late"), hands -> 1)).isInstanceOf(Desk.Closing.class);
    }
}
