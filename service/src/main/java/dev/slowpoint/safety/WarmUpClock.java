package dev.slowpoint.safety;

import dev.slowpoint.heat.PointHistory;

/**
 * The time the slowest-heating point spent where bacteria grow, against the warm-up limit (at most 6 h between 10 and
 * 54.4 C: FSIS-GD-2021-14 p. 24). Later cooking does not undo toxin that formed on the way.
 *
 * @param warmUpS time [s] in the warm-up range before its upper end was first reached
 * @param fallenBackS time [s] in the warm-up range after that, as in a power cut; counts towards the limit as well
 * @param leftS what is left of the limit [s]; below zero when it is exceeded
 * @param growthRangeS time [s] in the growth range
 * @param perfringensRangeS time [s] in the growth range of C. perfringens
 * @param pace the verdict
 */
public record WarmUpClock(
        double warmUpS, double fallenBackS, double leftS, double growthRangeS, double perfringensRangeS, Pace pace) {

    /** The verdict on a warm-up. */
    public enum Pace {
        /** Within the limit and the early warning. */
        IN_TIME,
        /** Within the limit, beyond the early warning. */
        SLOW,
        /** Beyond the limit. */
        TOO_SLOW
    }

    /**
     * Reads the clock.
     *
     * @param core the slowest-heating point
     * @param until end of the cook [s]; what follows is a matter of cooling
     * @param error taken off before the upper end counts as reached
     * @param limits of the rule
     */
    public static WarmUpClock of(PointHistory core, double until, ReadingError error, WarmUpLimits limits) {
        double topC = error.readingFor(limits.toC());
        double warm = Math.min(until, core.firstAtOrAbove(topC));
        double warmUpS = core.secondsBetween(limits.fromC(), topC, warm);
        double fallenBackS = core.secondsBetween(limits.fromC(), topC, until) - warmUpS;
        double total = warmUpS + fallenBackS;
        Pace pace = total > limits.longestS() ? Pace.TOO_SLOW : total > limits.warningS() ? Pace.SLOW : Pace.IN_TIME;
        return new WarmUpClock(
                warmUpS,
                fallenBackS,
                limits.longestS() - total,
                core.secondsBetween(limits.growthFromC(), error.readingFor(limits.growthToC()), until),
                core.secondsBetween(limits.growthFromC(), error.readingFor(limits.perfringensToC()), until),
                pace);
    }
}
