package dev.slowpoint.texture;

import java.util.function.DoubleUnaryOperator;

/**
 * A smooth function of temperature as cubic pieces of equal width, each through four exact values; several times faster
 * than the exponentials behind it. With pieces much narrower than the scale on which the function changes the relative
 * error is far below that of any constant of texture (tested). Outside its range the function itself answers.
 */
final class CubicTable {

    private final DoubleUnaryOperator exact;
    private final double from;
    private final double piecesPerUnit;
    private final int pieces;
    private final double[] coefficients;

    private CubicTable(DoubleUnaryOperator exact, double from, double piecesPerUnit, double[] coefficients) {
        this.exact = exact;
        this.from = from;
        this.piecesPerUnit = piecesPerUnit;
        this.pieces = coefficients.length / 4;
        this.coefficients = coefficients;
    }

    /** A table of {@code function} over {@code [from, to)} in pieces of about {@code step}. */
    static CubicTable of(DoubleUnaryOperator function, double from, double to, double step) {
        int pieces = (int) Math.round((to - from) / step);
        double width = (to - from) / pieces;
        double[] c = new double[4 * pieces];
        for (int i = 0; i < pieces; i++) {
            double left = from + i * width;
            double a = function.applyAsDouble(left);
            double b = function.applyAsDouble(left + width / 3.0);
            double d = function.applyAsDouble(left + 2.0 * width / 3.0);
            double e = function.applyAsDouble(left + width);
            c[4 * i] = a;
            c[4 * i + 1] = (-11.0 * a + 18.0 * b - 9.0 * d + 2.0 * e) / 2.0;
            c[4 * i + 2] = 9.0 * (2.0 * a - 5.0 * b + 4.0 * d - e) / 2.0;
            c[4 * i + 3] = 9.0 * (-a + 3.0 * b - 3.0 * d + e) / 2.0;
        }
        return new CubicTable(function, from, 1.0 / width, c);
    }

    /** The value at a temperature. */
    double at(double temperatureC) {
        double x = (temperatureC - from) * piecesPerUnit;
        if (!(x >= 0.0 && x < pieces)) {
            return exact.applyAsDouble(temperatureC);
        }
        int piece = (int) x;
        double u = x - piece;
        int i = 4 * piece;
        return coefficients[i] + u * (coefficients[i + 1] + u * (coefficients[i + 2] + u * coefficients[i + 3]));
    }
}
