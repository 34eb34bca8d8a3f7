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
        Window window = new Window(core);
        for (int i = 0; i < pieces; i++) {
            double end = core.time(i + 1);
            boolean cooling = core.temperatureC(i + 1) < window.highestBefore(i + 1) - FALL_K;
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

    /**
     * The window that ends at a sample, moved forward sample by sample: it keeps those samples that no later one exceeds,
     * so that a log of many readings costs one pass.
     */
    private static final class Window {

        private final PointHistory core;
        private final int[] kept;
        private int first;
        private int end;
        private int added;

        Window(PointHistory core) {
            this.core = core;
            this.kept = new int[core.samples()];
        }

        /** The highest temperature [C] of the window that ends at a sample; samples are asked for in their order. */
        double highestBefore(int sample) {
            double from = core.time(sample) - WINDOW;
            for (; added <= sample; added++) {
                while (end > first && core.temperatureC(kept[end - 1]) <= core.temperatureC(added)) {
                    end--;
                }
                kept[end++] = added;
            }
            while (core.time(kept[first]) < from) {
                first++;
            }
            return Math.max(core.atC(from), core.temperatureC(kept[first]));
        }
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

    /** Credited seconds at or above each of some rising temperatures up to a time. */
    double[] dwells(PointHistory core, double[] levelsC, double until) {
        double[] above = new double[levelsC.length];
        double[] dwells = new double[levelsC.length];
        for (int i = 0; i < parts && from[i] < until; i++) {
            core.sortSeconds(levelsC, above, dwells, from[i], Math.min(to[i], until));
        }
        double sum = 0.0;
        for (int level = levelsC.length - 1; level >= 0; level--) {
            sum += above[level];
            dwells[level] += sum;
        }
        return dwells;
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
            missing -= core.secondsAtOrAbove(levelC, from[i], until);
        }
        return Double.POSITIVE_INFINITY;
    }
}
