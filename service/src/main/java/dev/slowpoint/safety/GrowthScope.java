package dev.slowpoint.safety;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.heat.PointHistory;
import java.util.Set;

/**
 * How far a growth model may be trusted, and where it is told.
 *
 * @param testedFromC coldest temperature it was fitted at [C]
 * @param testedToC warmest [C]
 * @param growsFromC coldest temperature at which the hazard is known to grow [C]
 * @param growsToC warmest [C]
 * @param told on which occasions its prediction is told
 * @param foods groups it is told for
 */
public record GrowthScope(
        double testedFromC,
        double testedToC,
        double growsFromC,
        double growsToC,
        Set<Occasion> told,
        Set<FoodGroup> foods) {

    /** What a piece is going through. */
    public enum Occasion {
        /** Warming up, raw. */
        WARM_UP,
        /** Cooling after a cook, or lukewarm by accident. */
        COOLING,
        /** In a cold store. */
        STORE
    }

    /** Copies the sets and refuses ranges that are turned round. */
    public GrowthScope {
        if (!(testedFromC < testedToC && growsFromC < growsToC)) {
            throw new IllegalArgumentException("tested from " + testedFromC + " to " + testedToC + " C, growing from "
                    + growsFromC + " to " + growsToC + " C: each range must rise");
        }
        told = Set.copyOf(told);
        foods = Set.copyOf(foods);
    }

    /** Whether the model is told for a food on an occasion. */
    public boolean toldOf(Occasion occasion, FoodGroup food) {
        return told.contains(occasion) && foods.contains(food);
    }

    /** Time [s] of a point, between two times, where the hazard is known to grow. */
    public double growingS(PointHistory point, double from, double until) {
        return between(point, growsFromC, growsToC, from, until);
    }

    /** Time [s] of that in temperatures at which the model was not tested. */
    public double untestedS(PointHistory point, double from, double until) {
        double cold = testedFromC > growsFromC ? between(point, growsFromC, testedFromC, from, until) : 0.0;
        double warm = growsToC > testedToC ? between(point, testedToC, growsToC, from, until) : 0.0;
        return cold + warm;
    }

    private static double between(PointHistory point, double lowC, double highC, double from, double until) {
        return Math.max(0.0, point.secondsBelow(highC, from, until) - point.secondsBelow(lowC, from, until));
    }
}
