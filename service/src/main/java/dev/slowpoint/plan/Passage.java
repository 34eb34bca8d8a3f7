package dev.slowpoint.plan;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.TemperatureHistory;
import java.util.List;

/** What one corner went through, and when each step began and ended. */
final class Passage {

    /** How closely the moment of a peak is told [s]. */
    private static final double PEAK_S = 1.0;

    private final TemperatureHistory history;
    private final double[] begins;
    private final double[] ends;
    private final List<PowerCut> cuts;
    private final PointHistory core;
    private final PointHistory coldest;
    private final PointHistory warmest;

    Passage(TemperatureHistory history, double[] begins, double[] ends, List<PowerCut> cuts) {
        this.history = history;
        this.begins = begins;
        this.ends = ends;
        this.cuts = List.copyOf(cuts);
        this.core = history.core();
        this.coldest = history.coldest();
        this.warmest = history.warmest();
    }

    TemperatureHistory history() {
        return history;
    }

    PointHistory core() {
        return core;
    }

    /** The coldest point at each moment. */
    PointHistory coldest() {
        return coldest;
    }

    /** The warmest point at each moment. */
    PointHistory warmest() {
        return warmest;
    }

    /** When a step began [s]. */
    double begins(int step) {
        return begins[step];
    }

    /** When a step ended [s]. */
    double ends(int step) {
        return ends[step];
    }

    /** When each step ended [s]. */
    double[] ends() {
        return ends.clone();
    }

    /** The power cut that was the n-th. */
    PowerCut cut(int n) {
        return cuts.get(n);
    }

    /** The highest temperature of a point between two times, and when. */
    static Peak peak(PointHistory point, double from, double until) {
        int best = -1;
        Peak peak = new Peak(from, point.atC(from));
        for (int i = 0; i < point.samples(); i++) {
            if (point.time(i) > from && point.time(i) < until && point.temperatureC(i) > peak.temperatureC()) {
                best = i;
                peak = new Peak(point.time(i), point.temperatureC(i));
            }
        }
        if (best > 0) {
            double left = Math.max(from, point.time(best - 1));
            double right = Math.min(until, best + 1 < point.samples() ? point.time(best + 1) : until);
            peak = between(point, left, right);
        }
        return point.atC(until) > peak.temperatureC() ? new Peak(until, point.atC(until)) : peak;
    }

    /** The peak between two times around the highest sample, by thirds. */
    private static Peak between(PointHistory point, double from, double until) {
        double left = from;
        double right = until;
        while (right - left > PEAK_S) {
            double third = (right - left) / 3.0;
            if (point.atC(left + third) < point.atC(right - third)) {
                left += third;
            } else {
                right -= third;
            }
        }
        double at = 0.5 * (left + right);
        return new Peak(at, point.atC(at));
    }

    /**
     * A highest temperature.
     *
     * @param at [s]
     * @param temperatureC [C]
     */
    record Peak(double at, double temperatureC) {}
}
