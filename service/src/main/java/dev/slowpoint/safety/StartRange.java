package dev.slowpoint.safety;

/**
 * How warm the slowest-heating point may have been when it went in. A slow history starts cold; growth is charged from
 * the warm side.
 *
 * @param statedC as stated [C]
 * @param warmestC with its tolerance [C]
 */
public record StartRange(double statedC, double warmestC) {

    /** Refuses a warmest start below the stated one. */
    public StartRange {
        if (!(warmestC >= statedC)) {
            throw new IllegalArgumentException("the warmest start " + warmestC + " C must not lie below the stated "
                    + statedC + " C. Maybe the tolerance has a sign?");
        }
    }

    /** A start that is known exactly [C]. */
    public static StartRange exactly(double startC) {
        return new StartRange(startC, startC);
    }
}
