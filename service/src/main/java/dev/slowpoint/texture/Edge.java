package dev.slowpoint.texture;

/** What reaching a level means for the texture window. */
public enum Edge {
    /** Needed before the window opens. */
    OPENS,
    /** The comfortable part ends. */
    BEST_UNTIL,
    /** The window closes. */
    CLOSES,
    /** Mushy or rubbery from here. */
    SOFT_FROM,
    /** Not worth serving from here. */
    RUINED_FROM,
    /** No edge: a state worth telling, such as how firm the white of an egg is. */
    STATE,
    /** No edge: it explains what happens and is worked out only when asked for. */
    EXPLAINS
}
