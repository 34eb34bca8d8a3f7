package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.Exp;
import java.util.List;

/**
 * How the real values of a cook are spread about the stated ones.
 *
 * <p>A tolerance is a bound of which nothing more is known: every value within is taken to be as likely as another. A film
 * coefficient has bounds and a usual value: triangular in its logarithm, because it enters as a ratio. The conductivity
 * factor is log-normal about the nominal one.
 *
 * @param conductivity standard deviation of the natural logarithm of measured over computed diffusivity [-]
 * @param conductivityOfPlants the same for plants [-]
 * @param origins where the spreads come from: tolerances, films, conductivity, conductivity of plants
 */
public record Spreads(double conductivity, double conductivityOfPlants, List<Provenance> origins) {

    /** Copies the list, and refuses spreads that are not above zero and below one. */
    public Spreads {
        if (!(conductivity > 0.0 && conductivity < 1.0 && conductivityOfPlants > 0.0 && conductivityOfPlants < 1.0)) {
            throw new IllegalArgumentException("spreads " + conductivity + " and " + conductivityOfPlants
                    + " of the conductivity must lie between zero and one");
        }
        origins = List.copyOf(origins);
        if (origins.size() != 4) {
            throw new IllegalArgumentException("spreads have four origins, not " + origins.size());
        }
    }

    /** What a sample rests on. */
    List<CookPlan.Source> sources(boolean plant) {
        return List.of(
                new CookPlan.Source("distribution of tolerances", origins.get(0)),
                new CookPlan.Source("distribution of film coefficients", origins.get(1)),
                new CookPlan.Source("spread of the conductivity", origins.get(plant ? 3 : 2)));
    }

    /** A value within a tolerance either way. */
    static double within(double tolerance, double share) {
        return tolerance * (2.0 * share - 1.0);
    }

    /** A film coefficient [W/m2K]. */
    static double film(Film film, double share) {
        double low = StrictMath.log(film.low());
        double mode = StrictMath.log(film.typical());
        double high = StrictMath.log(film.high());
        if (!(high > low)) {
            return film.typical();
        }
        double rising = (mode - low) / (high - low);
        double log = share < rising
                ? low + Math.sqrt(share * (high - low) * (mode - low))
                : high - Math.sqrt((1.0 - share) * (high - low) * (high - mode));
        return StrictMath.exp(log);
    }

    /** What the nominal conductivity is multiplied with [-]. */
    double conductivity(boolean plant, double share) {
        return Exp.exp((plant ? conductivityOfPlants : conductivity) * normal(share));
    }

    /** Standard normal quantile; Abramowitz and Stegun 26.2.23, error below 4.5e-4. */
    static double normal(double share) {
        double tail = Math.min(share, 1.0 - share);
        double t = Math.sqrt(-2.0 * StrictMath.log(tail));
        double x =
                t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
        return share < 0.5 ? -x : x;
    }
}
