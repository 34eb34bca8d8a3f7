package dev.slowpoint.food;

/**
 * Mass fractions of a food.
 *
 * @param water [kg/kg]
 * @param protein [kg/kg]
 * @param fat [kg/kg]
 * @param carbohydrate without fibre [kg/kg]
 * @param fibre [kg/kg]
 * @param ash [kg/kg]
 */
public record Composition(double water, double protein, double fat, double carbohydrate, double fibre, double ash) {

    /** Refuses a fraction outside 0 to 1, and a sum that is not 1 within rounding; see {@link #normalised}. */
    public Composition {
        double sum = 0.0;
        for (double x : new double[] {water, protein, fat, carbohydrate, fibre, ash}) {
            if (!(x >= 0.0 && x <= 1.0)) {
                throw new IllegalArgumentException(
                        "mass fraction " + x + " must lie between 0 and 1. Maybe it was given in percent?");
            }
            sum += x;
        }
        if (!(Math.abs(sum - 1.0) < 1e-9)) {
            throw new IllegalArgumentException("mass fractions add up to " + sum + ", not to 1");
        }
    }

    /** Fractions as analysed, which rarely add up to one, divided by their sum. */
    public static Composition normalised(
            double water, double protein, double fat, double carbohydrate, double fibre, double ash) {
        double sum = water + protein + fat + carbohydrate + fibre + ash;
        return new Composition(water / sum, protein / sum, fat / sum, carbohydrate / sum, fibre / sum, ash / sum);
    }
}
