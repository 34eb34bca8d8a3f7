package dev.slowpoint.plan;

import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.TemperatureHistory;

/** Runs the solver for one question and keeps count. */
final class SolverRuns {

    private int runs;
    private long steps;

    /** What happens in a setting until a time [s]. */
    TemperatureHistory until(double end, Setting setting) {
        return count(setting.until(end));
    }

    /** The same with the error of a stand-in body turned some way, from -1 (early) to 1 (late). */
    TemperatureHistory until(double end, Setting setting, double shape) {
        return count(setting.until(end, shape));
    }

    /** What happens in a setting through a programme. */
    TemperatureHistory through(Programme programme, Setting setting) {
        return count(setting.through(programme));
    }

    /** The same, where a body with ends is stood in for as in another programme. */
    TemperatureHistory through(Programme programme, Programme standsInFor, Setting setting) {
        return count(setting.through(programme, standsInFor));
    }

    private TemperatureHistory count(TemperatureHistory history) {
        runs++;
        steps += history.samples();
        return history;
    }

    /** What was spent so far. */
    CookPlan.Effort effort() {
        return new CookPlan.Effort(runs, steps);
    }
}
