package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.RateLaw;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.DoubleStream;

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
        return log10(hazard, core, until, StartRange.exactly(core.temperatureC(0)));
    }

    /** Grows at no colder than the warmest start: a slow history starts cold, and a cold start must not be a merit. */
    @Override
    public double log10(Hazard hazard, PointHistory core, double until, StartRange start) {
        GrowthLaw law = laws.get(hazard);
        if (law == null) {
            return 0.0;
        }
        boolean warmer = start.warmestC() > core.temperatureC(0);
        double grown = Dose.of(warmer ? new NoColder(law, start.warmestC()) : law, core)
                .at(until);
        return start.statedC() <= coldStartC && grown <= acceptedLog10 ? 0.0 : grown;
    }

    private record NoColder(RateLaw law, double thanC) implements RateLaw {

        @Override
        public double perSecond(double temperatureC) {
            return law.perSecond(Math.max(temperatureC, thanC));
        }

        @Override
        public double[] breaksC() {
            return DoubleStream.concat(
                            DoubleStream.of(thanC), Arrays.stream(law.breaksC()).filter(b -> b > thanC))
                    .toArray();
        }
    }
}
