package dev.slowpoint.heat;

import java.util.Arrays;

/**
 * The running integral of a rate law over a temperature history.
 *
 * <p>Doses add up: over ramps and holds, over two cooks, over the nodes of a mean.
 */
public final class Dose {

    /** Nodes of the three-point Gauss rule on [0, 1]; the rule is exact to the fifth degree. */
    private static final double GAUSS_X = 0.1127016653792583;

    private static final double OUTER_W = 5.0 / 18.0;

    private static final double MIDDLE_W = 8.0 / 18.0;

    /**
     * The largest change of temperature [K] that one application of the rule spans: the steepest law of the field doubles
     * each 1.5 K, and there the rule errs by 3e-4 of the piece.
     */
    private static final double WIDEST_SPAN_K = 3.0;

    /** Over a change of temperature [K] this small the middle stands for all: a rate errs there by less than 1e-4. */
    private static final double PLATEAU_K = 0.05;

    /** A piece that gives less than this share of what follows it is read in its middle alone. */
    private static final double NEGLIGIBLE = 1e-7;

    private final RateLaw law;
    private final PointHistory[] histories;
    private final double[] weights;
    private final double[] cumulative;

    private Dose(RateLaw law, PointHistory[] histories, double[] weights) {
        this.law = law;
        this.histories = histories;
        this.weights = weights;
        this.cumulative = new double[histories[0].samples()];
        double[] breaks = law.breaksC();
        for (int h = 0; h < histories.length; h++) {
            add(breaks, histories[h], weights[h]);
        }
        for (int i = 1; i < cumulative.length; i++) {
            cumulative[i] += cumulative[i - 1];
        }
    }

    /** Integrates a law over a history. */
    public static Dose of(RateLaw law, PointHistory history) {
        return new Dose(law, new PointHistory[] {history}, new double[] {1.0});
    }

    /** The weighted sum of the doses of several points with the same sample times. */
    static Dose weighted(RateLaw law, PointHistory[] histories, double[] weights) {
        return new Dose(law, histories, weights);
    }

    /** The dose over the whole history. */
    public double total() {
        return cumulative[cumulative.length - 1];
    }

    /** The dose from the start to a time [s]; the total after the end. */
    public double at(double time) {
        PointHistory clock = histories[0];
        if (time <= clock.start()) {
            return 0.0;
        }
        if (time >= clock.end()) {
            return total();
        }
        int piece = clock.pieceAt(time);
        return cumulative[piece] + inPiece(piece, clock.time(piece), time);
    }

    /** The first time [s] at which the dose is at or above a threshold; infinity when it stays below. */
    public double timeOf(double threshold) {
        PointHistory clock = histories[0];
        if (threshold <= 0.0) {
            return clock.start();
        }
        if (!(total() >= threshold)) {
            return Double.POSITIVE_INFINITY;
        }
        int found = Arrays.binarySearch(cumulative, threshold);
        int next = found >= 0 ? found : -found - 1;
        int piece = Math.max(next - 1, 0);
        double low = clock.time(piece);
        double high = clock.time(piece + 1);
        double doseLow = cumulative[piece];
        double doseHigh = cumulative[piece + 1];
        for (int i = 0; i < 60 && high - low > 1e-7 * (1.0 + high); i++) {
            double share = (threshold - doseLow) / (doseHigh - doseLow);
            double guess = low + Math.min(Math.max(share, 0.02), 0.98) * (high - low);
            double dose = cumulative[piece] + inPiece(piece, clock.time(piece), guess);
            if (dose >= threshold) {
                high = guess;
                doseHigh = dose;
            } else {
                low = guess;
                doseLow = dose;
            }
        }
        return high;
    }

    /** Adds what one point collects in each piece, from the last piece to the first: most of a dose comes late. */
    private void add(double[] breaks, PointHistory history, double weight) {
        double collected = 0.0;
        for (int piece = cumulative.length - 2; piece >= 0; piece--) {
            double gained = integral(
                    law, breaks, history, piece, history.time(piece), history.time(piece + 1), NEGLIGIBLE * collected);
            collected += gained;
            cumulative[piece + 1] += weight * gained;
        }
    }

    private double inPiece(int piece, double from, double to) {
        double[] breaks = law.breaksC();
        double sum = 0.0;
        for (int h = 0; h < histories.length; h++) {
            sum += weights[h] * integral(law, breaks, histories[h], piece, from, to, 0.0);
        }
        return sum;
    }

    private static double integral(
            RateLaw law, double[] breaks, PointHistory history, int piece, double from, double to, double negligible) {
        if (breaks.length == 0) {
            return smooth(law, history, piece, from, to, negligible);
        }
        double start = from;
        double sum = 0.0;
        double fromC = history.inPieceC(piece, from);
        double toC = history.inPieceC(piece, to);
        boolean rising = toC >= fromC;
        for (int i = 0; i < breaks.length; i++) {
            double level = breaks[rising ? i : breaks.length - 1 - i];
            if (level > Math.min(fromC, toC) && level < Math.max(fromC, toC)) {
                double at = Math.min(Math.max(history.crossing(piece, level), start), to);
                sum += smooth(law, history, piece, start, at, negligible);
                start = at;
            }
        }
        return sum + smooth(law, history, piece, start, to, negligible);
    }

    private static double smooth(
            RateLaw law, PointHistory history, int piece, double from, double to, double negligible) {
        if (!(to > from)) {
            return 0.0;
        }
        return history.cubic(piece, from, to).integral(law, to - from, negligible);
    }

    /** Part of a history on which the temperature is a cubic and the law is smooth; {@code x} runs from 0 to 1. */
    record Cubic(double startC, double riseK, double bendK, double turnK) {

        private double atC(double x) {
            return startC + x * (riseK + (1.0 - x) * (bendK * (1.0 - x) + turnK * x));
        }

        private double integral(RateLaw law, double duration, double negligible) {
            double middle = law.perSecond(atC(0.5)) * duration;
            double changeK = Math.abs(riseK);
            if (changeK < PLATEAU_K || middle < negligible) {
                return middle;
            }
            if (changeK < WIDEST_SPAN_K) {
                double outer = law.perSecond(atC(GAUSS_X)) + law.perSecond(atC(1.0 - GAUSS_X));
                return MIDDLE_W * middle + OUTER_W * outer * duration;
            }
            int parts = 1 + (int) (changeK / WIDEST_SPAN_K);
            double part = 1.0 / parts;
            double sum = 0.0;
            for (int i = 0; i < parts; i++) {
                double left = i * part;
                sum += MIDDLE_W * law.perSecond(atC(left + 0.5 * part))
                        + OUTER_W
                                * (law.perSecond(atC(left + GAUSS_X * part))
                                        + law.perSecond(atC(left + (1.0 - GAUSS_X) * part)));
            }
            return sum * part * duration;
        }
    }
}
