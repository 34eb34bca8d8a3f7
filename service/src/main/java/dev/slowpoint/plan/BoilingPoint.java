package dev.slowpoint.plan;

import dev.slowpoint.heat.Vapour;

/**
 * The temperature at which water boils at an altitude: the hottest an open bath can be.
 *
 * <p>Standard atmosphere up to 11 km, p = 101325 Pa (1 - 2.25577e-5 h)^5.25588 (ISO 2533; constants from memory), and
 * the vapour pressure of {@link Vapour}.
 */
final class BoilingPoint {

    private BoilingPoint() {}

    /** Boiling point [C] at an altitude [m] from 0 to 5000; 100 C within 0.1 K at sea level. */
    static double atC(double altitude) {
        double pressure = 101_325.0 * StrictMath.pow(1.0 - 2.25577e-5 * altitude, 5.25588);
        return Vapour.boilingC(pressure);
    }

    /**
     * How many times its volume a pocket of air takes up when it is warmed, moist, from 5 C to a temperature at the
     * pressure of sea level: the ideal gas law for the air, and vapour beside it.
     */
    static double pocketGrowth(double temperatureC) {
        double total = 101_325.0;
        double airBefore = total - Vapour.pressure(5.0);
        double airAfter = total - Vapour.pressure(temperatureC);
        return airBefore / airAfter * (temperatureC + 273.15) / 278.15;
    }
}
