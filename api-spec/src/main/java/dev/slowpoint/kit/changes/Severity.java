package dev.slowpoint.kit.changes;

/** What a change means for a client that was built on the older contract. */
public enum Severity {
    /** It may fail, at run time or when it is generated anew. */
    BREAKING,
    /** It goes on as before. */
    COMPATIBLE
}
