package dev.slowpoint.plan;

/**
 * A time with its range over the stated tolerances [s]; infinity stands for never.
 *
 * @param nominal everything as stated
 * @param early everything on the fast side
 * @param late everything on the slow side
 */
public record Span(double nominal, double early, double late) {

    /** Never, whatever the tolerances. */
    public static final Span NEVER =
            new Span(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    /** A length of time whose least and most over the corners stand for early and late. */
    static Span between(double nominal, double oneWay, double otherWay) {
        Range range = Range.of(nominal, oneWay, otherWay);
        return new Span(range.nominal(), range.low(), range.high());
    }
}
