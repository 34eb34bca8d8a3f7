package dev.slowpoint.heat;

import java.util.Arrays;

/**
 * The temperature of one point (or of a mean) over time: samples with slopes, joined by cubic Hermite pieces.
 *
 * <p>Samples lie as densely as the solver needed them; between them the pieces are as accurate as the samples. A jump of
 * the surroundings between two stages gives two samples at the same time.
 */
public final class PointHistory {

    private final double[] times;
    private final double[] temperaturesC;
    private final double[] slopes;
    private final int first;
    private final int stride;

    /**
     * A history from samples.
     *
     * @param times [s], never falling, at least two
     * @param temperaturesC [C] at those times
     * @param slopes [K/s] at those times
     */
    public PointHistory(double[] times, double[] temperaturesC, double[] slopes) {
        if (times.length < 2 || temperaturesC.length != times.length || slopes.length != times.length) {
            throw new IllegalArgumentException(
                    "a history needs at least two samples and as many temperatures and slopes, got " + times.length
                            + ", " + temperaturesC.length + ", " + slopes.length);
        }
        for (int i = 1; i < times.length; i++) {
            if (!(times[i] >= times[i - 1])) {
                throw new IllegalArgumentException(
                        "time " + i + " = " + times[i] + " s falls behind " + times[i - 1] + " s");
            }
        }
        this.times = times.clone();
        this.temperaturesC = temperaturesC.clone();
        this.slopes = slopes.clone();
        this.first = 0;
        this.stride = 1;
    }

    /** One point out of samples of many, read in place: its first value and the distance to the next. */
    PointHistory(double[] times, double[] temperaturesC, double[] slopes, int first, int stride) {
        this.times = times;
        this.temperaturesC = temperaturesC;
        this.slopes = slopes;
        this.first = first;
        this.stride = stride;
    }

    /** A history that follows straight lines between the given points; for recorded logs and worked examples. */
    public static PointHistory straightLines(double[] times, double[] temperaturesC) {
        int pieces = times.length - 1;
        double[] t = new double[2 * pieces];
        double[] y = new double[2 * pieces];
        double[] s = new double[2 * pieces];
        for (int i = 0; i < pieces; i++) {
            double slope = (temperaturesC[i + 1] - temperaturesC[i]) / (times[i + 1] - times[i]);
            t[2 * i] = times[i];
            t[2 * i + 1] = times[i + 1];
            y[2 * i] = temperaturesC[i];
            y[2 * i + 1] = temperaturesC[i + 1];
            s[2 * i] = slope;
            s[2 * i + 1] = slope;
        }
        return new PointHistory(t, y, s);
    }

