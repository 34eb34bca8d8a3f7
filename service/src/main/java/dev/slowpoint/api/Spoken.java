package dev.slowpoint.api;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/** Something that is written once for each language and system of units, when it is first asked for. */
final class Spoken<T extends Object> {

    private final Function<Sentences, T> writing;
    private final Map<Sentences, T> written = new ConcurrentHashMap<>();

    /**
     * Writes it in one language already, so that the first who asks need not wait.
     *
     * @param first sentences that are asked for most
     * @param writing writes it with the sentences of a language
     */
    Spoken(Sentences first, Function<Sentences, T> writing) {
        this.writing = writing;
        written.put(first, writing.apply(first));
    }

    /** As it is said with these sentences. */
    T in(Sentences sentences) {
        return written.computeIfAbsent(sentences, writing);
    }
}
