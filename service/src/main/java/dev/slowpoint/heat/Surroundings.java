package dev.slowpoint.heat;

/**
 * What the surface of a body exchanges heat with.
 *
 * @param temperatureC temperature of the medium [C], finite
 * @param filmCoefficient surface heat transfer coefficient [W/m2K], zero (insulated) or more; infinity holds the surface
 *     at the temperature of the medium
 */
public record Surroundings(double temperatureC, double filmCoefficient) {

    /** Refuses a temperature that is not finite and a negative coefficient. */
    public Surroundings {
        if (!Double.isFinite(temperatureC)) {
            throw new IllegalArgumentException("temperatureC = " + temperatureC + " must be finite");
        }
        if (!(filmCoefficient >= 0.0)) {
            throw new IllegalArgumentException(
                    "filmCoefficient = " + filmCoefficient + " W/m2K must be zero or more. Maybe the sign is wrong?");
        }
    }
}
