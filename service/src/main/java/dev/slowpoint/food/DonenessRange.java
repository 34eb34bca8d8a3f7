package dev.slowpoint.food;

/**
 * Core temperatures at which a food is usually eaten. A matter of taste, never of safety.
 *
 * @param lowC lower end [C]
 * @param highC upper end [C]
 * @param origin how it is known
 */
public record DonenessRange(double lowC, double highC, Provenance origin) {

    /** Below it nothing is cooked [C]. */
    public static final double LOWEST_C = 30.0;

    /** Above it water boils [C]. */
    public static final double HIGHEST_C = 100.0;

    /** Refuses a range that is turned round or out of reach of a water bath. */
    public DonenessRange {
        if (!(lowC >= LOWEST_C && lowC <= highC && highC <= HIGHEST_C)) {
            throw new IllegalArgumentException(
                    "core temperatures " + lowC + " to " + highC + " C must rise and lie between " + LOWEST_C + " and "
                            + HIGHEST_C + " C. Maybe they were given in Fahrenheit?");
        }
    }
}
