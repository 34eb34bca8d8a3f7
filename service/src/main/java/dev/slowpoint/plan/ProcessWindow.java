package dev.slowpoint.plan;

import dev.slowpoint.plan.CookPlan.Obstacle;
import dev.slowpoint.plan.CookPlan.TakeOut;
import dev.slowpoint.plan.CookPlan.Times;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The answer to a {@link ProcessWindowTask}: the lines of a cook plan over setpoints, the region between them, and a point
 * in it. All times in seconds from the moment the food goes in; infinity stands for never.
 *
 * @param parameterSet version of the set used
 * @param digest of that set
 * @param rule judged by
 * @param stepK between setpoints [K]
 * @param tolerances what goes wrong once in each input
 * @param setpoints each setpoint looked at, from the coolest up
 * @param region where there is a moment to take the piece out, from the coolest up; empty where there is none
 * @param closed why there is no region; empty where there is one
 * @param recommended a point in the region; empty where there is none
 * @param own the point that the caller had in mind, if one was told
 * @param notices warnings and cautions of the recommended point; where there is none, of the hottest setpoint
 * @param effort what the solver spent
 */
public record ProcessWindow(
        String parameterSet,
        String digest,
        Rule rule,
        double stepK,
        Tolerances tolerances,
        List<AtSetpoint> setpoints,
        List<Interval> region,
        Optional<Closed> closed,
        Optional<ProcessPoint> recommended,
        Optional<ProcessPoint> own,
        List<Notice> notices,
        CookPlan.Effort effort) {

    /** How closely the ends of the region are found [K] (our own choice). */
    public static final double EDGE_WITHIN_K = 0.05;

    /** Copies the lists. */
    public ProcessWindow {
        setpoints = List.copyOf(setpoints);
        region = List.copyOf(region);
        notices = List.copyOf(notices);
    }

    /**
     * What goes wrong once in each input.
     *
     * @param bathK of the bath [K]
     * @param moment of the moment at which food leaves the bath [s]
     * @param across of the size that heat has to cross [m]
     * @param startK of the start temperature [K]
     */
    public record Tolerances(double bathK, double moment, double across, double startK) {}

    /**
     * One setpoint.
     *
     * @param setpointC of the bath [C]
     * @param lines those of a cook plan at this setpoint; empty where a cook plan would be refused
     * @param bar why there is no moment to take the piece out; empty where there is one
     */
    public record AtSetpoint(double setpointC, Optional<Lines> lines, Optional<Bar> bar) {}

    /**
     * What a cook plan says at one setpoint.
     *
     * @param times its milestones
     * @param warmUpUsedUp when the slow corner has been in the warm-up range of the rule for as long as it may; infinity
     *     where it leaves it in time
     * @param takeOut when to take it out, the time available not counted
     * @param verdict by the rule at the best moment, or where there is none at the moment a cook plan judges
     */
    public record Lines(Times times, double warmUpUsedUp, TakeOut takeOut, Verdict verdict) {}

    /** Why there is no moment to take the piece out at a setpoint. */
    public sealed interface Bar {

        /** A code for programs, one of the obstacles or of the problems. */
        String code();
    }

    /**
     * A line of the cook plan is in the way.
     *
     * @param obstacle which
     */
    public record Line(Obstacle obstacle) implements Bar {

        @Override
        public String code() {
            return obstacle.name();
        }
    }

    /**
     * It takes longer than there is time.
     *
     * @param earliest when it could be taken out at the soonest [s]
     */
    public record TooLong(double earliest) implements Bar {

        /** For programs. */
        public static final String CODE = "NOT_IN_TIME";

        @Override
        public String code() {
            return CODE;
        }
    }

    /**
     * A cook plan at this setpoint is refused.
     *
     * @param fault why
     */
    public record Refused(Refusal.Fault fault) implements Bar {

        @Override
        public String code() {
            return fault.code();
        }
    }

    /**
     * Setpoints with a moment to take the piece out and the same verdict. Its ends lie inside, and at most a twentieth of a
     * kelvin from the edge, or else at the end of the range looked at.
     *
     * @param from the coolest
     * @param to the hottest
     * @param verdict by the rule
     * @param cooler why it ends there; empty at the end of the range, and where another interval adjoins
     * @param hotter why it ends there; likewise
     */
    public record Interval(
            AtSetpoint from, AtSetpoint to, Verdict verdict, Optional<Bar> cooler, Optional<Bar> hotter) {}

    /**
     * Why there is no region.
     *
     * @param bar what is in the way at most setpoints; of equals at the hotter ones
     * @param openings what would open it; empty where nothing of what was tried does
     */
    public record Closed(Bar bar, List<Opening> openings) {

        /** Copies the list. */
        public Closed {
            openings = List.copyOf(openings);
        }
    }

    /**
     * One change that opens a region, all else left as it is.
     *
     * @param change what to change
     * @param setpointC where it opens [C]
     * @param verdict by the rule there
     * @param across size across with which it opens [m], where that is what changes
     * @param purpose for which it opens, where that is what changes
     * @param available time with which it opens [s], where that is what changes
     */
    public record Opening(
            Change change,
            double setpointC,
            Verdict verdict,
            OptionalDouble across,
            Optional<Purpose> purpose,
            OptionalDouble available) {}

    /** What may be changed. */
    public enum Change {
        /** A setpoint above the range. */
        HOTTER,
        /** A setpoint below the range. */
        COOLER,
        /** A smaller piece. */
        THINNER,
        /** More time. */
        LONGER,
        /** Another purpose. */
        OTHER_PURPOSE
    }

    /** The edges of the region. */
    public enum Edge {
        /** Hot through, nominal. */
        HOT_THROUGH,
        /** The rule met, on the late side. */
        SAFE,
        /** Tender, nominal. */
        TENDER,
        /** The texture closes, on the early side. */
        GOOD_UNTIL,
        /** The warm-up limit of the rule used up, on the late side. */
        SLOW_WARM_UP,
        /** No more time. */
        AVAILABLE_TIME
    }

    /**
     * A setpoint and a moment.
     *
     * @param setpointC of the bath [C]
     * @param at when it leaves the bath [s]
     * @param inside whether it lies in the region
     * @param spare how many times each tolerance may go wrong, all of them together and on top of what the lines count
     *     already, before the point lies outside; at most {@link Robustness#MOST}. Empty where it lies outside already
     * @param nearest the edge that is crossed first; empty where none is
     * @param verdict by the rule at this point, worst case
     * @param distances to each edge that the region has, all else left as it is
     */
    public record ProcessPoint(
            double setpointC,
            double at,
            boolean inside,
            OptionalDouble spare,
            Optional<Edge> nearest,
            Verdict verdict,
            List<Distance> distances) {

        /** Copies the list. */
        public ProcessPoint {
            distances = List.copyOf(distances);
        }
    }

    /**
     * How far a point lies from one edge; below zero where it lies beyond it.
     *
     * @param edge which
     * @param seconds sooner, or later where the edge is one to be done by [s]; empty where the edge is never reached here
     * @param kelvin how much the bath may change, all else left as it is; empty where no bath near crosses the edge
     * @param metres how much the size across may change; empty where no size near crosses the edge
     */
    public record Distance(Edge edge, OptionalDouble seconds, OptionalDouble kelvin, OptionalDouble metres) {}
}
