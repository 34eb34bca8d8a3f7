package dev.slowpoint.food;

/**
 * How well heat crosses the surface of a packed food in named surroundings: film, bag and contact together.
 *
 * @param id plain name in kebab-case, unique in a parameter set
 * @param name readable name
 * @param low lower end [W/(m2 K)]
 * @param typical for the plan [W/(m2 K)]
 * @param high upper end [W/(m2 K)]
 * @param origin how it is known
 */
public record Film(String id, String name, double low, double typical, double high, Provenance origin) {

    /** Refuses coefficients that are not positive and in order. */
    public Film {
        if (!(low > 0.0 && low <= typical && typical <= high)) {
            throw new IllegalArgumentException("film coefficients " + low + ", " + typical + ", " + high + " of '" + id
                    + "' must be positive and rise from low to high");
        }
    }
}
