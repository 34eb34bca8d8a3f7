package dev.slowpoint.kit.changes;

import java.util.Comparator;

/**
 * One difference between two contracts.
 *
 * @param severity what it means for clients of the older contract
 * @param rule the rule that judged it, such as {@code request-bound-tightened}
 * @param pointer where it is: a JSON pointer into the newer document, or into the older one for what was removed
 * @param text what changed, in words
 */
public record ContractChange(Severity severity, String rule, String pointer, String text)
        implements Comparable<ContractChange> {

    private static final Comparator<ContractChange> ORDER = Comparator.comparing(ContractChange::severity)
            .thenComparing(ContractChange::pointer)
            .thenComparing(ContractChange::rule)
            .thenComparing(ContractChange::text);

    /** Breaking ones first, then by place. */
    @Override
    public int compareTo(ContractChange other) {
        return ORDER.compare(this, other);
    }

    @Override
    public String toString() {
        return severity + " " + rule + " " + pointer + ": " + text;
    }
}
