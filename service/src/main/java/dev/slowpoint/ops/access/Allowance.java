package dev.slowpoint.ops.access;

/**
 * How much a client may ask of one replica.
 *
 * @param perSecond units of work that come back each second, from 0.01 to 10 000
 * @param burst units of work that may be spent at once after a rest, from {@link Work#MOST} to 100 000
 * @param atOnce requests that may be under way together, from 1 to 1 000
 */
record Allowance(double perSecond, int burst, int atOnce) {

    static final double LEAST_PER_SECOND = 0.01;
    static final double MOST_PER_SECOND = 10_000;
    static final int MOST_BURST = 100_000;
    static final int MOST_AT_ONCE = 1_000;

    Allowance {
        if (!(perSecond >= LEAST_PER_SECOND && perSecond <= MOST_PER_SECOND)) {
            throw new IllegalArgumentException("perSecond must lie between 0.01 and 10000");
        }
        if (burst < Work.MOST || burst > MOST_BURST) {
            throw new IllegalArgumentException(
                    "burst must lie between " + Work.MOST + ", which is what the dearest request takes, and 100000");
        }
        if (atOnce < 1 || atOnce > MOST_AT_ONCE) {
            throw new IllegalArgumentException("atOnce must lie between 1 and 1000");
        }
    }
}
