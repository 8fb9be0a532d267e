package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RatesTest {
    private long nowNs;

    @Test
    void aBurstPassesAndThenAsManyAsFlowIn() {
        Rates rates = new Rates(60, 3, () -> nowNs);
        for (int i = 0; i < 3; i++) assertThat(rates.waitS("a")).isZero();
        assertThat(rates.waitS("a")).isEqualTo(1);
        assertThat(rates.waitS("b")).as("another address has a bucket of its own").isZero();
        nowNs += 1_000_000_000L;
        assertThat(rates.waitS("a")).isZero();
        assertThat(rates.waitS("a")).isPositive();
    }
}
