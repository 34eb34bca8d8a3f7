package dev.slowpoint.heat;

/**
 * The one-dimensional body that the solver runs in place of a body with ends.
 *
 * <p>Its shape exponent and its reach are calibrated: with constant properties and the film of the real body its middle
 * passes three tenths and a fiftieth of a temperature step at the very times of the exact solution, which for a body with
 * ends is the product of one-dimensional ones. Between the two, and below, it errs by a percent or two. A shape exponent
 * from surface over volume would be 23 to 43 percent too fast, which is dangerous; an exponent alone, with the reach of the
 * real body, meets one of the two times and misses the other by up to 9 percent.
 *
 * <p>By how much it errs elsewhere is computed for each body, and taken to the safe side by whoever asks.
 *
 * @param reach from its middle to its face [m]
 * @param shapeExponent of the cross-section [-]
 * @param biot of the real body in the surroundings it was made for, infinity for a held surface
 * @param stretch its reach as calibrated, over half the shortest size of the real body [-]
 * @param earlyBy the largest share of time by which its middle is early, against the exact solution, from a half of a
 *     temperature step left to a two-hundredth; zero for a body without ends
 * @param lateBy the same for being late
 */
public record StandIn(double reach, double shapeExponent, double biot, double stretch, double earlyBy, double lateBy) {

    /** What is left of a temperature step where the calibration is exact first. */
    static final double FIRST_EXACT_AT = 0.3;

    /** And where it is exact last. */
    static final double LAST_EXACT_AT = 0.02;

    /** What is left where times are the same in other surroundings than those it was made for, while a piece warms. */
    static final double EXACT_AT = 0.05;

    /**
     * What is left where times are the same in such surroundings while a piece cools: there the limits of cooling rules lie,
     * and from there on the stand-in is late, which is the safe side.
     */
    static final double COOLING_EXACT_AT = 0.3;

    /**
     * What varying properties and freezing add to the error either way, as a share of time: fitted to the comparison with a
     * three-dimensional solution of lean meat, thawed and frozen, in {@code BodiesWithEndsTest}.
     */
    static final double VARYING_PROPERTIES = 0.02;

    /**
     * The largest shape exponent that is looked for. Bodies in still air would ask for more; with this one they are early by
     * five percent at most, which is told.
     */
    static final double MOST_EXPONENT = 3.0;

    /** What a calibration may miss of what is left, as a share, at its last exact time. */
    private static final double CLOSE_ENOUGH = 1e-7;

    /** The same at its first. */
    private static final double CLOSELY = 1e-5;

    /** The same at its last, on the way. */
    private static final double ROUGHLY = 3e-3;

    /** From the first limit of a cooling rule to half a kelvin from the end of a step of a hundred. */
    private static final double[] CHECKED_AT = {0.5, 0.3, 0.2, 0.1, 0.05, 0.005};

    /** A body without ends is its own stand-in. */
    static StandIn itself(double reach, double shapeExponent, double biot) {
        return new StandIn(reach, shapeExponent, biot, 1.0, 0.0, 0.0);
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
        return times == 1.0
                ? this
                : new StandIn(reach * Math.sqrt(times), shapeExponent, biot, stretch, earlyBy, lateBy);
    }

    /** Its own Biot number, of its calibrated reach, in surroundings in which the real body has another one. */
    public double ownBiot(double bodyBiot) {
        return bodyBiot * stretch;
    }

    /** The stand-in of a body of which the exact solution is known. */
    static StandIn of(ProductSolution exact, double reach, double biot) {
        double first = exact.fourierAt(FIRST_EXACT_AT);
        double last = exact.fourierAt(LAST_EXACT_AT);
        Candidate found = calibrated(biot, first, last);
        double early = 0.0;
        double late = 0.0;
        for (double left : CHECKED_AT) {
            double exactly = left == FIRST_EXACT_AT ? first : exact.fourierAt(left);
            double ratio = exactly / (found.times() * fourierAt(found.series(), left));
            early = Math.max(early, ratio - 1.0);
            late = Math.max(late, 1.0 / ratio - 1.0);
        }
        return new StandIn(
                reach * found.stretch(),
                found.exponent(),
                biot,
                found.stretch(),
                early + VARYING_PROPERTIES,
                late + VARYING_PROPERTIES);
    }

