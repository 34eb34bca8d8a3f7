package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.PointHistory;
import java.util.Map;

/**
 * Growth of cells on the way up, without lag.
 *
 * <p>FSIS-GD-2021-14 pp. 70-71: predicted growth up to one log is acceptable, above that it is added to the required
 * reduction. So it is nothing when the food starts cold and at most that much is predicted, which is what a short warm-up
 * means here; food that starts warmer pays for all of it.
 *
 * @param laws the rate for each hazard that can grow on the way up
 * @param coldStartC [C] a start at or below it is cold
 * @param acceptedLog10 growth that a cold start is allowed
 * @param provenance of the allowance
 */
public record WarmUpGrowth(Map<Hazard, GrowthLaw> laws, double coldStartC, double acceptedLog10, Provenance provenance)
        implements GrowthAllowance {

    /** Copies the map. */
    public WarmUpGrowth {
        laws = Map.copyOf(laws);
    }

    @Override
    public double log10(Hazard hazard, PointHistory core, double until) {
        GrowthLaw law = laws.get(hazard);
        if (law == null) {
            return 0.0;
        }
        double grown = law.grownLog10(core, until, 0.0);
        return core.temperatureC(0) <= coldStartC && grown <= acceptedLog10 ? 0.0 : grown;
    }
}
