package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One fault of a request, not yet said in any language.
 *
 * @param pointer where: a JSON pointer in URI-fragment form, {@code ?name} for a query parameter, or {@code #}
 * @param code what, for programs
 * @param detail what, for people
 * @param hint what to do about it
 * @param value what was sent, as text, at most 64 characters
 * @param minimum least value that is taken, in {@code unit}
 * @param maximum greatest value that is taken, in {@code unit}
 * @param unit UCUM code of the unit of minimum and maximum
 * @param allowed the words that are taken
 */
record Fault(
        String pointer,
        ProblemCode code,
        Phrase detail,
        @Nullable Phrase hint,
        @Nullable String value,
        @Nullable Double minimum,
        @Nullable Double maximum,
        @Nullable String unit,
        @Nullable @Items(max = 200) List<String> allowed) {

    private static final int LONGEST_VALUE = 64;

    /** Copies the words and shortens the value. */
    Fault {
        allowed = allowed == null ? null : List.copyOf(allowed);
        value = value == null ? null : shortened(value);
    }

    /** A fault with a place, a code, the key of its sentence and what that names. */
    static Fault of(String pointer, ProblemCode code, String key, Object... values) {
        return new Fault(pointer, code, Phrase.of(key, values), null, null, null, null, null, null);
    }

    /** The same fault with advice, by the key of its sentence and what that names. */
    Fault hint(String key, Object... values) {
        return hint(Phrase.of(key, values));
    }

    /** The same fault with advice. */
    Fault hint(Phrase advice) {
        return new Fault(pointer, code, detail, advice, value, minimum, maximum, unit, allowed);
    }

    /** The same fault at another place. */
    Fault at(String place) {
        return new Fault(place, code, detail, hint, value, minimum, maximum, unit, allowed);
    }

    /** The same fault with what was sent. */
    Fault value(String sent) {
        return new Fault(pointer, code, detail, hint, sent, minimum, maximum, unit, allowed);
    }

    /** The same fault with the bounds of the field. */
    Fault range(@Nullable Double least, @Nullable Double greatest, @Nullable String ucum) {
        return new Fault(pointer, code, detail, hint, value, least, greatest, ucum, allowed);
    }

    /** The same fault with the words of the field. */
    Fault allowed(List<String> words) {
        return new Fault(pointer, code, detail, hint, value, minimum, maximum, unit, words);
    }

    /** Text from outside, cut to a length that is safe to repeat; never within a surrogate pair. */
    static String shortened(String text) {
        if (text.length() <= LONGEST_VALUE) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(LONGEST_VALUE - 2)) ? LONGEST_VALUE - 2 : LONGEST_VALUE - 1;
        return text.substring(0, end) + "…";
    }
}
