package dev.slowpoint.plan;

import dev.slowpoint.food.Film;

/**
 * What holds for a water bath where a question says nothing.
 *
 * @param wallLoss heat lost through a wall per area and kelvin [W/m2K]
 * @param coveredShare share of the vapour that a cover lets through [-]
 * @param airConductivity of air trapped in a bag [W/mK]
 * @param faceInAir film of a face of a bag that is out of the water
 * @param roomC temperature of the room [C]
 */
public record VesselDefaults(
        double wallLoss, double coveredShare, double airConductivity, Film faceInAir, double roomC) {}
