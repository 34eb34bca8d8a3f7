package dev.slowpoint.plan;

/** What answering a question is made of. None lies inside another; a question may go through each many times. */
public enum PlanPhase {
    /** Heat moved through the three corners of a trial. */
    SOLVE,
    /** The texture of a trial read off its histories. */
    TEXTURE,
    /** The safety of a trial judged, and when to take the food out. */
    SAFETY,
    /** How much may go wrong: the heat solved anew for each change. */
    MARGINS,
    /** What follows the bath. */
    STEPS,
    /** A sample of possible cooks. */
    SAMPLE
}
