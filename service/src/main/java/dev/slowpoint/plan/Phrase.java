package dev.slowpoint.plan;

import java.util.List;

/**
 * Something to say to people, in whatever language and units they read: the key of a sentence in the message bundles and
 * what it names.
 *
 * @param key of the sentence
 * @param values in the order of their places: numbers, texts that are said as they stand, and other phrases
 */
public record Phrase(String key, List<Object> values) {

    /** Copies the values. */
    public Phrase {
        values = List.copyOf(values);
    }

    /** A phrase with its values. */
    public static Phrase of(String key, Object... values) {
        return new Phrase(key, List.of(values));
    }
}
