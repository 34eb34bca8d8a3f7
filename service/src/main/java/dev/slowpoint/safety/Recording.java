package dev.slowpoint.safety;

import dev.slowpoint.heat.PointHistory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * What one sensor recorded: the readings that are believed, and the stretches of time over which nothing is known, because
 * readings are missing or must be those of a fault.
 *
 * <p>Between two readings the temperature is taken as a straight line, unless the stretch is unread. What an unread stretch
 * stands for depends on the question, so that whoever judges says by what it is {@linkplain #filled filled}.
 */
public final class Recording {

    /** What a digital thermometer with one wire gives when it has no sensor; from memory, so it only takes credit away. */
    private static final double NO_SENSOR_C = -127.0;

    /** What such a thermometer gives before its first conversion; from memory, so it only takes credit away. */
    private static final double POWER_ON_C = 85.0;

    /** A reading of exactly {@link #POWER_ON_C} this far from the one before is no temperature [K]; our choice. */
    private static final double POWER_ON_STEP_K = 5.0;

    private final double[] times;
    private final double[] temperaturesC;
    private final List<Unread> unread;
    private final double first;
    private final double last;
    private final double lowest;
    private final double highest;
    private final int received;
    private final int gaps;

    /** Why a stretch is unread. */
    public enum Cause {
        /** No readings for longer than is allowed. */
        GAP,
        /** The sensor said that it had no reading. */
        NO_READING,
        /** A value that sensors give when they have a fault, or one outside what a sensor can read. */
        FAULT_VALUE,
        /** A step that no such place can make. */
        JUMP,
        /** The same to the last digit for long, right after a fast change. */
        STUCK
    }

    /**
     * A stretch of time over which nothing is known.
     *
     * @param fromS the last reading before that is believed [s]; the start of the recording where there is none
     * @param untilS the next reading that is believed [s]; the end of the recording where there is none
     * @param beforeC that reading before [C]; empty where there is none
     * @param afterC that next reading [C]; empty where there is none
     * @param cause the first thing found in it
     * @param excluded readings in it that are not believed
     */
    public record Unread(
            double fromS, double untilS, OptionalDouble beforeC, OptionalDouble afterC, Cause cause, int excluded) {

        /** How long it is [s]. */
        public double seconds() {
            return untilS - fromS;
        }

        /**
         * Whether the temperature may have been in a range, seen from the ends: one of them lies in it, they lie on either
         * side of it, or one of them is not known.
         */
        public boolean mayLieBetween(double lowC, double highC) {
            if (beforeC.isEmpty() || afterC.isEmpty()) {
                return true;
            }
            double lower = Math.min(beforeC.getAsDouble(), afterC.getAsDouble());
            double higher = Math.max(beforeC.getAsDouble(), afterC.getAsDouble());
            return lower < highC && higher >= lowC;
        }
    }

    private Recording(
            double[] times, double[] temperaturesC, List<Unread> unread, double first, double last, int received) {
        this.times = times;
        this.temperaturesC = temperaturesC;
        this.unread = List.copyOf(unread);
        this.first = first;
        this.last = last;
        this.received = received;
        this.lowest = Arrays.stream(temperaturesC).min().orElse(Double.NaN);
        this.highest = Arrays.stream(temperaturesC).max().orElse(Double.NaN);
        this.gaps = (int) unread.stream().filter(u -> u.cause() == Cause.GAP).count();
    }

    /**
     * Reads a recording.
     *
     * @param timesS [s] strictly ascending, at least one
     * @param temperaturesC [C] at those times; NaN where the sensor had no reading
     * @param plausible what is believed
     * @throws IllegalArgumentException if the times are not finite and strictly ascending, or the lengths differ
     */
    public static Recording of(double[] timesS, double[] temperaturesC, Plausibility plausible) {
        if (timesS.length == 0 || timesS.length != temperaturesC.length) {
            throw new IllegalArgumentException("a recording needs readings, and a temperature for each time; got "
                    + timesS.length + " times and " + temperaturesC.length + " temperatures");
        }
        for (int i = 0; i < timesS.length; i++) {
            if (!Double.isFinite(timesS[i]) || (i > 0 && !(timesS[i] > timesS[i - 1]))) {
                throw new IllegalArgumentException("time " + i + " = " + timesS[i] + " s is not after the one before");
            }
        }
        return new Reading(timesS, temperaturesC, plausible).recording();
    }

    /** Number of readings that were received, believed or not. */
    public int received() {
        return received;
    }

    /** Number of readings that are believed. */
    public int used() {
        return times.length;
    }

    /** Number of stretches without readings. */
    public int gaps() {
        return gaps;
    }

    /** The stretches over which nothing is known, in order of time. */
    public List<Unread> unread() {
        return unread;
    }

    /** Time of the first reading received [s]. */
    public double firstS() {
        return first;
    }

    /** Time of the last reading received [s]. */
    public double lastS() {
        return last;
    }

    /** Time of a reading that is believed [s]. */
    public double timeS(int reading) {
        return times[reading];
    }

    /** Temperature of a reading that is believed [C]. */
    public double temperatureC(int reading) {
        return temperaturesC[reading];
    }

    /** The lowest reading that is believed [C]; NaN where none is. */
    public double lowestC() {
        return lowest;
    }

    /** The highest reading that is believed [C]; NaN where none is. */
    public double highestC() {
        return highest;
    }

    /**
     * The recording as a history from the first reading received to the last: straight lines between readings, and each
     * unread stretch at a level of its own, with a jump at either end.
     *
     * @param levelC the temperature to take over an unread stretch [C]
     * @throws IllegalStateException if the recording is shorter than a moment
     */
    public PointHistory filled(ToDoubleFunction<Unread> levelC) {
        int most = 2 * times.length + 2 * unread.size();
        double[] t = new double[most];
        double[] y = new double[most];
        double[] s = new double[most];
        int n = 0;
        int next = 0;
        for (int i = -1; i < times.length; i++) {
            double from = i < 0 ? first : times[i];
            double to = i + 1 < times.length ? times[i + 1] : last;
            if (next < unread.size()
                    && unread.get(next).fromS() == from
                    && unread.get(next).untilS() == to) {
                double level = levelC.applyAsDouble(unread.get(next));
                for (double end : new double[] {from, to}) {
                    t[n] = end;
                    y[n] = level;
                    s[n++] = 0.0;
                }
                next++;
            } else if (i >= 0 && i + 1 < times.length) {
                // Runs of the same reading make one piece: a plateau of a coarse sensor is most of many logs.
                int end = i + 1;
                if (temperaturesC[end] == temperaturesC[i]) {
                    while (end + 1 < times.length
                            && temperaturesC[end + 1] == temperaturesC[i]
                            && !(next < unread.size() && unread.get(next).fromS() == times[end])) {
                        end++;
                    }
                }
                double slope = (temperaturesC[end] - temperaturesC[i]) / (times[end] - times[i]);
                t[n] = times[i];
                y[n] = temperaturesC[i];
                s[n++] = slope;
                t[n] = times[end];
                y[n] = temperaturesC[end];
                s[n++] = slope;
                i = end - 1;
            }
        }
        if (n < 2) {
            throw new IllegalStateException("a recording of one moment is no history");
        }
        return new PointHistory(Arrays.copyOf(t, n), Arrays.copyOf(y, n), Arrays.copyOf(s, n));
    }

    /** One pass over the readings. */
    private static final class Reading {

        private final double[] t;
        private final double[] y;
        private final Plausibility plausible;
        private final List<Unread> unread = new ArrayList<>();

        Reading(double[] t, double[] y, Plausibility plausible) {
            this.t = t;
            this.y = y;
            this.plausible = plausible;
        }

        Recording recording() {
            int n = t.length;
            double[] times = new double[n];
            double[] temperatures = new double[n];
            int used = 0;
            @Nullable Cause cause = null;
            int excluded = 0;
            for (int i = 0; i < n; ) {
                int last = i;
                @Nullable Cause found = fault(i, used == 0 ? -1 : used - 1, times, temperatures);
                if (found == null) {
                    last = stuckUntil(i, used - 1, times, temperatures);
                    found = last > i ? Cause.STUCK : null;
                }
                if (found != null) {
                    cause = cause == null ? found : cause;
                    excluded += last - i + 1;
                    i = last + 1;
                    continue;
                }
                boolean gap = used > 0 && t[i] - times[used - 1] > plausible.longestGapS();
                if (cause != null || gap) {
                    unread.add(new Unread(
                            used > 0 ? times[used - 1] : t[0],
                            t[i],
                            used > 0 ? OptionalDouble.of(temperatures[used - 1]) : OptionalDouble.empty(),
                            OptionalDouble.of(y[i]),
                            cause == null ? Cause.GAP : cause,
                            excluded));
                    cause = null;
                    excluded = 0;
                }
                times[used] = t[i];
                temperatures[used++] = y[i];
                i++;
            }
            if (cause != null) {
                unread.add(new Unread(
                        used > 0 ? times[used - 1] : t[0],
                        t[n - 1],
                        used > 0 ? OptionalDouble.of(temperatures[used - 1]) : OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        cause,
                        excluded));
            }
            return new Recording(
                    Arrays.copyOf(times, used), Arrays.copyOf(temperatures, used), unread, t[0], t[n - 1], n);
        }

        private @Nullable Cause fault(int i, int before, double[] times, double[] used) {
            double value = y[i];
            if (Double.isNaN(value)) {
                return Cause.NO_READING;
            }
            if (value == NO_SENSOR_C || value < plausible.lowestC() || value > plausible.highestC()) {
                return Cause.FAULT_VALUE;
            }
            if (before < 0) {
                return value == POWER_ON_C && startsAtPowerOn(i) ? Cause.FAULT_VALUE : null;
            }
            double step = Math.abs(value - used[before]);
            if (value == POWER_ON_C && step > POWER_ON_STEP_K) {
                return Cause.FAULT_VALUE;
            }
            return step > plausible.stepK() + plausible.fastestKPerS() * (t[i] - times[before]) ? Cause.JUMP : null;
        }

        /** Whether a recording that begins with exactly that value goes on elsewhere. */
        private boolean startsAtPowerOn(int i) {
            int next = i + 1;
            while (next < y.length && (y[next] == POWER_ON_C || Double.isNaN(y[next]))) {
                next++;
            }
            return next < y.length && Math.abs(y[next] - POWER_ON_C) > POWER_ON_STEP_K;
        }

        /** The last reading of a run that is stuck; the reading itself where it is not. */
        private int stuckUntil(int i, int before, double[] times, double[] used) {
            boolean follows = before >= 0 && times[before] == t[i - 1];
            if (!follows || y[i] == y[i - 1] || i + 1 == y.length || y[i + 1] != y[i]) {
                return i;
            }
            int last = i + 1;
            while (last + 1 < y.length && y[last + 1] == y[i]) {
                last++;
            }
            if (t[last] - t[i] < plausible.stuckS()) {
                return i;
            }
            int earlier = before;
            while (earlier > 0 && t[i] - times[earlier] < Plausibility.STUCK_LOOKBACK_S) {
                earlier--;
            }
            return Math.abs(y[i] - used[earlier]) >= plausible.stuckAfterK() ? last : i;
        }
    }
}
