package dev.slowpoint.ops;

import java.time.Duration;

/**
 * How long one client may keep a thread waiting, in one direction: some time whatever it sends or takes, and more for each
 * byte that it has moved. It bounds the sum of all waits, which the time-out of a single read or write does not: that one
 * begins anew with each byte.
 */
final class Patience {

    private final long graceNanos;
    private final long leastBytesPerSecond;
    private long waitedNanos;
    private long bytes;

    /**
     * Patience with one client.
     *
     * @param grace that every client has
     * @param leastBytesPerSecond at which a client is waited for as long as it has something to move
     */
    Patience(Duration grace, long leastBytesPerSecond) {
        this.graceNanos = grace.toNanos();
        this.leastBytesPerSecond = leastBytesPerSecond;
    }

    /**
     * Notes that a client was waited for.
     *
     * @param nanos by a clock that only counts up
     * @param moved bytes that came or went meanwhile
     * @return whether it has had all the time there is for what it moved
     */
    boolean exhausted(long nanos, int moved) {
        waitedNanos += nanos;
        bytes += Math.max(moved, 0);
        return waitedNanos - graceNanos > bytes * 1_000_000_000.0 / leastBytesPerSecond;
    }
}
