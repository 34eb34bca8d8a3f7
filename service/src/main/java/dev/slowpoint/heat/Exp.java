package dev.slowpoint.heat;

/**
 * The exponential function from plain arithmetic, so that every Java runtime gives the same bits: the intrinsics behind
 * {@link Math#exp} may differ in the last place, and {@link StrictMath#exp} is several times slower.
 *
 * <p>Range reduction to {@code |r| <= ln2/64} with a table of the 32nd roots of two, and the Taylor series to the sixth
 * power, whose remainder there is below 4e-18; the result is within 2 units in the last place of {@link StrictMath#exp}.
 */
public final class Exp {

    /** ln 10 [-]. */
    public static final double LN_10 = 2.302585092994045684;

    private static final int ROOTS = 32;

    private static final double[] ROOT = new double[ROOTS];

    private static final double ROOTS_PER_E = 1.4426950408889634074 * ROOTS;

    /** Head and tail of ln 2 over 32; the head has trailing zeros, so that its product with a small integer is exact. */
    private static final double STEP_HEAD = 6.93147180369123816490e-01 / ROOTS;

    private static final double STEP_TAIL = 1.90821492927058770002e-10 / ROOTS;

    static {
        for (int i = 0; i < ROOTS; i++) {
            ROOT[i] = StrictMath.pow(2.0, (double) i / ROOTS);
        }
    }

    private Exp() {}

    /** e to the power {@code x}; zero below -708, and for {@code x} above 709 infinity. */
    public static double exp(double x) {
        if (!(x >= -708.0)) {
            return Double.isNaN(x) ? x : 0.0;
        }
        if (x > 709.0) {
            return Double.POSITIVE_INFINITY;
        }
        double scaled = x * ROOTS_PER_E;
        int n = (int) (scaled + (scaled >= 0.0 ? 0.5 : -0.5));
        double r = (x - n * STEP_HEAD) - n * STEP_TAIL;
        double square = r * r;
        double odd = 1.0 / 6.0 + r * (1.0 / 24.0);
        double high = 1.0 / 120.0 + r * (1.0 / 720.0);
        double p = r + square * (0.5 + r * odd + square * (r * high));
        double root = ROOT[n & (ROOTS - 1)];
        return (root + root * p) * Double.longBitsToDouble(((n >> 5) + 1023L) << 52);
    }

    /** 10 to the power {@code x}. */
    public static double pow10(double x) {
        return exp(x * LN_10);
    }
}
