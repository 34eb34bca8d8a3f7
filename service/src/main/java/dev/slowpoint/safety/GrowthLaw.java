package dev.slowpoint.safety;

import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.RateLaw;

/** A published growth-rate model, in decimal orders per second. */
public sealed interface GrowthLaw extends RateLaw permits Rat2Growth, SquareRootGrowth, CardinalGrowth {

    /** What grows, and where the model comes from. */
    GrowthSubject subject();

    /**
     * Growth from the start of a history to a time, in decimal orders, zero or more.
     *
     * @param until [s]
     * @param lagH0 work to be done before growth starts, as the integral of the specific rate [-]: {@code ln(1 + 1/q0)}
     *     for spores that a cook has stirred, zero for cells that are there already
     */
    default double grownLog10(PointHistory core, double until, double lagH0) {
        return Math.max(0.0, Dose.of(this, core).at(until) - lagH0 / Exp.LN_10);
    }

    /**
     * Growth between two times of a history, in decimal orders, zero or more.
     *
     * @param from [s]
     * @param until [s]
     * @param lagH0 as above, counted from {@code from}
     */
    default double grownLog10(PointHistory core, double from, double until, double lagH0) {
        Dose dose = Dose.of(this, core);
        return Math.max(0.0, dose.at(until) - dose.at(from) - lagH0 / Exp.LN_10);
    }
}
