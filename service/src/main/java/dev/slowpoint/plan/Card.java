package dev.slowpoint.plan;

/** What a card of instructions is for. */
public enum Card {
    /** Cook it from the fridge. */
    FRIDGE,
    /** Cook it from the freezer, not thawed before. */
    FROZEN,
    /** Cool it after the cook and keep it cold. */
    CHILL_AND_KEEP,
    /** Warm it up from the cold. */
    REHEAT;

    /** Whether it cooks raw food, or food that goes in as it comes. */
    public boolean cooks() {
        return this == FRIDGE || this == FROZEN;
    }
}
