package dev.slowpoint.safety;

import dev.slowpoint.heat.Exp;

/**
 * Growth by the second square-root form of Ratkowsky et al. 1983, as coded with the square already taken:
 * {@code a (T - Tmin)^2 (1 - exp(c (T - Tmax)))}, zero outside Tmin to Tmax.
 *
 * @param subject what grows
 * @param a slope, in the model's unit of rate per K2
 * @param c [1/K]
 * @param lowestC Tmin [C]
 * @param highestC Tmax [C]
 * @param log10PerSecond what one unit of the model's rate is in decimal orders per second
 */
public record Rat2Growth(
        GrowthSubject subject, double a, double c, double lowestC, double highestC, double log10PerSecond)
        implements GrowthLaw {

    @Override
    public double perSecond(double temperatureC) {
        if (temperatureC <= lowestC || temperatureC >= highestC) {
            return 0.0;
        }
        double above = temperatureC - lowestC;
        return log10PerSecond * a * above * above * (1.0 - Exp.exp(c * (temperatureC - highestC)));
    }

    @Override
    public double[] breaksC() {
        return new double[] {lowestC, highestC};
    }
}
