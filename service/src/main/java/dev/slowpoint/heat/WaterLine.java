package dev.slowpoint.heat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The temperature of water over time as straight pieces. Two samples of one time are a jump, as where cold water is poured in.
 *
 * @param times [s], never falling, at least two
 * @param temperaturesC [C] at those times
 */
public record WaterLine(double[] times, double[] temperaturesC) {

    /** Water that stays at a temperature [C] from one time to a later one [s]. */
    public static WaterLine still(double temperatureC, double from, double until) {
        return new WaterLine(new double[] {from, until}, new double[] {temperatureC, temperatureC});
    }

    /** When it begins [s]. */
    public double begin() {
        return times[0];
    }

    /** When it ends [s]. */
    public double end() {
        return times[times.length - 1];
    }

    /** Temperature at a time [C]; at a jump that after it. */
    public double atC(double time) {
        int last = times.length - 1;
        if (time >= times[last]) {
            return temperaturesC[last];
        }
        int piece = pieceAfter(time);
        double span = times[piece + 1] - times[piece];
        double share = Math.max(time - times[piece], 0.0) / span;
        return temperaturesC[piece] + share * (temperaturesC[piece + 1] - temperaturesC[piece]);
    }

    /** Temperature at a time [C]; at a jump that before it. */
    public double beforeC(double time) {
        int found = Arrays.binarySearch(times, time);
        if (found < 0) {
            return atC(time);
        }
        while (found > 0 && times[found - 1] == time) {
            found--;
        }
        return temperaturesC[found];
    }

    /** The last piece that begins at a time or before it. */
    private int pieceAfter(double time) {
        int low = 0;
        int high = times.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (times[middle] <= time) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The same water from one time to a later one [s], with times counted from the first of the two. */
    public WaterLine between(double from, double until) {
        List<Double> t = new ArrayList<>();
        List<Double> c = new ArrayList<>();
        t.add(0.0);
        c.add(atC(from));
        for (int i = 0; i < times.length; i++) {
            boolean jump = i > 0 && times[i] == times[i - 1];
            if (times[i] > from && (times[i] < until || (times[i] == until && !jump))) {
                t.add(times[i] - from);
                c.add(temperaturesC[i]);
            }
        }
        if (t.get(t.size() - 1) < until - from) {
            t.add(until - from);
            c.add(atC(until));
        }
        return new WaterLine(unboxed(t), unboxed(c));
    }

    /** The same water, warmer throughout by a difference [K]. */
    public WaterLine warmerBy(double differenceK) {
        return new WaterLine(
                times, Arrays.stream(temperaturesC).map(c -> c + differenceK).toArray());
    }

    /** The same water with as few pieces as miss none of its samples by more than a tolerance [K]; jumps stay. */
    WaterLine within(double toleranceK) {
        List<Double> t = new ArrayList<>();
        List<Double> c = new ArrayList<>();
        int last = times.length - 1;
        int knot = 0;
        t.add(times[0]);
        c.add(temperaturesC[0]);
        while (knot < last) {
            int next = knot + 1;
            double least = Double.NEGATIVE_INFINITY;
            double most = Double.POSITIVE_INFINITY;
            for (int i = knot + 1; i <= last; i++) {
                double span = times[i] - times[knot];
                if (span <= 0.0) {
                    break;
                }
                double slope = (temperaturesC[i] - temperaturesC[knot]) / span;
                if (slope >= least && slope <= most) {
                    next = i;
                }
                least = Math.max(least, slope - toleranceK / span);
                most = Math.min(most, slope + toleranceK / span);
                boolean jumps = i < last && times[i + 1] == times[i];
                if (least > most || jumps) {
                    break;
                }
            }
            knot = next;
            t.add(times[knot]);
            c.add(temperaturesC[knot]);
        }
        return new WaterLine(unboxed(t), unboxed(c));
    }

    /** The coldest sample: its number. */
    public int coldest() {
        int found = 0;
        for (int i = 1; i < times.length; i++) {
            if (temperaturesC[i] < temperaturesC[found]) {
                found = i;
            }
        }
        return found;
    }

    private static double[] unboxed(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
