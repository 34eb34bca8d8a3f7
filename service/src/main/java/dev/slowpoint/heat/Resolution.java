package dev.slowpoint.heat;

/**
 * How finely the solver works.
 *
 * @param smoothIntervals intervals from the slowest-heating point to a face on the fourth-order mesh, for fields in which
 *     nothing freezes or thaws; even numbers
 * @param frozenIntervals the same on the second-order mesh, for fields with a thawing or freezing front
 * @param searIntervals the same on both, where a hot pan, flame or oil strikes a face
 * @param tolerance error of temperature allowed per time step while nothing melts [K]
 * @param frontTolerance the same while a thawing or freezing front crosses the body [K]
 */
public record Resolution(
        int smoothIntervals, int frozenIntervals, int searIntervals, double tolerance, double frontTolerance) {

    /** What the service uses; the errors it leaves are measured by the accuracy tests. */
    public static final Resolution SERVICE = new Resolution(12, 18, 32, 1e-3, 1e-2);

    /** Far finer than needed: the yardstick for convergence tests. */
    public static final Resolution YARDSTICK = new Resolution(60, 400, 200, 1e-6, 1e-5);

    /** Refuses fewer than four intervals and a tolerance that is not above zero. */
    public Resolution {
        if (smoothIntervals < 4
                || frozenIntervals < 4
                || searIntervals < 4
                || !(tolerance > 0.0)
                || !(frontTolerance > 0.0)) {
            throw new IllegalArgumentException("resolution of " + smoothIntervals + ", " + frozenIntervals + " and "
                    + searIntervals + " intervals, " + tolerance + " and " + frontTolerance + " K means nothing");
        }
    }
}
