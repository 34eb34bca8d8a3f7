package dev.slowpoint.safety;

import dev.slowpoint.heat.PointHistory;

/** Growth on the way up that a kill has to make good. */
@FunctionalInterface
public interface GrowthAllowance {

    /**
     * Predicted growth of a hazard from the start of a history to a time [s], in decimal orders, zero or more.
     */
    double log10(Hazard hazard, PointHistory core, double until);
}
