package dev.slowpoint.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The answer to a {@link LoadTask}. Moments of the load are seconds from its start; the plan of each item keeps its own clock,
 * which starts when that item goes in.
 *
 * @param parameterSet version of the set used
 * @param digest of that set
 * @param schedule how the foods go together
 * @param reason why so and not more simply
 * @param conflicts what stands in the way; only where the foods do not go together
 * @param readyAt when all is ready [s]; empty where the foods do not go together
 * @param phases the bath at one setpoint after the other; empty where the foods do not go together
 * @param lowering how the water is brought down between two setpoints
 * @param atLimit for how long the heater gives all it can until all is ready, nominal [s]; empty where no heater is told
 * @param items in the order of the task
 * @param notices of the load as a whole, the most severe first, with what always holds
 * @param water its temperature over time, nominal, if a curve is asked for
 * @param effort what the solver spent
 */
public record LoadPlan(
        String parameterSet,
        String digest,
        Schedule schedule,
        Reason reason,
        List<Conflict> conflicts,
        OptionalDouble readyAt,
        List<Phase> phases,
        Optional<Lowering> lowering,
        OptionalDouble atLimit,
        List<Item> items,
        List<Notice> notices,
        Optional<Water> water,
        CookPlan.Effort effort) {

    /** Copies the lists. */
    public LoadPlan {
        conflicts = List.copyOf(conflicts);
        phases = List.copyOf(phases);
        items = List.copyOf(items);
        notices = List.copyOf(notices);
    }

    /** How foods share a bath. */
    public enum Schedule {
        /** All go in together and come out together, at one setpoint. */
        TOGETHER,
        /** They go in one after the other and come out together, at one setpoint. */
        STAGGERED,
        /** First the hotter ones, then, in the cooled bath, the others. */
        TWO_SETPOINTS,
        /** They need a bath each. */
        APART
    }

    /** Why a schedule. */
    public enum Reason {
        /** One setpoint and one time suit all. */
        COMMON_WINDOW,
        /** One setpoint suits all, but no one time in the water does. */
        TIMES_DIFFER,
        /** No one setpoint suits all. */
        TEMPERATURES_DIFFER,
        /** A food has no time to be taken out even alone. */
        FAILS_ALONE,
        /** More than two setpoints would be needed, or two but in a bath whose setpoint is fixed. */
        TOO_MANY_TEMPERATURES,
        /** The temperatures meet, but where they do a rule or a texture is not kept. */
        NOT_SAFE_WHERE_THEY_MEET,
        /** Each alone would do, but together they cool the water too far. */
        LOAD_TOO_HEAVY
    }

    /** What stands in the way of cooking two foods, or one, in the bath. */
    public enum Obstacle {
        /** The coolest bath of the one is hotter than the hottest of the other. */
        TEMPERATURES_APART,
        /** It has no time to be taken out in any bath it may have, even alone. */
        ITEM_FAILS,
        /** Its core would end hotter than asked for. */
        HOTTER_THAN_WANTED,
        /** In the baths that the others allow it has no time to be taken out. */
        FAILS_WHERE_THEY_MEET,
        /** In the water as the whole load cools it, it has no time to be taken out. */
        FAILS_IN_THIS_LOAD
    }

    /**
     * One thing that stands in the way.
     *
     * @param obstacle what
     * @param item id of the item that it happens to; of two the one that needs the hotter bath
     * @param other id of the other one, if it takes two
     * @param because why the item has no time to be taken out, where that is so
     * @param needsC the least temperature that the item may have [C], where temperatures are apart
     * @param otherAllowsC the highest that the other may have [C], where temperatures are apart
     */
    public record Conflict(
            Obstacle obstacle,
            String item,
            Optional<String> other,
            Optional<CookPlan.Obstacle> because,
            OptionalDouble needsC,
            OptionalDouble otherAllowsC) {

        static Conflict of(Obstacle obstacle, String item, Optional<CookPlan.Obstacle> because) {
            return new Conflict(
                    obstacle, item, Optional.empty(), because, OptionalDouble.empty(), OptionalDouble.empty());
        }
    }

    /**
     * The bath at one setpoint.
     *
     * @param from when it is set [s]
     * @param setpointC [C]
     * @param course what the load does to the water, nominal, in seconds from the start of the load; empty where no heater is
     *     told
     */
    public record Phase(double from, double setpointC, Optional<CookPlan.BathCourse> course) {}

    /**
     * How the water is brought down: cold water is poured in and, once mixed, as much is taken out.
     *
     * @param at when [s]
     * @param fromC water before [C]
     * @param toC water after [C]
     * @param tapC the cold water [C]
     * @param pouredShare cold water over the water in the bath [-]
     * @param exchangedShare the same where as much hot water is taken out first [-]
     * @param volume of the bath [m3], where it is told
     */
    public record Lowering(
            double at,
            double fromC,
            double toC,
            double tapC,
            double pouredShare,
            double exchangedShare,
            OptionalDouble volume) {

        /**
         * By the balance of heat between two waters, their heat capacities per mass taken as equal.
         *
         * @param tapC below {@code toC}, and that below {@code fromC}
         */
        static Lowering of(double at, double fromC, double toC, double tapC, OptionalDouble volume) {
            return new Lowering(
                    at, fromC, toC, tapC, (fromC - toC) / (toC - tapC), (fromC - toC) / (fromC - tapC), volume);
        }
    }

    /**
     * One item.
     *
     * @param id what the asker calls it
     * @param entersAt when it goes in [s from the start of the load]
     * @param leavesAt when it comes out [s from the start of the load]
     * @param latestAt when it has to be out [s from the start of the load]; infinity where nothing known closes it
     * @param setpointC of the bath it goes into [C]
     * @param staysThrough whether it stays in the bath while that is cooled for others
     * @param plan its own plan, on its own clock; where the foods do not go together, in a bath of its own
     * @param notices its own; those of the water stand with the load
     */
    public record Item(
            String id,
            double entersAt,
            double leavesAt,
            double latestAt,
            double setpointC,
            boolean staysThrough,
            CookPlan plan,
            List<Notice> notices) {

        /** Copies the list. */
        public Item {
            notices = List.copyOf(notices);
        }
    }

    /**
     * The water over time. Two samples of one time are a jump.
     *
     * @param times [s]
     * @param temperaturesC [C]
     */
    public record Water(double[] times, double[] temperaturesC) {}
}
