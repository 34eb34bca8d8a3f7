package dev.slowpoint.ops.access;

import io.github.bucket4j.Bandwidth;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import io.github.bucket4j.TimeMeter;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;

/** What one client has asked of this replica of late. */
final class Account {

    /** Lets shares of a unit come back each second. */
    private static final long SECONDS = 1_000;

    private static final long LONGEST_WAIT_S = 60;
    private static final long NANOS = 1_000_000_000L;

    /** Told of each request whether it was taken on. */
    @FunctionalInterface
    interface Tally {
        void count(boolean takenOn);
    }

    private final Allowance allowance;
    private final Tally tally;
    private final Bucket bucket;
    private final AtomicInteger underWay = new AtomicInteger();

    Account(Allowance allowance, TimeMeter time, Tally tally) {
        this.allowance = allowance;
        this.tally = tally;
        this.bucket = Bucket.builder()
                .withCustomTimePrecision(time)
                .addLimit(Bandwidth.builder()
                        .capacity(allowance.burst())
                        .refillGreedy(Math.round(allowance.perSecond() * SECONDS), Duration.ofSeconds(SECONDS))
                        .build())
                .build();
    }

    Allowance allowance() {
        return allowance;
    }

    /**
     * Takes a request on, if there is room for it. Whoever is taken on must be let {@link #go()}.
     *
     * @param units it takes
     * @return zero if it is taken on; otherwise the whole seconds to wait, 1 to 60
     */
    int take(int units) {
        int wait = wait(units);
        tally.count(wait == 0);
        return wait;
    }

    private int wait(int units) {
        if (underWay.incrementAndGet() > allowance.atOnce()) {
            underWay.decrementAndGet();
            return 1;
        }
        ConsumptionProbe probe = bucket.tryConsumeAndReturnRemaining(units);
        if (probe.isConsumed()) {
            return 0;
        }
        underWay.decrementAndGet();
        long seconds = (probe.getNanosToWaitForRefill() + NANOS - 1) / NANOS;
        return (int) Math.min(Math.max(seconds, 1), LONGEST_WAIT_S);
    }

    /** Ends a request that was taken on. */
    void go() {
        underWay.decrementAndGet();
    }
}
