package dev.slowpoint.api;

import java.util.List;

/** A message that breaks the contract. */
final class RequestRefused extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;
    private final int count;

    /**
     * Refuses a message.
     *
     * @param faults the first faults, at least one
     * @param count of all faults
     */
    RequestRefused(List<Fault> faults, int count) {
        // Faults of callers are many and tell nothing about the stack.
        super(faults.get(0).code() + " at " + faults.get(0).pointer(), null, false, false);
        this.faults = List.copyOf(faults);
        this.count = count;
    }

    /** Refuses a message for one fault. */
    RequestRefused(Fault fault) {
        this(List.of(fault), 1);
    }

    List<Fault> faults() {
        return faults;
    }

    int count() {
        return count;
    }
}
