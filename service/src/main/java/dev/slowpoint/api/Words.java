package dev.slowpoint.api;

import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** How enumerations and names are spelled on the wire, and which known word was probably meant by an unknown one. */
final class Words {

    private Words() {}

    /** {@code EGG_IN_SHELL} as {@code eggInShell}. */
    static String of(Enum<?> constant) {
        StringBuilder word = new StringBuilder();
        for (char letter : constant.name().toLowerCase(Locale.ROOT).toCharArray()) {
            boolean follows = !word.isEmpty() && word.charAt(word.length() - 1) == '_';
            if (follows) {
                word.setLength(word.length() - 1);
            }
            word.append(follows ? Character.toUpperCase(letter) : letter);
        }
        return word.toString();
    }

    /** The constants of an enumeration by their words, in its order. */
    static Map<String, Object> constants(Class<?> enumeration) {
        Object[] constants = enumeration.getEnumConstants();
        if (constants == null) {
            throw new IllegalArgumentException(enumeration + " is no enumeration");
        }
        Map<String, Object> words = new LinkedHashMap<>();
        for (Object constant : constants) {
            words.put(of((Enum<?>) constant), constant);
        }
        return Collections.unmodifiableMap(words);
    }

    /**
     * The known word that was probably meant: the same letters in another spelling, a word that goes on where the given
     * one ends, or one that is at most a third of its letters away. The first in the given order among equals.
     */
    static Optional<String> nearest(String given, Collection<String> known) {
        String plain = plain(given);
        if (plain.isEmpty() || plain.length() > 64) {
            return Optional.empty();
        }
        return known.stream()
                .filter(word -> distance(plain, plain(word)) <= Math.max(1, plain.length() / 3)
                        || (plain.length() >= 3 && plain(word).startsWith(plain)))
                .min(Comparator.comparingInt(word -> distance(plain, plain(word))));
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace("_", "").replace("-", "").replace(" ", "");
    }

    /** Insertions, deletions and replacements between two words (Levenshtein 1966). */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