    /** The same history, warmer by a difference [K]. */
    public PointHistory warmerBy(double differenceK) {
        double[] t = new double[times.length];
        double[] s = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            t[i] = temperatureC(i) + differenceK;
            s[i] = slope(i);
        }
        return new PointHistory(times, t, s, 0, 1);
    }

    /** Number of samples, at least two. */
    public int samples() {
        return times.length;
    }

    /** Time of a sample [s]. */
    public double time(int sample) {
        return times[sample];
    }

    /** Temperature of a sample [C]. */
    public double temperatureC(int sample) {
        return temperaturesC[first + sample * stride];
    }

    /** Slope at a sample [K/s]. */
    private double slope(int sample) {
        return slopes[first + sample * stride];
    }

    /** Start of the history [s]. */
    public double start() {
        return times[0];
    }

    /** End of the history [s]. */
    public double end() {
        return times[times.length - 1];
    }

    /** Temperature [C] at a time [s]; before the start the first sample, after the end the last. */
    public double atC(double time) {
        if (time <= times[0]) {
            return temperatureC(0);
        }
        int last = times.length - 1;
        if (time >= times[last]) {
            return temperatureC(last);
        }
        return inPieceC(pieceAt(time), time);
    }

    /** The highest sample [C]. */
    public double highestC() {
        double highest = temperatureC(0);
        for (int i = 1; i < times.length; i++) {
            highest = Math.max(highest, temperatureC(i));
        }
        return highest;
    }

    /** The first time [s] at which the temperature is at or above {@code levelC}; infinity when it never is. */
    public double firstAtOrAbove(double levelC) {
        return firstAtOrAbove(levelC, 0);
    }

    /** The same from a sample on. */
    public double firstAtOrAbove(double levelC, int sample) {
        if (temperatureC(sample) >= levelC) {
            return times[sample];
        }
        for (int i = sample; i + 1 < times.length; i++) {
            if (temperatureC(i + 1) >= levelC) {
                return crossing(i, levelC);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /** Seconds up to {@code until} during which the temperature lies in {@code [lowC, highC)}. */
    public double secondsBetween(double lowC, double highC, double until) {
        return secondsAtOrAbove(lowC, until) - secondsAtOrAbove(highC, until);
    }

    /** Seconds up to {@code until} during which the temperature is at or above {@code levelC}. */
    public double secondsAtOrAbove(double levelC, double until) {
        double sum = 0.0;
        for (int i = 0; i + 1 < times.length && times[i] < until; i++) {
            double to = Math.min(times[i + 1], until);
            sum += secondsAtOrAbove(levelC, i, times[i], to);
        }
        return sum;
    }

    /** Seconds from {@code from} to {@code until} during which the temperature is at or above {@code levelC}. */
    public double secondsAtOrAbove(double levelC, double from, double until) {
        double sum = 0.0;
        for (int i = pieceAt(from); i + 1 < times.length && times[i] < until; i++) {
            sum += secondsAtOrAbove(levelC, i, Math.max(times[i], from), Math.min(times[i + 1], until));
        }
        return sum;
    }

    /**
     * Sorts the seconds from {@code from} to {@code until} by levels, in one pass however many they are.
     *
     * @param levelsC rising [C]
     * @param above seconds spent wholly at or above a level and below the next are added to the element of that level
     * @param crossed where a piece passes a level, its seconds at or above it are added to the element of that level
     */
    public void sortSeconds(double[] levelsC, double[] above, double[] crossed, double from, double until) {
        for (int i = pieceAt(from); i + 1 < times.length && times[i] < until; i++) {
            double start = Math.max(times[i], from);
            double end = Math.min(times[i + 1], until);
            if (!(end > start)) {
                continue;
            }
            double startC = start == times[i] ? temperatureC(i) : inPieceC(i, start);
            double endC = end == times[i + 1] ? temperatureC(i + 1) : inPieceC(i, end);
            int found = Arrays.binarySearch(levelsC, Math.min(startC, endC));
            int level = found >= 0 ? found : -found - 2;
            if (level >= 0) {
                above[level] += end - start;
            }
            for (int next = level + 1; next < levelsC.length && levelsC[next] <= Math.max(startC, endC); next++) {
                crossed[next] += secondsAtOrAbove(levelsC[next], i, start, end);
            }
        }
    }

    /** Seconds from {@code from} to {@code until} during which the temperature is below {@code levelC}. */
    public double secondsBelow(double levelC, double from, double until) {
        double sum = 0.0;
        for (int i = pieceAt(from); i + 1 < times.length && times[i] < until; i++) {
            double start = Math.max(times[i], from);
            double end = Math.min(times[i + 1], until);
            if (end > start) {
                sum += end - start - secondsAtOrAbove(levelC, i, start, end);
            }
        }
        return sum;
    }

    /**
     * The first time [s] by which the temperature has been at or above {@code levelC} for {@code seconds} in all, counted
     * from {@code from}; infinity when that is not so by {@code until}.
     */
    public double timeOfSecondsAtOrAbove(double levelC, double seconds, double from, double until) {
        double missing = seconds;
        for (int i = pieceAt(from); i + 1 < times.length && times[i] < until; i++) {
            double start = Math.max(times[i], from);
            double end = Math.min(times[i + 1], until);
            double gained = secondsAtOrAbove(levelC, i, start, end);
            if (gained > 0.0 && gained >= missing) {
                // Where the piece rises through the level its last seconds count, where it falls its first.
                boolean rises = inPieceC(i, start) < levelC;
                return rises ? end - gained + missing : start + missing;
            }
            missing -= gained;
        }
        return Double.POSITIVE_INFINITY;
    }

    private double secondsAtOrAbove(double levelC, int piece, double from, double to) {
        if (!(to > from)) {
            return 0.0;
        }
        double fromC = from == times[piece] ? temperatureC(piece) : inPieceC(piece, from);
        double toC = to == times[piece + 1] ? temperatureC(piece + 1) : inPieceC(piece, to);
        boolean startsAbove = fromC >= levelC;
        boolean endsAbove = toC >= levelC;
        if (startsAbove && endsAbove) {
            return to - from;
        }
        if (startsAbove == endsAbove) {
            return 0.0;
        }
        double at = Math.min(Math.max(crossing(piece, levelC), from), to);
        return startsAbove ? at - from : to - at;
    }

    /** The piece that holds a time inside the history. */
    int pieceAt(double time) {
        int found = Arrays.binarySearch(times, time);
        int piece = found >= 0 ? found : -found - 2;
        return Math.min(Math.max(piece, 0), times.length - 2);
    }

    /** Temperature [C] inside a piece. */
    double inPieceC(int piece, double time) {
        double span = times[piece + 1] - times[piece];
        if (span <= 0.0) {
            return temperatureC(piece + 1);
        }
        double x = (time - times[piece]) / span;
        double rise = temperatureC(piece + 1) - temperatureC(piece);
        double a = slope(piece) * span - rise;
        double b = -slope(piece + 1) * span + rise;
        return temperatureC(piece) + x * (rise + (1.0 - x) * (a * (1.0 - x) + b * x));
    }

    /** A part of a piece, from one time to a later one [s], as a cubic of its own. */
    Dose.Cubic cubic(int piece, double from, double to) {
        double start = times[piece];
        double end = times[piece + 1];
        double span = end - start;
        double fromC = temperatureC(piece);
        double toC = temperatureC(piece + 1);
        double rise = toC - fromC;
        double bend = slope(piece) * span - rise;
        double turn = rise - slope(piece + 1) * span;
        if (from == start && to == end) {
            return new Dose.Cubic(fromC, rise, bend, turn);
        }
        double a = (from - start) / span;
        double b = (to - start) / span;
        double partFromC = inPieceC(piece, from);
        double partRise = inPieceC(piece, to) - partFromC;
        double width = b - a;
        double slopeA = rise + bend * (1.0 - a) * (1.0 - 3.0 * a) + turn * a * (2.0 - 3.0 * a);
        double slopeB = rise + bend * (1.0 - b) * (1.0 - 3.0 * b) + turn * b * (2.0 - 3.0 * b);
        return new Dose.Cubic(partFromC, partRise, slopeA * width - partRise, partRise - slopeB * width);
    }

    /**
     * Time [s] at which a piece whose ends lie on either side of a level passes it; by Newton's method, kept between the ends.
     */
    double crossing(int piece, double levelC) {
        double start = times[piece];
        double span = times[piece + 1] - start;
        double fromC = temperatureC(piece);
        double rise = temperatureC(piece + 1) - fromC;
        double bend = slope(piece) * span - rise;
        double turn = rise - slope(piece + 1) * span;
        double missing = levelC - fromC;
        boolean rising = rise > 0.0;
        double low = 0.0;
        double high = 1.0;
        double x = Math.min(Math.max(missing / rise, 0.0), 1.0);
        for (int i = 0; i < 60; i++) {
            double left = 1.0 - x;
            double above = x * (rise + left * (bend * left + turn * x)) - missing;
            if (above >= 0.0 == rising) {
                high = x;
            } else {
                low = x;
            }
            double slopeHere = rise + bend * left * (1.0 - 3.0 * x) + turn * x * (2.0 - 3.0 * x);
            double next = x - above / slopeHere;
            if (!(next >= low && next <= high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - x) < 1e-11) {
                return start + next * span;
            }
            x = next;
        }
        return start + high * span;
    }
}
