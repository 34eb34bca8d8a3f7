package dev.slowpoint.safety;

/**
 * Growth by the cardinal temperature model with inflection of Rosso, Lobry and Flandrois 1993, zero outside Tmin to Tmax.
 *
 * @param subject what grows
 * @param bestRate rate at the optimum, in the model's unit
 * @param lowestC Tmin [C]
 * @param bestC Topt [C]
 * @param highestC Tmax [C]
 * @param log10PerSecond what one unit of the model's rate is in decimal orders per second
 */
public record CardinalGrowth(
        GrowthSubject subject, double bestRate, double lowestC, double bestC, double highestC, double log10PerSecond)
        implements GrowthLaw {

    @Override
    public double perSecond(double temperatureC) {
        double t = temperatureC;
        if (t <= lowestC || t >= highestC) {
            return 0.0;
        }
        double above = bestC - lowestC;
        double below = above * (above * (t - bestC) - (bestC - highestC) * (bestC + lowestC - 2.0 * t));
        return log10PerSecond * bestRate * (t - highestC) * (t - lowestC) * (t - lowestC) / below;
    }

    @Override
    public double[] breaksC() {
        return new double[] {lowestC, highestC};
    }
}