    /**
     * A body without ends that about passes a fiftieth of the step at the exact time.
     *
     * @param exponent of its cross-section
     * @param stretch its reach over that of the real body
     * @param series its solution
     * @param missing logarithm of what is left at the last exact time, over what should be
     * @param better the stretch with which nothing would be missing, by the slope of the last mode
     */
    private record Candidate(double exponent, double stretch, RadialSeries series, double missing, double better) {

        /** Its Fourier number, which goes with its own reach, to that of the real body. */
        double times() {
            return stretch * stretch;
        }

        /**
         * Logarithm of what is left at the first exact time, over what should be; as it would be with the better stretch,
         * which moves logarithms about in proportion to time.
         */
        double tooWarm(double first, double last) {
            return StrictMath.log(series.atCentre(first / times()) / FIRST_EXACT_AT) - first / last * missing;
        }
    }

    /** By false position (Illinois): a larger exponent and reach lag more, and then catch up. */
    private static Candidate calibrated(double biot, double first, double last) {
        Candidate low = stretchedTo(0.0, biot, last, 1.0, ROUGHLY);
        double tooCold = low.tooWarm(first, last);
        if (tooCold >= 0.0) {
            return stretchedTo(0.0, biot, last, low.better(), CLOSE_ENOUGH);
        }
        Candidate high = stretchedTo(MOST_EXPONENT, biot, last, 2.0 * low.better(), ROUGHLY);
        double tooWarm = high.tooWarm(first, last);
        if (tooWarm <= 0.0) {
            return stretchedTo(MOST_EXPONENT, biot, last, high.better(), CLOSE_ENOUGH);
        }
        Candidate middle = low;
        for (int i = 0; i < 40; i++) {
            double share = tooCold / (tooCold - tooWarm);
            double exponent = low.exponent() + (high.exponent() - low.exponent()) * share;
            double stretch = low.better() + (high.better() - low.better()) * share;
            middle = stretchedTo(exponent, biot, last, stretch, ROUGHLY);
            double found = middle.tooWarm(first, last);
            if (Math.abs(found) < CLOSELY) {
                break;
            }
            if (found < 0.0) {
                low = middle;
                tooCold = found;
                tooWarm *= 0.5;
            } else {
                high = middle;
                tooWarm = found;
                tooCold *= 0.5;
            }
        }
        return stretchedTo(middle.exponent(), biot, last, middle.better(), CLOSE_ENOUGH);
    }

    /**
     * The body of an exponent, stretched until it passes a fiftieth of the step about at the exact time in the film of the
     * real one; by Newton's method with the slope of the last mode, from a guess.
     */
    private static Candidate stretchedTo(double exponent, double biot, double last, double guess, double closely) {
        double stretch = guess;
        for (int i = 0; i < 60; i++) {
            double own = biot * stretch;
            RadialSeries series = new RadialSeries(exponent, own);
            double fourier = last / (stretch * stretch);
            double missing = StrictMath.log(series.atCentre(fourier) / LAST_EXACT_AT);
            double rate = series.slowestRate();
            double risesWithFilm =
                    Double.isInfinite(own) ? 0.0 : 2.0 * own / (rate + (1.0 - exponent) * own + own * own);
            double slope = rate * fourier * (2.0 - risesWithFilm);
            // Far from the goal a full step might overshoot into a reach of nothing.
            double better = stretch * StrictMath.exp(Math.min(Math.max(-missing / slope, -0.7), 0.7));
            if (Math.abs(missing) < closely) {
                return new Candidate(exponent, stretch, series, missing, better);
            }
            stretch = better;
        }
        throw new IllegalStateException(
                "no reach fits a stand-in with exponent " + exponent + " at Biot number " + biot);
    }

    /**
     * The Biot number, of its calibrated reach, that the stand-in must be given in other surroundings, so that there, too,
     * its middle takes the exact time; infinite when even that is too slow, which errs to the late side.
     *
     * @param bodyFourier the exact time to {@code left}, as a Fourier number of the real body
     * @param left what is left of the temperature step then
     */
    double equalTimeBiot(double bodyFourier, double left) {
        double fourier = bodyFourier / (stretch * stretch);
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

    static double fourierAt(RadialSeries series, double left) {
        return ProductSolution.crossing(series::atCentre, left, series.slowestRate());
    }
}
