package dev.slowpoint.safety;

/** The answer to "is it safe by this rule?". */
public enum Verdict {
    /** Every hazard that decides is dealt with at the slowest-heating point. */
    MET,
    /** At least one is not. */
    NOT_MET,
    /**
     * The core of an intact piece of red meat is not made safe; its outside can be, by searing. Common practice for
     * eaters in good health, and never the same as {@link #MET}.
     */
    SURFACE_ONLY,
    /** The rule asks for no kill step here. */
    NOT_APPLICABLE
}
