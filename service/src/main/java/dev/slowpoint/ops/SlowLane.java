package dev.slowpoint.ops;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Room for requests that wait for their clients: threads that read a body which has not come yet, or write an answer that
 * no longer fits on its way. There is room for so many, and {@link Capacity} has as many threads more; so that however
 * many clients are slow, there are threads for all others.
 */
@Component
final class SlowLane {

    private final int size;
    private final Semaphore free;
    private final Duration grace;
    private final long leastBytesPerSecond;

    SlowLane(
            @Value("${slowpoint.limits.slow-clients.at-once}") int atOnce,
            @Value("${slowpoint.limits.slow-clients.grace}") Duration grace,
            @Value("${slowpoint.limits.slow-clients.least-bytes-per-second}") long leastBytesPerSecond) {
        this.size = atOnce;
        this.free = new Semaphore(atOnce);
        this.grace = grace;
        this.leastBytesPerSecond = leastBytesPerSecond;
    }

    /** Requests that may wait for their clients at once. */
    int size() {
        return size;
    }

    /** Takes a place, if there is one; each true must be followed by one {@link #leave}. */
    boolean enter() {
        return free.tryAcquire();
    }

    /** Gives a place back. */
    void leave() {
        free.release();
    }

    /** Patience with one client in one direction. */
    Patience patience() {
        return new Patience(grace, leastBytesPerSecond);
    }
}
