package dev.slowpoint.heat;

import java.util.function.DoubleUnaryOperator;

/**
 * The exact cooling of the middle of a body with ends: the product of the one-dimensional solutions across each of its
 * sizes (Newman 1936; Carslaw and Jaeger 1959, section 1.15). Fourier numbers refer to the shortest half size.
 */
final class ProductSolution {

    private final RadialSeries[] factors;
    private final double[] scales;

    /**
     * A product.
     *
     * @param factors one-dimensional solutions, each with the Biot number of its own size
     * @param halves their half sizes, the shortest first [m]
     */
    private ProductSolution(RadialSeries[] factors, double[] halves) {
        this.factors = factors;
        this.scales = new double[halves.length];
        for (int i = 0; i < halves.length; i++) {
            scales[i] = halves[0] * halves[0] / (halves[i] * halves[i]);
        }
    }

    /** A brick with half sizes in rising order, the Biot number with the shortest. */
    static ProductSolution brick(double[] halves, double biot) {
        RadialSeries[] factors = new RadialSeries[3];
        for (int i = 0; i < 3; i++) {
            factors[i] = new RadialSeries(0.0, biot * halves[i] / halves[0]);
        }
        return new ProductSolution(factors, halves);
    }

    /** A cylinder with ends, the Biot number with the shorter of radius and half length. */
    static ProductSolution cylinder(double radius, double halfLength, double biot) {
        double shortest = Math.min(radius, halfLength);
        RadialSeries round = new RadialSeries(1.0, biot * radius / shortest);
        RadialSeries ends = new RadialSeries(0.0, biot * halfLength / shortest);
        return radius <= halfLength
                ? new ProductSolution(new RadialSeries[] {round, ends}, new double[] {radius, halfLength})
                : new ProductSolution(new RadialSeries[] {ends, round}, new double[] {halfLength, radius});
    }

    /** What is left of the temperature step in the middle. */
    double atCentre(double fourier) {
        double product = 1.0;
        for (int i = 0; i < factors.length; i++) {
            product *= factors[i].atCentre(fourier * scales[i]);
        }
        return product;
    }

    /** Fourier number at which a share of the temperature step is left in the middle. */
    double fourierAt(double left) {
        double rate = 0.0;
        for (int i = 0; i < factors.length; i++) {
            rate += factors[i].slowestRate() * scales[i];
        }
        return crossing(this::atCentre, left, rate);
    }

    /** Where a falling function that ends as {@code exp(-rate x)} reaches a value: Newton's method on its logarithm. */
    static double crossing(DoubleUnaryOperator falling, double value, double rate) {
        double goal = StrictMath.log(value);
        double low = 0.0;
        double high = Double.POSITIVE_INFINITY;
        double x = -goal / rate;
        for (int i = 0; i < 80; i++) {
            double above = StrictMath.log(falling.applyAsDouble(x)) - goal;
            if (above > 0.0) {
                low = x;
            } else {
                high = x;
            }
            double next = x + above / rate;
            if (!(next > low && next < high)) {
                next = Double.isInfinite(high) ? 2.0 * x : 0.5 * (low + high);
            }
            if (Math.abs(next - x) < 1e-9 * x) {
                return next;
            }
            x = next;
        }
        return x;
    }
}
