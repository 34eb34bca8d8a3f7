package dev.slowpoint.texture;

/** What opens the window of a class. */
public enum Opening {
    /** The core must be hot through and all opening levels reached. */
    CORE_AND_DOSES,
    /** The opening levels alone: vegetables, fruit, pulses and eggs need not come near the bath temperature. */
    DOSES_ALONE
}
