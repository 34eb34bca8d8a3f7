package dev.slowpoint.api;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Parts of an answer that come only when asked for. */
public enum Include {
    /** The temperatures over time. */
    CURVE,
    /** Every organism that was judged. */
    ORGANISMS,
    /** Where the numbers come from. */
    SOURCES;

    /** The query parameter that asks for them. */
    static final String PARAMETER = "include";

    /** Reads the words of the query parameter. */
    static Set<Include> of(@Nullable List<String> words) {
        Set<Include> include = EnumSet.noneOf(Include.class);
        if (words == null) {
            return include;
        }
        List<String> known = List.copyOf(Words.constants(Include.class).keySet());
        Faults faults = new Faults();
        for (String word : words) {
            Object constant = Words.constants(Include.class).get(word);
            if (constant instanceof Include part) {
                include.add(part);
            } else {
                Fault fault = Fault.of(
                                Pointer.query(PARAMETER),
                                ProblemCode.UNKNOWN_WORD,
                                "include takes " + String.join(", ", known) + ".")
                        .value(word)
                        .allowed(known);
                faults.add(Words.nearest(word, known)
                        .map(near -> fault.hint("Maybe " + near + "?"))
                        .orElse(fault));
            }
        }
        faults.throwIfAny();
        return include;
    }
}
