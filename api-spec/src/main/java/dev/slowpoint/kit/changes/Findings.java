package dev.slowpoint.kit.changes;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/** The changes found so far, each once, in an order that does not depend on that of the documents. */
final class Findings {

    private final SortedSet<ContractChange> changes = new TreeSet<>();

    void breaking(String rule, Pointer where, String text) {
        changes.add(new ContractChange(Severity.BREAKING, rule, where.toString(), text));
    }

    void compatible(String rule, Pointer where, String text) {
        changes.add(new ContractChange(Severity.COMPATIBLE, rule, where.toString(), text));
    }

    List<ContractChange> all() {
        return List.copyOf(changes);
    }
}
