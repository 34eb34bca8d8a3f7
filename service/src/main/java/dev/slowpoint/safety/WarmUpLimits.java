package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;

/**
 * How long food may take to warm up, and where bacteria grow.
 *
 * @param fromC lower end of the warm-up range [C]
 * @param toC upper end [C]
 * @param longestS longest time in the range [s]
 * @param warningS time in the range [s] from which to warn
 * @param growthFromC lower end of the growth range [C]
 * @param growthToC upper end of the growth range [C]
 * @param perfringensToC upper end of the growth range of C. perfringens [C]
 * @param provenance of the limit
 */
public record WarmUpLimits(
        double fromC,
        double toC,
        double longestS,
        double warningS,
        double growthFromC,
        double growthToC,
        double perfringensToC,
        Provenance provenance) {}
