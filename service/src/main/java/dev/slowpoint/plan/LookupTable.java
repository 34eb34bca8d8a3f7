package dev.slowpoint.plan;

import java.util.List;

/**
 * Times over a grid of sizes, setpoints and starts, to be interpolated by a small controller. Between nodes a value is
 * linear in the square of the size, in the setpoint and in the start temperature.
 *
 * @param parameterSet version of the set used
 * @param digest of that set
 * @param across sizes across the slowest-heating point [m], rising
 * @param setpointsC [C], rising
 * @param startsC [C], rising
 * @param columns times at the nodes
 * @param checks fresh random points at which the table was held against plans, none of which was on the wrong side
 * @param rounds sets of such points that were drawn: those before the last found a wrong side and mended it
 * @param notices warnings and cautions of the ends of the ranges, each once, the most severe first
 * @param effort what the solver spent
 */
public record LookupTable(
        String parameterSet,
        String digest,
        List<Double> across,
        List<Double> setpointsC,
        List<Double> startsC,
        List<Column> columns,
        int checks,
        int rounds,
        List<Notice> notices,
        CookPlan.Effort effort) {

    /** Stands for never. */
    public static final int NEVER = -1;

    /** Copies the lists. */
    public LookupTable {
        across = List.copyOf(across);
        setpointsC = List.copyOf(setpointsC);
        startsC = List.copyOf(startsC);
        columns = List.copyOf(columns);
        notices = List.copyOf(notices);
    }

    /** What is tabulated. */
    public enum Quantity {
        /** Hot through on the late side. */
        HOT_THROUGH(true),
        /** The rule is met, on the late side; never where the warm-up takes longer than the rule allows. */
        SAFE(true),
        /** Tender on the late side. */
        TENDER(true),
        /** The texture closes, on the early side, or the warm-up has used up its limit, whichever comes first. */
        GOOD_UNTIL(false),
        /** Too soft for most, on the early side. */
        SOFT_FROM(false);

        private final boolean awaited;

        Quantity(boolean awaited) {
            this.awaited = awaited;
        }

        /** Whether it is waited for, so that a time too long is the safe side; else the food is to be out by then. */
        public boolean awaited() {
            return awaited;
        }
    }

    /**
     * One quantity at all nodes.
     *
     * @param quantity which
     * @param seconds [s] whole, or {@link #NEVER}; the start varies fastest, the size slowest
     * @param error against fresh plans
     */
    public record Column(Quantity quantity, List<Integer> seconds, Error error) {

        /** Copies the list. */
        public Column {
            seconds = List.copyOf(seconds);
        }
    }

    /**
     * How far a table is from fresh plans at random points, to the safe side.
     *
     * @param greatest [s]
     * @param greatestShare of the time of the plan [-]
     * @param usual the 95th percentile [s]
     * @param usualShare the 95th percentile as a share [-]
     * @param needlesslyNever share of the points where the table says never and the plan names a time [-]
     */
    public record Error(
            double greatest, double greatestShare, double usual, double usualShare, double needlesslyNever) {}
}
