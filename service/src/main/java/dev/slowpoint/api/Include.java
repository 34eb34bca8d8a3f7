package dev.slowpoint.api;

import dev.slowpoint.plan.Detail;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Parts of an answer that come only when asked for. */
public enum Include {
    /** The temperatures over time. */
    CURVE("curve"),
    /** Every organism that was judged. */
    ORGANISMS("organisms"),
    /** Further views of the margin. */
    MARGINS("margins"),
    /** Where the numbers come from. */
    SOURCES("sources"),
    /** How every other rule would judge. */
    RULES("otherRules"),
    /** What a sample of possible cooks says. */
    UNCERTAINTY("uncertainty");

    /** The query parameter that asks for them. */
    static final String PARAMETER = "include";

    /** Member of an answer that holds the part. */
    private final String member;

    Include(String member) {
        this.member = member;
    }

    /** The words for the parts that an answer has. */
    static List<String> words(Class<? extends Record> answer) {
        return Arrays.stream(values())
                .filter(part -> RecordShape.of(answer).part(part.member).isPresent())
                .map(Words::of)
                .toList();
    }

    /** What the planner has to fill. */
    static Set<Detail> details(Set<Include> include) {
        Set<Detail> details = EnumSet.noneOf(Detail.class);
        for (Include part : include) {
            details.add(
                    switch (part) {
                        case CURVE -> Detail.CURVE;
                        case ORGANISMS -> Detail.ORGANISMS;
                        case MARGINS -> Detail.MARGINS;
                        case SOURCES -> Detail.SOURCES;
                        case RULES -> Detail.RULES;
                        case UNCERTAINTY -> Detail.UNCERTAINTY;
                    });
        }
        return details;
    }

    /** Reads the words of the query parameter for an operation with that answer. */
    static Set<Include> of(@Nullable List<String> words, Class<? extends Record> answer) {
        Set<Include> include = EnumSet.noneOf(Include.class);
        if (words == null) {
            return include;
        }
        List<String> known = words(answer);
        Faults faults = new Faults();
        for (String word : words) {
            Object constant = Words.constants(Include.class).get(word);
            if (known.contains(word) && constant instanceof Include part) {
                include.add(part);
            } else {
                Fault fault = Fault.of(
                                Pointer.query(PARAMETER),
                                ProblemCode.UNKNOWN_WORD,
                                "FAULT_INCLUDE_TAKES",
                                String.join(", ", known))
                        .value(word)
                        .allowed(known);
                faults.add(Words.nearest(word, known)
                        .map(near -> fault.hint("HINT_MAYBE", near))
                        .orElse(fault));
            }
        }
        faults.throwIfAny();
        return include;
    }
}
