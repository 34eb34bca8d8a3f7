package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;

/**
 * How long food may take to warm up, and where bacteria grow.
 *
 * @param id as in the limits file
 * @param fromC lower end of the warm-up range [C]; {@link #ABSOLUTE_ZERO_C} where the rule names none
 * @param toC upper end [C]
 * @param longestS longest time in the range [s]
 * @param warningS time in the range [s] from which to warn
 * @param growthFromC lower end of the growth range [C]
 * @param growthToC upper end of the growth range [C]
 * @param perfringensToC upper end of the growth range of C. perfringens [C]
 * @param provenance of the limit
 */
public record WarmUpLimits(
        String id,
        double fromC,
        double toC,
        double longestS,
        double warningS,
        double growthFromC,
        double growthToC,
        double perfringensToC,
        Provenance provenance) {

    /** Stands for no lower end [C]. */
    public static final double ABSOLUTE_ZERO_C = -273.15;

    /** Refuses a limit that was only recalled: it would let a plan pass. */
    public WarmUpLimits {
        provenance.refuseIfRecalled("limit " + id);
    }
}
