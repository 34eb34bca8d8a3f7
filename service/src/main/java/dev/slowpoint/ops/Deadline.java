package dev.slowpoint.ops;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/**
 * Says when the time of some work is over. It begins when the work asks for the first time, so that a body that comes
 * slowly takes nothing off it, and counts by a clock that nobody sets.
 */
public final class Deadline implements BooleanSupplier {

    private static final long NONE = Long.MIN_VALUE;

    private final AtomicLong began = new AtomicLong(NONE);
    private final long longest;
    private final LongSupplier clock;

    /** One for work that may take so long. */
    public Deadline(Duration longest) {
        this(longest, System::nanoTime);
    }

    /** The same by another clock that only counts up [ns]. */
    Deadline(Duration longest, LongSupplier clock) {
        this.longest = longest.toNanos();
        this.clock = clock;
    }

    /** Whether the time is over. Several threads may ask. */
    @Override
    public boolean getAsBoolean() {
        long now = clock.getAsLong();
        long since = began.get();
        if (since == NONE) {
            began.compareAndSet(NONE, now);
            since = began.get();
        }
        return now - since >= longest;
    }
}
