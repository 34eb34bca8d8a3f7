package dev.slowpoint.heat;

/**
 * Coefficients of the fourth-order singly diagonally implicit Runge-Kutta method with five stages and an embedded
 * solution of third order; the last stage is the solution itself, so that stiff parts die out (L-stable).
 *
 * <p>Source: E. Hairer and G. Wanner, Solving Ordinary Differential Equations II, 2nd edition 1996, section IV.6, table
 * 6.5. From memory; the tests check the order conditions to the fourth and third order.
 */
final class Sdirk4 {

    static final int STAGES = 5;

    /** The one value on the diagonal. */
    static final double DIAGONAL = 0.25;

    /** Stage weights; the last row is the solution. */
    static final double[][] A = {
        {0.25, 0, 0, 0, 0},
        {0.5, 0.25, 0, 0, 0},
        {17.0 / 50.0, -1.0 / 25.0, 0.25, 0, 0},
        {371.0 / 1360.0, -137.0 / 2720.0, 15.0 / 544.0, 0.25, 0},
        {25.0 / 24.0, -49.0 / 48.0, 125.0 / 16.0, -85.0 / 12.0, 0.25}
    };

    /** The embedded third-order solution. */
    static final double[] EMBEDDED = {59.0 / 48.0, -17.0 / 96.0, 225.0 / 32.0, -85.0 / 12.0, 0};

    /** Solution minus embedded solution. */
    static final double[] ERROR = new double[STAGES];

    static {
        for (int i = 0; i < STAGES; i++) {
            ERROR[i] = A[STAGES - 1][i] - EMBEDDED[i];
        }
    }

    private Sdirk4() {}
}
