package dev.slowpoint.ops.access;

import java.util.Locale;

/** What is found out about who asks. */
sealed interface Identity {

    /** A client that is known, with what it has asked of late. */
    record Known(Account account) implements Identity {}

    /** Nobody that is known. Callers are not told why. */
    record Unknown(Reason reason) implements Identity {}

    /**
     * A client that is known, but may not plan.
     *
     * @param scope what its token would have to say
     */
    record NotAllowed(String scope) implements Identity {}

    /** Nobody can tell now. */
    record Undecided() implements Identity {}

    /** Why somebody is not known, for those who run the service. */
    enum Reason {
        /** Nothing was shown. */
        MISSING,
        /** What was shown has not the form of a key or a token. */
        MALFORMED,
        /** No such key; or a token that is signed by somebody else, or meant for somebody else. */
        UNKNOWN,
        /** It was good, or will be. */
        NOT_NOW;

        /** As a label. */
        String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
