package dev.slowpoint.plan;

/** Parts of an answer that cost something and are given only when asked for. */
public enum Detail {
    /** Temperatures over time. */
    CURVE,
    /** Each organism of the rule. */
    ORGANISMS,
    /** What the numbers rest on. */
    SOURCES
}
