package dev.slowpoint.safety;

/** What the cook is for; decides which hazards must be dealt with. */
public enum Purpose {
    /** Eaten at once. */
    SERVE,
    /** Made safe to the core, eaten at once. */
    PASTEURISE,
    /** Cooked, chilled in the bag and kept in the cold. */
    KEEP,
    /** Held long enough to soften, then eaten at once. */
    TENDERISE,
    /** Warmed again and eaten at once. */
    REHEAT
}
