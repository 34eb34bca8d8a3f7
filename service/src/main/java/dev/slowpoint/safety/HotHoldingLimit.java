package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;

/**
 * The lowest temperature at which cooked food may wait hot.
 *
 * @param id as in the limits file
 * @param lowestC [C]
 * @param provenance where it was read
 * @param note conditions
 */
public record HotHoldingLimit(String id, double lowestC, Provenance provenance, String note) {}
