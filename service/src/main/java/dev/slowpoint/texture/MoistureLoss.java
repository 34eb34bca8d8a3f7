package dev.slowpoint.texture;

import dev.slowpoint.heat.Exp;
import java.util.Arrays;

/**
 * The mean loss of juice of a piece over time, in percent of its raw mass; it never falls.
 *
 * <p>Between samples the loss follows the exponential that has the slopes of both ends, which is exact for a piece of
 * even temperature.
 */
public final class MoistureLoss {

    private static final double NOTHING_LEFT = 1e-6;

    private final double[] times;
    private final double[] percents;
    private final double[] slopes;

    /**
     * From samples.
     *
     * @param times [s], never falling, at least one
     * @param percents loss at those times [% of the raw mass], never falling
     * @param slopes [%/s] at those times, zero or more
     */
    MoistureLoss(double[] times, double[] percents, double[] slopes) {
        this.times = times;
        this.percents = percents;
        this.slopes = slopes;
    }

    /** Loss [% of the raw mass] at a time [s]; before the start the first value, after the end the last. */
    public double percentAt(double time) {
        int last = times.length - 1;
        if (time >= times[last]) {
            return percents[last];
        }
        if (time <= times[0]) {
            return percents[0];
        }
        int found = Arrays.binarySearch(times, time);
        if (found >= 0) {
            return percents[found];
        }
        int piece = -found - 2;
        double x = (time - times[piece]) / (times[piece + 1] - times[piece]);
        double c = decay(piece);
        double share = c == 0.0 ? x : (1.0 - Exp.exp(-c * x)) / (1.0 - Exp.exp(-c));
        return percents[piece] + share * (percents[piece + 1] - percents[piece]);
    }

    /** The first time [s] at which the loss is at or above a value [% of the raw mass]; infinity when it stays below. */
    public double timeOf(double percent) {
        int last = times.length - 1;
        if (percents[0] >= percent) {
            return times[0];
        }
        if (!(percents[last] >= percent)) {
            return Double.POSITIVE_INFINITY;
        }
        int next = 1;
        while (percents[next] < percent) {
            next++;
        }
        int piece = next - 1;
        double share = (percent - percents[piece]) / (percents[next] - percents[piece]);
        double c = decay(piece);
        double x = c == 0.0 ? share : -StrictMath.log(1.0 - share * (1.0 - Exp.exp(-c))) / c;
        return times[piece] + Math.min(Math.max(x, 0.0), 1.0) * (times[next] - times[piece]);
    }

    /** Exponent by which the slope falls over a piece; zero where a straight line will do. */
    private double decay(int piece) {
        double before = slopes[piece];
        double after = slopes[piece + 1];
        double gain = percents[piece + 1] - percents[piece];
        if (!(before > 0.0 && gain > 0.0)) {
            return 0.0;
        }
        if (after < NOTHING_LEFT * before) {
            // All is lost long before the end of the piece, and the last slope is rounding: the first one tells.
            return before * (times[piece + 1] - times[piece]) / gain;
        }
        double c = StrictMath.log(before / after);
        return Math.abs(c) < 1e-6 ? 0.0 : c;
    }
}
