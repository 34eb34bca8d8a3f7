package dev.slowpoint.ops;

import java.util.concurrent.TimeUnit;

/** So many lines of the log a second and no more: whoever is flooded with requests must not be flooded with lines too. */
final class LineBudget {

    /** The line is not to be written. */
    static final int NONE = -1;

    private final int mostPerSecond;
    private long second = Long.MIN_VALUE;
    private int written;
    private int leftOut;

    LineBudget(int mostPerSecond) {
        this.mostPerSecond = mostPerSecond;
    }

    /**
     * Asks for a line.
     *
     * @param now in nanoseconds of a clock that only counts up
     * @return how many were left out since the last that was written, or {@link #NONE} if this one is left out too
     */
    synchronized int ask(long now) {
        long current = Math.floorDiv(now, TimeUnit.SECONDS.toNanos(1));
        if (current != second) {
            second = current;
            written = 0;
        }
        if (written >= mostPerSecond) {
            leftOut++;
            return NONE;
        }
        written++;
        int since = leftOut;
        leftOut = 0;
        return since;
    }
}
