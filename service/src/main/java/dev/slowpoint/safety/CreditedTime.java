package dev.slowpoint.safety;

import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;

/**
 * The parts of a history that earn kill: all but the cooling.
 *
 * <p>A piece of the history is cooling when at its end the core is more than 1 K colder than it was at any time of the ten
 * minutes before. So a fall earns at most its first kelvin; a bath that swings, a hold, a second cook and what follows a
 * power cut earn as usual, at the latest ten minutes after the fall has stopped. Looks back only: what happens later
 * never takes credit away. Our choice (no source): the published rules leave the cooling side to an expert.
 */
final class CreditedTime {

    private static final double FALL_K = 1.0;
    private static final double WINDOW = 600.0;

    private final double[] from;
    private final double[] to;
    private final int parts;

    private CreditedTime(double[] from, double[] to, int parts) {
        this.from = from;
        this.to = to;
        this.parts = parts;
    }

    /** The parts of a history. */
    static CreditedTime of(PointHistory core) {
        int pieces = core.samples() - 1;
        double[] from = new double[pieces];
        double[] to = new double[pieces];
        int parts = 0;
        boolean open = false;
        for (int i = 0; i < pieces; i++) {
            double end = core.time(i + 1);
            boolean cooling = core.temperatureC(i + 1) < highestBefore(core, i + 1) - FALL_K;
            if (cooling) {
                open = false;
            } else if (open) {
                to[parts - 1] = end;
            } else {
                from[parts] = core.time(i);
                to[parts] = end;
                parts++;
                open = true;
            }
        }
        return new CreditedTime(from, to, parts);
    }

    /** The highest temperature [C] of the window that ends at a sample. */
    private static double highestBefore(PointHistory core, int sample) {
        double from = core.time(sample) - WINDOW;
        double highest = core.atC(from);
        for (int i = sample; i >= 0 && core.time(i) >= from; i--) {
            highest = Math.max(highest, core.temperatureC(i));
        }
        return highest;
    }

    /** The credited dose up to a time. */
    double dose(Dose dose, double until) {
        double sum = 0.0;
        for (int i = 0; i < parts && from[i] < until; i++) {
            sum += dose.at(Math.min(to[i], until)) - dose.at(from[i]);
        }
        return sum;
    }

    /** The first time at which the credited dose is at or above a threshold; infinity when it stays below. */
    double timeOfDose(Dose dose, double threshold) {
        double sum = 0.0;
        for (int i = 0; i < parts; i++) {
            double before = dose.at(from[i]);
            double gain = dose.at(to[i]) - before;
            if (sum + gain >= threshold) {
                return Math.min(Math.max(dose.timeOf(before + threshold - sum), from[i]), to[i]);
            }
            sum += gain;
        }
        return Double.POSITIVE_INFINITY;
    }

    /** Credited seconds at or above a temperature up to a time. */
    double dwell(PointHistory core, double levelC, double until) {
        double sum = 0.0;
        for (int i = 0; i < parts && from[i] < until; i++) {
            sum += core.secondsAtOrAbove(levelC, Math.min(to[i], until)) - core.secondsAtOrAbove(levelC, from[i]);
        }
        return sum;
    }

    /**
     * The first time up to {@code latest} at which a temperature was held for some seconds in all; infinity when it was
     * not. Zero seconds are held as soon as the temperature is reached.
     */
    double timeOfDwell(PointHistory core, double levelC, double seconds, double latest) {
        if (seconds == 0.0) {
            double reached = core.firstAtOrAbove(levelC);
            return reached <= latest ? reached : Double.POSITIVE_INFINITY;
        }
        double missing = seconds;
        for (int i = 0; i < parts && from[i] < latest; i++) {
            double until = Math.min(to[i], latest);
            double held = core.timeOfSecondsAtOrAbove(levelC, missing, from[i], until);
            if (held <= latest) {
                return held;
            }
            missing -= core.secondsAtOrAbove(levelC, until) - core.secondsAtOrAbove(levelC, from[i]);
        }
        return Double.POSITIVE_INFINITY;
    }
}
