package dev.slowpoint.safety;

import dev.slowpoint.heat.PointHistory;

/** Growth on the way up that a kill has to make good. */
@FunctionalInterface
public interface GrowthAllowance {

    /**
     * Predicted growth of a hazard from the start of a history to a time [s], in decimal orders, zero or more.
     */
    double log10(Hazard hazard, PointHistory core, double until);

    /** The same where the start is known only within a range; charged from its warm side where that matters. */
    default double log10(Hazard hazard, PointHistory core, double until, StartRange start) {
        return log10(hazard, core, until);
    }
}
