package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.PointHistory;

/**
 * Cells that are heated slowly become tougher: D doubled in bags of pork (DMRI 2014) and in a meat emulsion heated at
 * half a kelvin a minute (Quintavalla and Campanini 1991). No upper bound: Stephens et al. 1994 saw a shortfall of 5.2
 * log.
 *
 * @param fromC lower end of the range that counts as slow heating [C]
 * @param toC upper end [C]
 * @param longestS time in the range [s] that is still without effect; our choice
 * @param factorOnD what D is multiplied by
 * @param provenance of factor and range
 */
public record HeatAdaptation(double fromC, double toC, double longestS, double factorOnD, Provenance provenance) {

    /** Time [s] up to a time in which cells can adapt. */
    double secondsIn(PointHistory core, double until) {
        return core.secondsBetween(fromC, toC, until);
    }
}
