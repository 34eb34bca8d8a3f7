package dev.slowpoint.plan;

/** Which way the tolerances are turned. */
enum Corner {
    /** All values as stated, or typical. */
    NOMINAL,
    /** Thin, warm, well stirred, conducting well: everything comes early. */
    EARLY,
    /** Thick, cold, badly stirred, conducting badly: everything comes late. */
    LATE
}
