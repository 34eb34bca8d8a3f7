package dev.slowpoint.api;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;

/** A list of entries and each entry by its id, written once. */
final class Catalogue {

    private final String name;
    private final Rendered list;
    private final Map<String, Rendered> entries = new LinkedHashMap<>();

    private Catalogue(String name, Record list) {
        this.name = name;
        this.list = new Rendered(list);
    }

    /**
     * Writes a catalogue.
     *
     * @param name key of what it lists
     * @param entries in the order to show them
     * @param list makes the answer that lists them all
     * @param id of an entry, unique
     */
    static <E extends Record> Catalogue of(
            String name, List<E> entries, Function<List<E>, Record> list, Function<E, String> id) {
        Catalogue catalogue = new Catalogue(name, list.apply(entries));
        for (E entry : entries) {
            if (catalogue.entries.put(id.apply(entry), new Rendered(entry)) != null) {
                throw new IllegalArgumentException(id.apply(entry) + " stands twice in the catalogue of " + name);
            }
        }
        return catalogue;
    }

    /** All entries. */
    ResponseEntity<byte[]> list(@Nullable String accept) {
        return list.as(accept);
    }

    /** One entry. */
    ResponseEntity<byte[]> entry(String id, @Nullable String accept) {
        Rendered entry = entries.get(id);
        if (entry == null) {
            throw new UnknownEntry(name, id, entries.keySet());
        }
        return entry.as(accept);
    }
}
