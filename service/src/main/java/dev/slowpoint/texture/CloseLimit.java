package dev.slowpoint.texture;

/** What closes a texture window. */
public enum CloseLimit {
    /** Too soft first. */
    SOFTENING,
    /** Too dry first. */
    DRYNESS,
    /** Something could close it, and does not before the history ends. */
    NOT_REACHED,
    /** The model of this class knows nothing that would close it. */
    NOT_MODELLED
}
