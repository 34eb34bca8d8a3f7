package dev.slowpoint.heat;

/**
 * The exponential function from plain arithmetic, so that every Java runtime gives the same bits: the intrinsics behind
 * {@link Math#exp} may differ in the last place, and {@link StrictMath#exp} is several times slower.
 *
 * <p>Range reduction to {@code |r| <= ln2/2} and the Taylor series to the thirteenth power, whose remainder there is
 * below 5e-18; the result is within 2 units in the last place of {@link StrictMath#exp}.
 */
public final class Exp {

    /** ln 10 [-]. */
    public static final double LN_10 = 2.302585092994045684;

    private static final double LOG2_E = 1.4426950408889634074;
    /** Head and tail of ln 2; the head has trailing zeros, so that its product with a small integer is exact. */
    private static final double LN2_HEAD = 6.93147180369123816490e-01;

    private static final double LN2_TAIL = 1.90821492927058770002e-10;

    private Exp() {}

    /** e to the power {@code x}; zero below -708, and for {@code x} above 709 infinity. */
    public static double exp(double x) {
        if (!(x >= -708.0)) {
            return Double.isNaN(x) ? x : 0.0;
        }
        if (x > 709.0) {
            return Double.POSITIVE_INFINITY;
        }
        double scaled = x * LOG2_E;
        long n = (long) (scaled + (scaled >= 0.0 ? 0.5 : -0.5));
        double r = (x - n * LN2_HEAD) - n * LN2_TAIL;
        double p = 1.0 / 6227020800.0;
        p = p * r + 1.0 / 479001600.0;
        p = p * r + 1.0 / 39916800.0;
        p = p * r + 1.0 / 3628800.0;
        p = p * r + 1.0 / 362880.0;
        p = p * r + 1.0 / 40320.0;
        p = p * r + 1.0 / 5040.0;
        p = p * r + 1.0 / 720.0;
        p = p * r + 1.0 / 120.0;
        p = p * r + 1.0 / 24.0;
        p = p * r + 1.0 / 6.0;
        p = p * r + 0.5;
        p = 1.0 + (r + r * r * p);
        return p * Double.longBitsToDouble((n + 1023L) << 52);
    }

    /** 10 to the power {@code x}. */
    public static double pow10(double x) {
        return exp(x * LN_10);
    }
}
