package dev.slowpoint.plan;

/** How the water of a bath moves. */
public enum Stirring {
    /** By a pump or a stirrer. */
    PUMPED,
    /** By its own warmth only. */
    STILL
}
