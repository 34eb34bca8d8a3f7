package dev.slowpoint.safety;

/** What a rule may speak of. */
public enum Topic {
    /** Temperature and time of the cook, or the kill it must give. */
    COOKING,
    /** How long food may take to get hot. */
    WARM_UP,
    /** How hot or how cold food waits. */
    HOLDING,
    /** How fast cooked food is cooled. */
    COOLING,
    /** How long it keeps. */
    STORAGE,
    /** Warming it again. */
    REHEATING,
    /** Parasites. */
    PARASITES,
    /** Who must not eat what, and who must be told. */
    EATERS,
    /** What is written on the bag, and to whom it may go. */
    LABELS
}
