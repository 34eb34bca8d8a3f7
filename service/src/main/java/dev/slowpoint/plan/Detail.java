package dev.slowpoint.plan;

/** Parts of an answer that cost something and are given only when asked for. */
public enum Detail {
    /** Temperatures over time. */
    CURVE,
    /** Each organism of the rule. */
    ORGANISMS,
    /** Every view of the margin. */
    MARGINS,
    /** What the numbers rest on. */
    SOURCES,
    /** How every other rule would judge. */
    RULES,
    /** What a sample of possible cooks says. */
    UNCERTAINTY
}
