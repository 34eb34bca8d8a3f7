package dev.slowpoint.heat;

/**
 * A rate that depends on temperature alone and is summed over a history: kill, growth, softening, anything of the kind.
 */
public interface RateLaw {

    /**
     * The rate at a temperature.
     *
     * @param temperatureC [C]
     * @return units of dose per second, zero or more, finite
     */
    double perSecond(double temperatureC);

    /**
     * Temperatures [C] in rising order at which the rate jumps or bends, such as a floor or a cap; the integrator splits
     * there. Empty for a smooth law.
     */
    double[] breaksC();
}
