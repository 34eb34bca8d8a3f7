package dev.slowpoint.plan;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.SoFar.CoreReading;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * Works out from readings of the core which piece explains them: how thick it is, or how well the water reaches it. One
 * reading cannot tell the two apart, and need not: both explanations are carried on, and the safe side of them counts.
 *
 * @param readings of a probe, in order of time
 * @param course from a setting to the history of its core until a time
 * @param thinnest the least size looked for [m]
 * @param thickest the greatest size looked for [m]
 */
record CoreFit(List<CoreReading> readings, Course course, double thinnest, double thickest) {

    /** The least and the greatest film looked for [W/m2K]: far beyond all baths on record (our own limits). */
    private static final double WEAKEST_FILM = 15.0;

    private static final double STRONGEST_FILM = 2000.0;

    /** How closely a size or a film is found, as a share of it. */
    private static final double CLOSE = 1e-4;

    /** How closely a reading is met [K]. */
    private static final double CLOSE_K = 0.002;

    private static final double GOLDEN = 0.6180339887498949;

    /** From a setting to what its core goes through. */
    interface Course {
        PointHistory core(Setting setting, double until);
    }

    /**
     * One explanation.
     *
     * @param setting that explains the readings
     * @param missK how far it misses the worst of them [K]
     * @param byFilm whether it takes the size as told and the water as stronger or weaker
     */
    record Explanation(Setting setting, double missK, boolean byFilm) {}

    /** The size that explains readings shifted by some kelvin, with the film of a setting. */
    Explanation bySize(Setting setting, double shiftK) {
        return explain(thinnest, thickest, across -> setting.acrossOf(across), shiftK, false);
    }

    /** The film that explains readings shifted by some kelvin, with the size of a setting. */
    Explanation byFilm(Setting setting, double shiftK) {
        return explain(WEAKEST_FILM, STRONGEST_FILM, film -> setting.withFilm(film), shiftK, true);
    }

    /** How far the core of a setting misses the worst reading [K]. */
    double missK(Setting setting) {
        return worst(setting, 0.0);
    }

    private Explanation explain(
            double low, double high, DoubleFunction<Setting> settingOf, double shiftK, boolean byFilm) {
        double found = readings.size() == 1
                ? root(low, high, settingOf, shiftK)
                : least(StrictMath.log(low), StrictMath.log(high), settingOf, shiftK);
        Setting setting = settingOf.apply(found);
        return new Explanation(setting, worst(setting, shiftK), byFilm);
    }

    private List<Double> misses(Setting setting, double shiftK) {
        double last = readings.get(readings.size() - 1).at();
        PointHistory core = course.core(setting, last + 1.0);
        List<Double> misses = new ArrayList<>();
        for (CoreReading reading : readings) {
            misses.add(core.atC(reading.at()) - reading.coreC() - shiftK);
        }
        return misses;
    }

    private double worst(Setting setting, double shiftK) {
        return misses(setting, shiftK).stream().mapToDouble(Math::abs).max().orElseThrow();
    }

    /** Where one reading is met; at an end where nothing within does. */
    private double root(double low, double high, DoubleFunction<Setting> settingOf, double shiftK) {
        double left = low;
        double right = high;
        double atLeft = misses(settingOf.apply(left), shiftK).get(0);
        double atRight = misses(settingOf.apply(right), shiftK).get(0);
        if (atLeft > 0.0 == atRight > 0.0) {
            return Math.abs(atLeft) < Math.abs(atRight) ? left : right;
        }
        // By false position (Illinois), in the logarithm.
        double x = StrictMath.log(left);
        double y = StrictMath.log(right);
        double atX = atLeft;
        double atY = atRight;
        boolean keptX = false;
        boolean keptY = false;
        while (y - x > CLOSE) {
            double share = Math.min(Math.max(atX / (atX - atY), 0.01), 0.99);
            double middle = x + share * (y - x);
            double found =
                    misses(settingOf.apply(StrictMath.exp(middle)), shiftK).get(0);
            if (Math.abs(found) < CLOSE_K) {
                return StrictMath.exp(middle);
            }
            if (found > 0.0 == atLeft > 0.0) {
                x = middle;
                atX = found;
                atY *= keptY ? 0.5 : 1.0;
                keptY = true;
                keptX = false;
            } else {
                y = middle;
                atY = found;
                atX *= keptX ? 0.5 : 1.0;
                keptX = true;
                keptY = false;
            }
        }
        return StrictMath.exp(0.5 * (x + y));
    }

    /** Least squares of all readings, by golden sections in the logarithm: each grows with the size, or shrinks with it. */
    private double least(double low, double high, DoubleFunction<Setting> settingOf, double shiftK) {
        double left = low;
        double right = high;
        double inner = right - GOLDEN * (right - left);
        double outer = left + GOLDEN * (right - left);
        double atInner = squares(settingOf.apply(StrictMath.exp(inner)), shiftK);
        double atOuter = squares(settingOf.apply(StrictMath.exp(outer)), shiftK);
        while (right - left > CLOSE) {
            if (atInner < atOuter) {
                right = outer;
                outer = inner;
                atOuter = atInner;
                inner = right - GOLDEN * (right - left);
                atInner = squares(settingOf.apply(StrictMath.exp(inner)), shiftK);
            } else {
                left = inner;
                inner = outer;
                atInner = atOuter;
                outer = left + GOLDEN * (right - left);
                atOuter = squares(settingOf.apply(StrictMath.exp(outer)), shiftK);
            }
        }
        return StrictMath.exp(0.5 * (left + right));
    }

    private double squares(Setting setting, double shiftK) {
        double sum = 0.0;
        for (double miss : misses(setting, shiftK)) {
            sum += miss * miss;
        }
        return sum;
    }
}
