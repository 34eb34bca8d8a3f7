package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.bucket4j.TimeMeter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** A client may ask as often as its allowance says, and as much at once. */
class AccountTest {

    private static final long S = 1_000_000_000L;

    /** A clock that is set by hand. */
    static final class Clock implements TimeMeter {
        long now;

        @Override
        public long currentTimeNanos() {
            return now;
        }

        @Override
        public boolean isWallClockBased() {
            return false;
        }
    }

    private final Clock clock = new Clock();
    private final List<Boolean> told = new ArrayList<>();

    private Account account(double perSecond, int burst, int atOnce) {
        return new Account(new Allowance(perSecond, burst, atOnce), clock, told::add);
    }

    private static int ask(Account account, int units) {
        int wait = account.take(units);
        if (wait == 0) {
            account.go();
        }
        return wait;
    }

    @Test
    void a_burst_is_let_through_and_then_the_rate_counts() {
        Account account = account(4, 20, 8);
        for (int i = 0; i < 20; i++) {
            assertThat(ask(account, 1)).isZero();
        }
        assertThat(ask(account, 1)).isEqualTo(1);
        clock.now += S / 4;
        assertThat(ask(account, 1)).isZero();
        assertThat(ask(account, 1)).isEqualTo(1);
        assertThat(told).hasSize(23).endsWith(true, false, true, false);
    }

    /** Over any time no more than burst and rate allow, whatever the pattern. */
    @Test
    void in_an_hour_no_more_is_let_through_than_burst_and_rate() {
        Account account = account(2, 50, 8);
        int through = 0;
        for (int i = 0; i < 36_000; i++) {
            through += ask(account, 1) == 0 ? 1 : 0;
            clock.now += S / 10;
        }
        assertThat(through).isBetween(7_200, 7_250);
    }

    @Test
    void dear_requests_take_more_and_wait_longer() {
        Account account = account(1, 20, 8);
        assertThat(ask(account, Work.of("/v1/lookup-tables"))).isZero();
        assertThat(ask(account, Work.of("/v1/lookup-tables"))).isEqualTo(20);
        assertThat(ask(account, Work.of("/v1/cook-plans"))).isEqualTo(1);
    }

    @Test
    void whoever_is_told_to_wait_and_does_is_let_through() {
        Account account = account(0.7, 20, 8);
        assertThat(ask(account, 20)).isZero();
        int wait = ask(account, 20);
        clock.now += wait * S;
        assertThat(ask(account, 20)).isZero();
    }

    @Test
    void a_wait_is_never_told_longer_than_a_minute() {
        Account account = account(0.01, 20, 1);
        assertThat(ask(account, 20)).isZero();
        assertThat(ask(account, 20)).isEqualTo(60);
    }

    @Test
    void no_more_than_allowed_are_under_way_at_once_and_those_sent_away_spend_nothing() {
        Account account = account(1, 20, 2);
        assertThat(account.take(1)).isZero();
        assertThat(account.take(1)).isZero();
        for (int i = 0; i < 100; i++) {
            assertThat(account.take(1)).isEqualTo(1);
        }
        account.go();
        assertThat(account.take(1)).isZero();
        account.go();
        account.go();
        assertThat(ask(account, 17)).isZero();
        assertThat(ask(account, 1)).isEqualTo(1);
    }

    @Test
    void many_threads_together_get_no_more_than_one() throws InterruptedException {
        Account account = new Account(new Allowance(0.01, 100, 1_000), clock, takenOn -> {});
        AtomicInteger through = new AtomicInteger();
        List<Thread> threads = new ArrayList<>();
        for (int t = 0; t < 8; t++) {
            Thread thread = new Thread(() -> {
                for (int i = 0; i < 200; i++) {
                    through.addAndGet(ask(account, 1) == 0 ? 1 : 0);
                }
            });
            threads.add(thread);
            thread.start();
        }
        for (Thread thread : threads) {
            thread.join();
        }
        assertThat(through).hasValue(100);
    }
}
