package dev.slowpoint.safety;

import java.util.Optional;

/**
 * On what terms a history is judged.
 *
 * @param error taken off the temperature before anything is counted
 * @param floorAllowanceK how far below its floor a requirement starts to count [K]; zero in every judged margin
 * @param slowedByHeatAdaptation whether cells that were heated slowly are taken to be tougher
 * @param start how warm the core may have gone in; as the history says where empty
 */
public record Judging(
        ReadingError error, double floorAllowanceK, boolean slowedByHeatAdaptation, Optional<StartRange> start) {

    /** Refuses a floor allowance in a judged margin, and one beyond any reading error. */
    public Judging {
        if (!(floorAllowanceK >= 0.0 && floorAllowanceK <= 2.0)) {
            throw new IllegalArgumentException("floor allowance " + floorAllowanceK
                    + " K must lie between 0 and 2. Maybe half a kelvin was meant?");
        }
        if (floorAllowanceK > 0.0 && error.errorK() > 0.0) {
            throw new IllegalArgumentException("a floor allowance of " + floorAllowanceK
                    + " K is for nominal estimates only, and those take no reading error (" + error.errorK() + " K)");
        }
    }

    /** Terms for a history that starts as it says. */
    public Judging(ReadingError error, double floorAllowanceK, boolean slowedByHeatAdaptation) {
        this(error, floorAllowanceK, slowedByHeatAdaptation, Optional.empty());
    }

    /** The same for a core that may have gone in warmer than the history says. */
    public Judging startingIn(StartRange range) {
        return new Judging(error, floorAllowanceK, slowedByHeatAdaptation, Optional.of(range));
    }

    /** The worst case that a verdict rests on. */
    public static Judging worstCase(ReadingError error) {
        return new Judging(error, 0.0, false);
    }

    /**
     * A nominal estimate: no reading error, and the count starts below the floor, because a bath set exactly to the
     * lowest row of a table approaches it for ever. For information; no verdict rests on it.
     */
    public static Judging nominal(double floorAllowanceK) {
        return new Judging(ReadingError.NONE, floorAllowanceK, false);
    }
}
