package dev.slowpoint.heat;

import java.util.Arrays;

/**
 * The heat that a body has taken up since the start of its history, over time: as counted by the flows that changed it, joined
 * by cubic pieces.
 */
public final class HeatTaken {

    private final double[] times;
    private final double[] taken;
    private final double[] flows;

    /**
     * Heat from samples.
     *
     * @param times [s], never falling
     * @param taken heat taken up until then per volume of the body [J/m3]
     * @param flows heat that flows in then per volume of the body [W/m3]
     */
    HeatTaken(double[] times, double[] taken, double[] flows) {
        this.times = times;
        this.taken = taken;
        this.flows = flows;
    }

    /** Heat taken up until a time [J/m3]; before the history nothing, after it what its end has. */
    public double until(double time) {
        if (time <= times[0]) {
            return 0.0;
        }
        int last = times.length - 1;
        if (time >= times[last]) {
            return taken[last];
        }
        int found = Arrays.binarySearch(times, time);
        int piece = Math.min(found >= 0 ? found : -found - 2, last - 1);
        double span = times[piece + 1] - times[piece];
        if (span <= 0.0) {
            return taken[piece + 1];
        }
        double x = (time - times[piece]) / span;
        double gain = taken[piece + 1] - taken[piece];
        double a = flows[piece] * span - gain;
        double b = gain - flows[piece + 1] * span;
        return taken[piece] + x * (gain + (1.0 - x) * (a * (1.0 - x) + b * x));
    }
}
