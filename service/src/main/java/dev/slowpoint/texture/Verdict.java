package dev.slowpoint.texture;

/** Where a moment lies with respect to a texture window. */
public enum Verdict {
    /** The window has not opened yet. */
    BEFORE,
    /** Inside the window. */
    WITHIN,
    /** The window has closed. */
    PAST,
    /** There is no window: it would close before it opens. */
    NONE
}
