package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Which members a flat object takes, where a word in it decides what it is.
 *
 * @param needs must be there
 * @param mayTake may be there
 */
record Members(List<String> needs, List<String> mayTake) {

    /**
     * Adds a fault for each member that is missing or out of place.
     *
     * @param called the object in words, at the start of a sentence
     * @param known all members that any word takes
     * @param sent whether a member was sent
     */
    void check(Phrase called, List<String> known, Predicate<String> sent, String at, Faults faults) {
        for (String name : needs) {
            if (!sent.test(name)) {
                faults.add(Fault.of(Pointer.child(at, name), ProblemCode.MEMBER_MISSING, "FAULT_NEEDS", called, name));
            }
        }
        Set<String> all = new LinkedHashSet<>(needs);
        all.addAll(mayTake);
        for (String name : known) {
            if (sent.test(name) && !all.contains(name)) {
                faults.add(Fault.of(
                                Pointer.child(at, name),
                                ProblemCode.MEMBER_NOT_OF_STEP,
                                "FAULT_NO_MEMBER",
                                called,
                                name)
                        .allowed(List.copyOf(all)));
            }
        }
    }
}
