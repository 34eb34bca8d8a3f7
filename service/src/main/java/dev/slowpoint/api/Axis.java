package dev.slowpoint.api;

import java.util.ArrayList;
import java.util.List;

/**
 * A straight scale from values to places in a picture, with marks at round values.
 *
 * @param from value at {@code start}
 * @param to value at {@code end}, above {@code from}
 * @param start place of {@code from}
 * @param end place of {@code to}
 */
record Axis(double from, double to, double start, double end) {

    /** Steps between marks in minutes that a clock face knows, in seconds. */
    private static final int[] TIME_STEPS = {
        60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 14400, 21600, 43200, 86400, 172800, 345600
    };

    private static final int[] TEMPERATURE_STEPS = {1, 2, 5, 10, 20, 50, 100};

    /** Refuses a scale without length. */
    Axis {
        if (!(to > from)) {
            throw new IllegalArgumentException("a scale cannot run from " + from + " to " + to);
        }
    }

    /** The place of a value; a value beyond the scale lies at its end. */
    double at(double value) {
        double within = Math.min(Math.max(value, from), to);
        return start + (end - start) * (within - from) / (to - from);
    }

    /** The places of values. */
    double[] at(List<? extends Number> values) {
        return values.stream().mapToDouble(v -> at(v.doubleValue())).toArray();
    }

    /** Round moments [s], at most so many. */
    List<Integer> moments(int most) {
        return marks(TIME_STEPS, most);
    }

    /** Round temperatures [C], at most so many. */
    List<Integer> temperatures(int most) {
        return marks(TEMPERATURE_STEPS, most);
    }

    private List<Integer> marks(int[] steps, int most) {
        int step = steps[steps.length - 1];
        for (int i = steps.length - 1; i >= 0 && (to - from) / steps[i] <= most; i--) {
            step = steps[i];
        }
        List<Integer> marks = new ArrayList<>();
        for (int mark = (int) Math.ceil(from / step) * step; mark <= to; mark += step) {
            marks.add(mark);
        }
        return marks;
    }
}
