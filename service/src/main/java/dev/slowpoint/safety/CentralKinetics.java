package dev.slowpoint.safety;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Provenance;
import java.util.Set;

/**
 * Measured kill with its spread, as likely too fast as too slow. Tells how likely a target is missed; no verdict rests on
 * it.
 *
 * @param line the middle of what was measured
 * @param foods groups it may be read for
 * @param spreadLog10D standard deviation of the logarithm of D [-]
 * @param spreadOrigin where the spread comes from
 */
public record CentralKinetics(
        InactivationLine line, Set<FoodGroup> foods, double spreadLog10D, Provenance spreadOrigin) {

    /** Copies the set and refuses a spread that is none. */
    public CentralKinetics {
        foods = Set.copyOf(foods);
        if (!(spreadLog10D > 0.0 && spreadLog10D < 2.0)) {
            throw new IllegalArgumentException("central kinetics " + line.id() + ": spread of log10 D " + spreadLog10D
                    + " must be above zero and below 2");
        }
    }

    /** Whether it was measured on a hazard in such a food. */
    public boolean speaksOf(Hazard hazard, FoodGroup food) {
        return line.hazard() == hazard && foods.contains(food);
    }
}
