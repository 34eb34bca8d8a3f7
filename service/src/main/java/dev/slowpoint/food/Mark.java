package dev.slowpoint.food;

/** How a number is known. Carried beside every constant, from the file to the answer. */
public enum Mark {
    /** Seen in the published text itself. */
    READ,
    /** Seen in the abstract or index record of the publication. */
    READ_ABSTRACT,
    /** Seen where another text quotes the publication. */
    READ_SECONDARY,
    /** Seen in public code that cites the publication. */
    READ_CODE,
    /** Worked out from values that were read. */
    DERIVED,
    /** Fitted by us; the data are named. */
    FITTED,
    /** A published rate with a threshold fitted by us. */
    READ_AND_FITTED,
    /** A fact of the trade, without a source. */
    COMMON_PRACTICE,
    /** Our own judgement, without a source. */
    JUDGEMENT,
    /** Recalled and not read. May warn; may never be the sole reason to pass a plan. */
    MEMORY,
    /** Part read, part recalled. */
    MIXED
}
