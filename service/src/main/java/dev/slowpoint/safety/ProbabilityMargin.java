package dev.slowpoint.safety;

import dev.slowpoint.heat.Exp;

/**
 * How likely a target is met, when D itself is uncertain. For central kinetics only: a regulatory line already holds an
 * allowance of unknown size, and a probability read from it would mean nothing.
 */
public final class ProbabilityMargin {

    /** Tolerance factor of FSIS-GD-2021-14 Attachment A1 p. 56: mean less 1.94 standard deviations, for six trials. */
    private static final double SIX_TRIALS = 1.94;

    /**
     * The least probability of missing a target that is ever told. Beyond three standard deviations a normal tail was
     * fitted to nobody's data (studies hold tens of survival curves), and errors of size, bath and heat transfer are not in
     * the spread of D at all. Our own limit.
     */
    public static final double LEAST_MISSING = 0.001;

    private ProbabilityMargin() {}

    /**
     * P(L &lt; R), never told below {@link #LEAST_MISSING}; one where nothing was delivered.
     *
     * @param deliveredLog10 decimal reductions at the nominal D, zero or more
     * @param requiredLog10 decimal reductions, growth included, above zero
     * @param spreadLog10D standard deviation of log10 D, above zero
     */
    public static double ofMissing(double deliveredLog10, double requiredLog10, double spreadLog10D) {
        if (deliveredLog10 == 0.0) {
            return 1.0;
        }
        return Math.max(LEAST_MISSING, 1.0 - ofMeeting(deliveredLog10, requiredLog10, spreadLog10D));
    }

    /**
     * P(L &gt;= R) when log10 D is normally distributed.
     *
     * @param deliveredLog10 decimal reductions at the nominal D, above zero
     * @param requiredLog10 decimal reductions, above zero
     * @param spreadLog10D standard deviation of log10 D; 0.03 to 0.11 inside one study (Juneja, Marks, Mohr 2003, time to
     *     6.5 log varies by 6-25 %), 0.25 between lots of vegetables (qraLm, fitted to Mazzotta 2001)
     */
    public static double ofMeeting(double deliveredLog10, double requiredLog10, double spreadLog10D) {
        if (!(deliveredLog10 > 0.0 && requiredLog10 > 0.0 && spreadLog10D > 0.0)) {
            throw new IllegalArgumentException("delivered " + deliveredLog10 + ", required " + requiredLog10
                    + " and spread " + spreadLog10D + " must all be above zero");
        }
        return normal(StrictMath.log10(deliveredLog10 / requiredLog10) / spreadLog10D);
    }

    /** The reduction that six trials prove: their mean less 1.94 standard deviations. */
    public static double provenBySixTrials(double meanLog10, double standardDeviation) {
        return meanLog10 - SIX_TRIALS * standardDeviation;
    }

    /** Standard normal distribution function; Abramowitz and Stegun 26.2.17, error below 7.5e-8. */
    private static double normal(double x) {
        double t = 1.0 / (1.0 + 0.2316419 * Math.abs(x));
        double tail = 0.3989422804014327
                * Exp.exp(-0.5 * x * x)
                * t
                * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return x >= 0.0 ? 1.0 - tail : tail;
    }
}
