package dev.slowpoint.api;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Faults of the items of a list whose items stand each for itself. */
final class ItemFaults {

    /** More faults of one item are not told. */
    static final int LISTED = 8;

    private final String list;
    private final Map<Integer, List<Fault>> faults = new HashMap<>();

    /**
     * Takes the faults of a list.
     *
     * @param list its pointer
     */
    ItemFaults(String list) {
        this.list = list;
    }

    String list() {
        return list;
    }

    void add(int index, Faults found) {
        faults.put(index, found.first(LISTED));
    }

    /** How many items are at fault. */
    int count() {
        return faults.size();
    }

    /** The faults of an item; empty if it is right. */
    List<Fault> of(int index) {
        return faults.getOrDefault(index, List.of());
    }
}
