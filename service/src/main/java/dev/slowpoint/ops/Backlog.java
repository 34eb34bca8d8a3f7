package dev.slowpoint.ops;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Tells a backlog that lasts from a burst that is over in a moment. When many idle connections are closed at once, each
 * takes a thread for some microseconds: they stand in the queue, and are no load.
 */
final class Backlog {

    private static final long NONE = Long.MIN_VALUE;

    private final int mostWaiting;
    private final long longest;
    private final AtomicLong since = new AtomicLong(NONE);

    /**
     * A backlog.
     *
     * @param mostWaiting requests that may wait at any time
     * @param longest how long more than that may wait
     */
    Backlog(int mostWaiting, Duration longest) {
        this.mostWaiting = mostWaiting;
        this.longest = longest.toNanos();
    }

    /**
     * Whether more than the allowed number have been waiting at every look for longer than allowed.
     *
     * @param waiting how many wait now
     * @param now time of the look, in nanoseconds of a clock that only counts up
     */
    boolean lasts(int waiting, long now) {
        if (waiting <= mostWaiting) {
            since.set(NONE);
            return false;
        }
        since.compareAndSet(NONE, now);
        long began = since.get();
        return began != NONE && now - began >= longest;
    }
}
