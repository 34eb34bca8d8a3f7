package dev.slowpoint.heat;

/**
 * The one-dimensional body that the solver runs in place of a body with ends.
 *
 * <p>Its shape exponent is calibrated: with constant properties its middle passes the last twentieth of a temperature step
 * at the very time of the exact solution, which for a body with ends is the product of one-dimensional ones. A shape
 * exponent from surface over volume would be 23 to 43 percent too fast, which is dangerous.
 *
 * <p>At other temperatures it errs a little, first early and then late. By how much is computed for each body, and taken to
 * the safe side by whoever asks.
 *
 * @param reach half the shortest size [m]
 * @param shapeExponent of the cross-section [-]
 * @param biot of the surroundings it was made for, infinity for a held surface
 * @param earlyBy the largest share of time by which its middle is early, against the exact solution, from three tenths of a
 *     temperature step left to a fiftieth; zero for a body without ends
 * @param lateBy the same for being late
 */
public record StandIn(double reach, double shapeExponent, double biot, double earlyBy, double lateBy) {

    /** What is left of a temperature step where the calibration is exact. */
    static final double EXACT_AT = 0.05;

    /**
     * What is left where times are the same while a piece cools: there the limits of cooling rules lie, and from there on
     * the stand-in is late, which is the safe side.
     */
    static final double COOLING_EXACT_AT = 0.3;

    /**
     * What varying properties and freezing add to the error either way, as a share of time: fitted to the comparison with a
     * three-dimensional solution of lean meat, thawed and frozen, in {@code BodiesWithEndsTest}.
     */
    static final double VARYING_PROPERTIES = 0.02;

    /** What a calibration may miss of the temperature step. */
    private static final double CLOSE_ENOUGH = 1e-8;

    private static final double[] CHECKED_AT = {0.3, 0.2, 0.1, 0.02};

    /** A body without ends is its own stand-in. */
    static StandIn itself(double reach, double shapeExponent, double biot) {
        return new StandIn(reach, shapeExponent, biot, 0.0, 0.0);
    }

    /** The stand-in with its largest error taken to the late side: everything takes longer by the share it may be early. */
    public StandIn late() {
        return turned(1.0);
    }

    /** The stand-in with its largest error taken to the early side. */
    public StandIn early() {
        return turned(-1.0);
    }

    /** The stand-in with a share of its error taken to one side: from -1 (early) over 0 (as it is) to 1 (late). */
    public StandIn turned(double way) {
        return stretched(way >= 0.0 ? 1.0 + way * earlyBy : 1.0 / (1.0 - way * lateBy));
    }

    /** At the same Biot number times go with the square of the reach. */
    private StandIn stretched(double times) {
        return times == 1.0 ? this : new StandIn(reach * Math.sqrt(times), shapeExponent, biot, earlyBy, lateBy);
    }

    /** The stand-in of a body of which the exact solution is known. */
    static StandIn of(ProductSolution exact, double reach, double biot) {
        double fourier = exact.fourierAt(EXACT_AT);
        double exponent = exponentFor(biot, fourier);
        RadialSeries series = new RadialSeries(exponent, biot);
        double early = 0.0;
        double late = 0.0;
        for (double left : CHECKED_AT) {
            double ratio = exact.fourierAt(left) / fourierAt(series, left);
            early = Math.max(early, ratio - 1.0);
            late = Math.max(late, 1.0 / ratio - 1.0);
        }
        return new StandIn(reach, exponent, biot, early + VARYING_PROPERTIES, late + VARYING_PROPERTIES);
    }

    /**
     * The Biot number that the stand-in must be given in other surroundings, so that there, too, its middle takes the exact
     * time; infinite when even that is too slow, which errs to the late side.
     *
     * @param fourier the exact time to {@code left}, as a Fourier number
     * @param left what is left of the temperature step then
     */
    double equalTimeBiot(double fourier, double left) {
        if (new RadialSeries(shapeExponent, Double.POSITIVE_INFINITY).atCentre(fourier) >= left) {
            return Double.POSITIVE_INFINITY;
        }
        double low = StrictMath.log(1e-4);
        double high = StrictMath.log(1e4);
        double tooWarm = 1.0;
        double tooCold = -left;
        for (int i = 0; i < 60 && high - low > 1e-7; i++) {
            double share = i % 3 == 2 ? 0.5 : tooWarm / (tooWarm - tooCold);
            double middle = low + Math.min(Math.max(share, 0.05), 0.95) * (high - low);
            double found = new RadialSeries(shapeExponent, StrictMath.exp(middle)).atCentre(fourier) - left;
            if (found > 0.0) {
                low = middle;
                tooWarm = found;
            } else {
                high = middle;
                tooCold = found;
            }
        }
        return StrictMath.exp(high);
    }

    /** Shape exponent with which the middle is at {@link #EXACT_AT} at a Fourier number; by false position (Illinois). */
    private static double exponentFor(double biot, double fourier) {
        double low = 0.0;
        double high = 2.2;
        double tooWarm = new RadialSeries(low, biot).atCentre(fourier) - EXACT_AT;
        if (tooWarm <= 0.0) {
            return 0.0;
        }
        double tooCold = new RadialSeries(high, biot).atCentre(fourier) - EXACT_AT;
        for (int i = 0; i < 40; i++) {
            double middle = low + (high - low) * tooWarm / (tooWarm - tooCold);
            double found = new RadialSeries(middle, biot).atCentre(fourier) - EXACT_AT;
            if (Math.abs(found) < CLOSE_ENOUGH || high - low < CLOSE_ENOUGH) {
                return middle;
            }
            if (found > 0.0) {
                low = middle;
                tooWarm = found;
                tooCold *= 0.5;
            } else {
                high = middle;
                tooCold = found;
                tooWarm *= 0.5;
            }
        }
        return low;
    }

    static double fourierAt(RadialSeries series, double left) {
        return ProductSolution.crossing(series::atCentre, left, series.slowestRate());
    }
}
