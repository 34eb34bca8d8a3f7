package dev.slowpoint.food;

/** What was done to a piece before it was packed; decides whether its inside must be treated like its outside. */
public enum Form {
    /** Whole muscle or whole piece, nothing has gone through its surface. */
    INTACT,
    /** Needled or bladed. */
    TENDERISED,
    /** Injected or tumbled with brine. */
    INJECTED,
    /** Rolled or tied, so that an outside surface lies inside. */
    ROLLED,
    /** Minced or ground. */
    MINCED,
    /** Formed from pieces. */
    FORMED,
    /** Filled with something else, which heats through last. */
    STUFFED;

    /** Whether only the outside can carry what a knife or a hand brought. */
    public boolean intact() {
        return this == INTACT;
    }
}
