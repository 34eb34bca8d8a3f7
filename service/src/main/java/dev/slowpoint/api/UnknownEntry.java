package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import java.util.Collection;

/** A catalogue was asked for an entry that it does not have. */
final class UnknownEntry extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Phrase detail;

    /**
     * Has no such entry.
     *
     * @param catalogue key of what it lists
     * @param id that was asked for
     * @param known ids
     */
    UnknownEntry(String catalogue, String id, Collection<String> known) {
        super("no entry in " + catalogue, null, false, false);
        Phrase listed = Phrase.of(catalogue);
        String asked = Fault.shortened(id);
        this.detail = Words.nearest(id, known)
                .map(word -> Phrase.of("FAULT_NO_ENTRY_MAYBE", listed, asked, word))
                .orElseGet(() -> Phrase.of("FAULT_NO_ENTRY", listed, asked));
    }

    /** What to say to a person. */
    Phrase detail() {
        return detail;
    }
}
