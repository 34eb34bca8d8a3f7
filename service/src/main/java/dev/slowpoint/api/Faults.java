package dev.slowpoint.api;

import java.util.ArrayList;
import java.util.List;

/** Collects all faults of one request, so that a caller sees them at once. */
final class Faults {

    /** More are counted and not listed. */
    private static final int LISTED = 50;

    /** The most that a problem lists: one that counts more than all others may stand before them. */
    static final int MOST = LISTED + 1;

    private final List<Fault> listed = new ArrayList<>();
    private int count;

    /** Adds a fault behind the others. */
    void add(Fault fault) {
        count++;
        if (listed.size() < LISTED) {
            listed.add(fault);
        }
    }

    /** Adds a fault that counts more than those before. */
    void addFirst(Fault fault) {
        count++;
        listed.add(0, fault);
    }

    /** Whether there is any. */
    boolean any() {
        return count > 0;
    }

    /** The first of them. */
    List<Fault> first(int most) {
        return List.copyOf(listed.subList(0, Math.min(most, listed.size())));
    }

    /** Throws if there is any. */
    void throwIfAny() {
        if (count > 0) {
            throw new RequestRefused(listed, count);
        }
    }
}
