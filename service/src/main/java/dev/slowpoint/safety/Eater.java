package dev.slowpoint.safety;

/** Who eats. */
public enum Eater {
    /** A person in good health. */
    GENERAL,
    /** Pregnant, very young, old or ill: nothing raw or partly cooked (Food Code 2022, 3-801.11(C)). */
    VULNERABLE
}
