package dev.slowpoint.heat;

/**
 * How finely the solver works.
 *
 * @param smoothIntervals intervals of the fourth-order mesh, for fields in which nothing freezes or thaws
 * @param frozenIntervals intervals of the second-order mesh, for fields with a thawing or freezing front
 * @param toleranceK error of temperature allowed per time step while nothing melts [K]
 * @param frontToleranceK the same while a thawing or freezing front crosses the body [K]
 */
public record Resolution(int smoothIntervals, int frozenIntervals, double toleranceK, double frontToleranceK) {

    /** What the service uses; the errors it leaves are measured by the accuracy tests. */
    public static final Resolution SERVICE = new Resolution(12, 24, 1e-2, 1e-1);

    /** Far finer than needed: the yardstick for convergence tests. */
    public static final Resolution YARDSTICK = new Resolution(60, 400, 2e-5, 5e-4);

    /** Refuses fewer than four intervals and a tolerance that is not above zero. */
    public Resolution {
        if (smoothIntervals < 4 || frozenIntervals < 4 || !(toleranceK > 0.0) || !(frontToleranceK > 0.0)) {
            throw new IllegalArgumentException("resolution of " + smoothIntervals + " and " + frozenIntervals
                    + " intervals, " + toleranceK + " and " + frontToleranceK + " K means nothing");
        }
    }
}
