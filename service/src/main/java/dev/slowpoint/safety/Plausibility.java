package dev.slowpoint.safety;

/**
 * What a sensor may say and still be believed.
 *
 * @param longestGapS the longest time between two readings over which the temperature is taken as known [s]
 * @param lowestC the lowest reading that is believed [C]
 * @param highestC the highest reading that is believed [C]
 * @param fastestKPerS the fastest change that is believed [K/s]
 * @param stepK a step that is believed however short the time, for noise and coarse digits [K]
 * @param stuckS how long a reading may stay the same to its last digit right after it changed fast [s]; infinity where a
 *     controlled medium may stop at once
 * @param stuckAfterK what counts as fast: the change within the {@link #STUCK_LOOKBACK_S} before [K]
 */
public record Plausibility(
        double longestGapS,
        double lowestC,
        double highestC,
        double fastestKPerS,
        double stepK,
        double stuckS,
        double stuckAfterK) {

    /** How far back the change before a reading that stays the same is looked at [s]; our choice. */
    public static final double STUCK_LOOKBACK_S = 60.0;

    /** Refuses limits that nothing could keep. */
    public Plausibility {
        if (!(longestGapS > 0.0
                && lowestC < highestC
                && fastestKPerS > 0.0
                && stepK >= 0.0
                && stuckS > 0.0
                && stuckAfterK > 0.0)) {
            throw new IllegalArgumentException("no reading could be believed by longest gap " + longestGapS + " s, "
                    + lowestC + " to " + highestC + " C, " + fastestKPerS + " K/s, step " + stepK + " K, stuck after "
                    + stuckS + " s");
        }
    }

    /** The same with another longest gap [s]. */
    public Plausibility withLongestGapS(double seconds) {
        return new Plausibility(seconds, lowestC, highestC, fastestKPerS, stepK, stuckS, stuckAfterK);
    }

    /** The same for a medium that may stop at once, such as a bath at its setpoint. */
    public Plausibility neverStuck() {
        return new Plausibility(
                longestGapS, lowestC, highestC, fastestKPerS, stepK, Double.POSITIVE_INFINITY, stuckAfterK);
    }
}
