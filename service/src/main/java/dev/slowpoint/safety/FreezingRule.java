package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;

/**
 * How cold and how long fish must be frozen to kill parasites. The temperature is that of the product, not of the
 * freezer's setting (Podolska 2019 found live larvae after a day at a setting of -20 C).
 *
 * @param id as in the limits file
 * @param hazard what is killed
 * @param temperatureC [C] at or below
 * @param shortestS [s]
 * @param provenance where it was read
 * @param note conditions
 */
public record FreezingRule(
        String id, Hazard hazard, double temperatureC, double shortestS, Provenance provenance, String note) {

    /** Whether a time at a product temperature meets it. */
    public boolean met(double productC, double seconds) {
        return productC <= temperatureC && seconds >= shortestS;
    }
}
