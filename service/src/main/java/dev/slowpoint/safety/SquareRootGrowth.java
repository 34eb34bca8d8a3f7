package dev.slowpoint.safety;

/**
 * Growth by the square-root form of Ratkowsky et al. 1982: {@code (b (T - Tmin))^2}. Fitted to warmth that growth likes:
 * above it the rate is held, and zero from the highest temperature of growth on.
 *
 * @param subject what grows
 * @param slope b, in the square root of the model's unit of rate per K
 * @param lowestC Tmin [C]
 * @param heldFromC [C] above it the rate is that at it
 * @param highestC [C] from it on no growth
 * @param log10PerSecond what one unit of the model's rate is in decimal orders per second
 */
public record SquareRootGrowth(
        GrowthSubject subject, double slope, double lowestC, double heldFromC, double highestC, double log10PerSecond)
        implements GrowthLaw {

    /** The same form as a gamma concept states it: by the rate at a reference temperature. */
    public static SquareRootGrowth fromReference(
            GrowthSubject subject,
            double rateAtReference,
            double referenceC,
            double lowestC,
            double heldFromC,
            double highestC,
            double log10PerSecond) {
        double slope = Math.sqrt(rateAtReference) / (referenceC - lowestC);
        return new SquareRootGrowth(subject, slope, lowestC, heldFromC, highestC, log10PerSecond);
    }

    @Override
    public double perSecond(double temperatureC) {
        if (temperatureC <= lowestC || temperatureC >= highestC) {
            return 0.0;
        }
        double root = slope * (Math.min(temperatureC, heldFromC) - lowestC);
        return log10PerSecond * root * root;
    }

    @Override
    public double[] breaksC() {
        return new double[] {lowestC, heldFromC, highestC};
    }
}
