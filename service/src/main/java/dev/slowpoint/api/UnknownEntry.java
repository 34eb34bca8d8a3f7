package dev.slowpoint.api;

import java.util.Collection;

/** A catalogue was asked for an entry that it does not have. */
final class UnknownEntry extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String detail;

    UnknownEntry(String catalogue, String id, Collection<String> known) {
        this("The catalogue of " + catalogue + " has no entry " + Fault.shortened(id) + "."
                + Words.nearest(id, known).map(word -> " Maybe " + word + "?").orElse(""));
    }

    private UnknownEntry(String detail) {
        super(detail, null, false, false);
        this.detail = detail;
    }

    /** One sentence for a person. */
    String detail() {
        return detail;
    }
}
