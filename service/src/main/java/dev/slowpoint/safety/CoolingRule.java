package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.PointHistory;
import java.util.List;

/**
 * How fast cooked food must be cooled.
 *
 * @param id as in the limits file
 * @param stages all of which must be kept
 */
public record CoolingRule(String id, List<Stage> stages) {

    /**
     * One limit.
     *
     * @param id as in the limits file
     * @param fromC the clock starts when the core falls to it [C], or at once when it is colder
     * @param toC the clock stops when the core falls to it [C]
     * @param longestS [s]
     * @param provenance where it was read
     */
    public record Stage(String id, double fromC, double toC, double longestS, Provenance provenance) {

        /** Refuses a limit that was only recalled: it would let a plan pass. */
        public Stage {
            provenance.refuseIfRecalled("limit " + id);
        }
    }

    /**
     * How a history kept one limit.
     *
     * @param stage the limit
     * @param seconds on the clock [s], so far if the end was not reached
     * @param reached whether the end was reached
     */
    public record StageCheck(Stage stage, double seconds, boolean reached) {

        /** What is left of the limit [s]; below zero when it is exceeded. */
        public double leftS() {
            return stage.longestS() - seconds;
        }

        /** Whether the end was reached in time. */
        public boolean kept() {
            return reached && leftS() >= 0.0;
        }
    }

    /** Copies the list. */
    public CoolingRule {
        stages = List.copyOf(stages);
    }

    /**
     * Checks a history to its end.
     *
     * @param core the slowest-cooling point
     * @param from when cooling began [s]
     */
    public List<StageCheck> check(PointHistory core, double from) {
        return check(core, from, core.end());
    }

    /**
     * Checks part of a history.
     *
     * @param core the slowest-cooling point
     * @param from when cooling began [s]
     * @param until when it ended, as by heating again [s]
     */
    public List<StageCheck> check(PointHistory core, double from, double until) {
        return stages.stream().map(stage -> check(stage, core, from, until)).toList();
    }

    /** Whether a history kept all limits. */
    public boolean kept(PointHistory core, double from) {
        return check(core, from).stream().allMatch(StageCheck::kept);
    }

    private static StageCheck check(Stage stage, PointHistory core, double from, double until) {
        double start = fallenTo(core, from, stage.fromC());
        double end = fallenTo(core, from, stage.toC());
        boolean reached = end <= until;
        double seconds = (reached ? end : until) - Math.min(start, until);
        return new StageCheck(stage, seconds, reached);
    }

    /** The first time from {@code from} on at which the core is at or below a temperature; infinity when it never is. */
    public static double fallenTo(PointHistory core, double from, double levelC) {
        if (core.atC(from) <= levelC) {
            return Math.max(from, core.start());
        }
        for (int i = 0; i < core.samples(); i++) {
            if (core.time(i) > from && core.temperatureC(i) <= levelC) {
                double low = Math.max(from, core.time(i - 1));
                double high = core.time(i);
                while (high - low > 1e-6 * (1.0 + Math.abs(high))) {
                    double middle = 0.5 * (low + high);
                    if (core.atC(middle) <= levelC) {
                        high = middle;
                    } else {
                        low = middle;
                    }
                }
                return high;
            }
        }
        return Double.POSITIVE_INFINITY;
    }
}
