package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;

/**
 * What a growth model is of.
 *
 * @param id as in the growth file
 * @param hazard what grows
 * @param matrix the food it was fitted in
 * @param lagH0 lag of spores after a cook [-], see {@link GrowthLaw#grownLog10}; zero where none is published
 * @param use what the model is good for
 * @param scope how far it may be trusted, and where it is told
 * @param provenance where it was read
 */
public record GrowthSubject(
        String id, Hazard hazard, String matrix, double lagH0, String use, GrowthScope scope, Provenance provenance) {}
