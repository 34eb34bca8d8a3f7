package dev.slowpoint.api;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * How numbers are rounded on their way out. One rule for each kind of quantity, never more than six significant digits,
 * and never in favour of safety: what was achieved and what is left over is rounded down, what could go wrong is rounded
 * up. Everything else is rounded to the nearest. Every method refuses what is not finite.
 */
final class Figures {

    private static final int MOST_DIGITS = 6;

    private Figures() {}

    /** A temperature [C], two decimals. */
    static double temperatureC(double value) {
        return rounded(value, 2, RoundingMode.HALF_EVEN);
    }

    /** A plane of a table [mm or C], three decimals: where it lies is told as it was counted with. */
    static double node(double value) {
        return rounded(value, 3, RoundingMode.HALF_EVEN);
    }

    /** A margin in kelvin, two decimals, down. */
    static double marginK(double value) {
        return rounded(value, 2, RoundingMode.FLOOR);
    }

    /** A margin in millimetres, one decimal, down. */
    static double marginMm(double value) {
        return rounded(value, 1, RoundingMode.FLOOR);
    }

    /** A margin as a ratio, two decimals, down. */
    static double marginRatio(double value) {
        return rounded(value, 2, RoundingMode.FLOOR);
    }

    /** The probability of missing a target, three decimals, up. */
    static double missProbability(double value) {
        return rounded(value, 3, RoundingMode.CEILING);
    }

    /** A required log reduction, two decimals. */
    static double requiredLog10(double value) {
        return rounded(value, 2, RoundingMode.HALF_EVEN);
    }

    /** An achieved log reduction or its margin, two decimals, down. */
    static double achievedLog10(double value) {
        return rounded(value, 2, RoundingMode.FLOOR);
    }

    /** A predicted growth in decimal orders, two decimals, up. */
    static double growthLog10(double value) {
        return rounded(value, 2, RoundingMode.CEILING);
    }

    /** A depth in millimetres, one decimal. */
    static double depthMm(double value) {
        return rounded(value, 1, RoundingMode.HALF_EVEN);
    }

    /** An end of a band of sizes in millimetres, four decimals: sixteenths of an inch have as many. */
    static double bandMm(double value) {
        return rounded(value, 4, RoundingMode.HALF_EVEN);
    }

    /** A volume in litres, one decimal, up. */
    static double volumeL(double value) {
        return rounded(value, 1, RoundingMode.CEILING);
    }

    /** Water to pour in litres, two decimals. */
    static double litres(double value) {
        return rounded(value, 2, RoundingMode.HALF_EVEN);
    }

    /** A share of one, four decimals. */
    static double share(double value) {
        return rounded(value, 4, RoundingMode.HALF_EVEN);
    }

    /** Days that food may be kept, two decimals, down. */
    static double days(double value) {
        return rounded(value, 2, RoundingMode.FLOOR);
    }

    /** The largest share of an error in percent, one decimal, up. */
    static double errorPercent(double value) {
        return rounded(value, 1, RoundingMode.CEILING);
    }

    /** The error of an instrument in kelvin, two decimals, up. */
    static double errorK(double value) {
        return rounded(value, 2, RoundingMode.CEILING);
    }

    /** A length of time in seconds that need not be whole, one decimal, up. */
    static double gapS(double value) {
        return rounded(value, 1, RoundingMode.CEILING);
    }

    /** A share in percent, one decimal. */
    static double percent(double value) {
        return rounded(value, 1, RoundingMode.HALF_EVEN);
    }

    // From the exact value of the double: its printed digits depend on the age of the JVM.
    private static double rounded(double value, int decimals, RoundingMode mode) {
        BigDecimal figure = decimal(value).setScale(decimals, mode);
        return rounded(figure.doubleValue(), new MathContext(MOST_DIGITS, mode));
    }

    private static double rounded(double value, MathContext digits) {
        return decimal(value).round(digits).doubleValue() + 0.0;
    }

    // From the exact value of the double, whose printed digits depend on the age of the JVM; twelve digits, so that a
    // figure that has been rounded once stays as it is.
    private static BigDecimal decimal(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(value + " must not leave the service. Maybe a division by zero?");
        }
        return new BigDecimal(value).round(new MathContext(12, RoundingMode.HALF_EVEN));
    }
}
