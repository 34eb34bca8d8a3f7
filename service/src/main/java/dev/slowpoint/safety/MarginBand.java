package dev.slowpoint.safety;

/**
 * A margin in words. The bands are ours; two decimal reductions is the only margin that FSIS names (FSIS-GD-2021-14,
 * quoting NACMCF 2010).
 */
public enum MarginBand {
    /** The rule is not met. */
    NOT_MET,
    /** Met with less than one decimal reduction in hand. */
    THIN,
    /** One to three. */
    NORMAL,
    /** More than three. */
    WIDE;

    private static final double THIN_BELOW_LOG10 = 1.0;
    private static final double WIDE_ABOVE_LOG10 = 3.0;

    /** The band of a finding. Whole treatments are counted like reductions and never called wide: no logs are known. */
    public static MarginBand of(Finding finding) {
        if (!finding.met() || finding.marginLog10() < 0.0) {
            return NOT_MET;
        }
        if (finding.marginLog10() < THIN_BELOW_LOG10) {
            return THIN;
        }
        return finding.marginLog10() > WIDE_ABOVE_LOG10
                        && !finding.requirement().wholeTreatment()
                ? WIDE
                : NORMAL;
    }
}
