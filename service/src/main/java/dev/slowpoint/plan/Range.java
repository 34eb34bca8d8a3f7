package dev.slowpoint.plan;

/**
 * A number with its range over the stated tolerances, in the unit its bearer names.
 *
 * @param nominal everything as stated
 * @param low the least
 * @param high the most
 */
public record Range(double nominal, double low, double high) {

    /** The range of three corners, in whichever order they fall. */
    static Range of(double nominal, double early, double late) {
        return new Range(nominal, Math.min(nominal, Math.min(early, late)), Math.max(nominal, Math.max(early, late)));
    }
}
