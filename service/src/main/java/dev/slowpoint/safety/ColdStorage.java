package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;

/**
 * How long a sealed bag may be kept in the cold after a cook that killed cells but no spores.
 *
 * @param exposure limits by hazard
 * @param longestS the most that is ever claimed [s]
 * @param provenance of the cap
 */
public record ColdStorage(ExposureLimits exposure, double longestS, Provenance provenance) {

    /** The longest time [s] at a temperature of the store [C]. */
    public double longestS(double storeC) {
        return Math.min(
                longestS,
                exposure.at(Hazard.C_BOTULINUM_NON_PROTEOLYTIC, storeC)
                        .map(ExposureLimit::longestS)
                        .orElse(longestS));
    }
}
