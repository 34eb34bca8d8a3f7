package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One thing that rules ask, to be read by people. What a plan is judged by stands in {@link Requirement} and {@link
 * RuleLimits}; a clause that was only recalled can be read and judges nothing.
 *
 * @param id as in the clauses file
 * @param rules ids of the rules that ask it
 * @param topic what it is about
 * @param text in our own words
 * @param fromC temperature it starts at, or the lowest it allows [C]
 * @param toC temperature it ends at, or the highest it allows [C]
 * @param limit the number it sets
 * @param unit of that number, as in the clauses file: s, min, h, d, log10, or a count of bacteria; present with a limit
 * @param provenance where it was read
 * @param note what else to know
 */
public record Clause(
        String id,
        List<String> rules,
        Topic topic,
        String text,
        OptionalDouble fromC,
        OptionalDouble toC,
        OptionalDouble limit,
        Optional<String> unit,
        Provenance provenance,
        Optional<String> note) {

    /** Copies the list and refuses a number without a unit, or a unit without a number. */
    public Clause {
        rules = List.copyOf(rules);
        if (limit.isPresent() != unit.isPresent()) {
            throw new IllegalArgumentException("clause " + id + ": limit and unit must stand together or not at all");
        }
    }
}
