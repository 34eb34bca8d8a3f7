package dev.slowpoint.ops.access;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The keys of one reading of the file. */
final class KeyRing {

    /** Held against what is shown where no key begins like it, so that the work is the same. */
    private static final Key NOBODY = new Key("", Key.Hash.of(""), Instant.MAX, Instant.MAX);

    private final Map<Long, Key> byStart = new HashMap<>();
    private final Map<String, Allowance> clients;

    KeyRing(List<Key> keys, Map<String, Allowance> clients) {
        keys.forEach(key -> byStart.put(key.hash().start(), key));
        this.clients = Map.copyOf(clients);
    }

    /** The key that is shown, or {@link #isNobody none}, whether it is good now or not. */
    Key find(String shown) {
        Key.Hash hash = Key.Hash.of(shown);
        Key near = byStart.getOrDefault(hash.start(), NOBODY);
        boolean same = near.hash().is(hash);
        return same && Key.hasForm(shown) ? near : NOBODY;
    }

    static boolean isNobody(Key key) {
        return key == NOBODY;
    }

    /** All clients, with what each may ask. */
    Map<String, Allowance> clients() {
        return clients;
    }

    /** How many keys are good at a moment. */
    long goodAt(Instant moment) {
        return byStart.values().stream().filter(key -> key.goodAt(moment)).count();
    }
}
