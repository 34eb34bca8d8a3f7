package dev.slowpoint.plan;

import java.util.List;
import java.util.Optional;

/**
 * What to do with a cook under way.
 *
 * @param plan the plan from food in, past and future; its verdict is never met where the past has spoiled the food
 * @param decision what to do
 * @param reason why, where it is not just to go on
 * @param now state of the piece now
 * @param fit what core readings tell of the piece, if there were any
 * @param off times without heater that were counted, each with its range
 */
public record Replan(
        CookPlan plan, Decision decision, Optional<Reason> reason, Now now, Optional<Fit> fit, List<Off> off) {

    /** Copies the list. */
    public Replan {
        off = List.copyOf(off);
    }

    /** What to do. */
    public enum Decision {
        /** Leave it in; the times tell for how long. */
        CARRY_ON,
        /** It may leave the bath now. */
        READY,
        /** No moment satisfies all at this setpoint: change it, or what is wanted. */
        CHANGE_PLAN,
        /** Not certified: someone qualified has to decide, or else it is thrown away. */
        GET_DECISION,
        /** Throw it away; no further heating makes it good. */
        DISCARD
    }

    /** Why. */
    public enum Reason {
        /** Warm for longer than the warm-up limit allows. */
        WARM_TOO_LONG,
        /** So in the worst case. */
        WARM_TOO_LONG_AT_WORST,
        /** It fell back to where spores grow, for longer than the rules allow. */
        SPORES_GREW,
        /** So in the worst case, or near it. */
        SPORES_MAY_HAVE_GROWN,
        /** There is no record for a time in which this may have happened. */
        NO_RECORD,
        /** No moment satisfies all at this setpoint. */
        NO_TIME_FITS,
        /** The rule is not met at the time at which the food is wanted; it is at the times told. */
        NOT_MET_WHEN_SERVED
    }

    /**
     * The piece now.
     *
     * @param at time since food in [s]
     * @param coreC of the middle, low and high over the tolerances [C]
     * @param surfaceC nominal [C]
     * @param waterC nominal [C]
     */
    public record Now(double at, Range coreC, double surfaceC, double waterC) {}

    /** How well core readings by themselves pin what follows. */
    public enum Pinned {
        /** The safe time spreads over a tenth of it at most. */
        WELL,
        /** Over a quarter at most. */
        FAIRLY,
        /** Over more, or the readings say little. */
        POORLY
    }

    /**
     * What core readings tell.
     *
     * @param across size across the slowest-heating point [m] that explains them, over all explanations
     * @param film film coefficient [W/m2K] that explains them with the size as told; empty where none does
     * @param pinned how well
     * @param missK how far the nominal explanation misses the worst reading [K]
     */
    public record Fit(Range across, Optional<Double> film, Pinned pinned, double missK) {}

    /**
     * A time without heater.
     *
     * @param length how long [s]; late is the longest
     * @param inferred whether it was worked out from the water found
     */
    public record Off(Span length, boolean inferred) {}
}
