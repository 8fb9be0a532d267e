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

    @Test
    void whatWasTakenInErrorComesBack() {
        Rates rates = new Rates(60, 1, () -> nowNs);
        assertThat(rates.waitS("a")).isZero();
        rates.giveBack("a");
        assertThat(rates.waitS("a")).isZero();
        assertThat(rates.waitS("a")).isPositive();
    }

    /** Whoever has one address of IPv6 has 2^64 of them. */
    @Test
    void aWholeNetworkOfIpv6HasOneBucket() {
        Rates rates = new Rates(60, 1, () -> nowNs);
        assertThat(rates.waitS("2001:db8:0:7:1:2:3:4")).isZero();
        assertThat(rates.waitS("2001:0DB8::7:ffff:2:3:4")).isPositive();
        assertThat(rates.waitS("2001:db8:0:8::1")).isZero();
        assertThat(Rates.network("[::1]")).isEqualTo(Rates.network("0:0:0:0:0:0:0:1"));
        assertThat(Rates.network("fe80::1%eth0")).isEqualTo(Rates.network("fe80::2"));
        assertThat(Rates.network("192.0.2.7")).isEqualTo("192.0.2.7");
    }
}
