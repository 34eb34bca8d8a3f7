package dev.slowpoint.food;

/** Whether a food comes to the bath raw or has been cooked before. */
public enum Condition {
    /** Never heated. */
    RAW,
    /** Cooked before, chilled, and to be warmed again. */
    COOKED
}
