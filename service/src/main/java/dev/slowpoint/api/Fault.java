package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One fault of a request, in the shape that all problems share. */
@Schema(description = "One fault of a request.")
public record Fault(
        @Schema(
                description = "Where: a JSON pointer in URI-fragment form, `?name` for a query parameter,"
                        + " or `#` for the whole body.",
                example = "#/geometry/thicknessMm")
        String pointer,

        @Schema(
                description = "What, for programs. Each code is explained at `/problems/{code}`.",
                examples = {"OUT_OF_RANGE", "UNKNOWN_FIELD", "SIZE_MISSING"})
        String code,

        @Schema(description = "What, for people.", example = "thicknessMm is 2, but must lie between 3 and 250 mm")
        String detail,

        @Schema(description = "What to do about it.", example = "Maybe the size was given in centimetres?") @Nullable
        String hint,

        @Schema(description = "What was sent, as text, at most 64 characters.", example = "2") @Nullable
        String value,

        @Schema(
                description = "Least value that is taken, in `unit`.",
                example = "3",
                minimum = "-1000000000",
                maximum = "1000000000")
        @Nullable
        Double minimum,

        @Schema(
                description = "Greatest value that is taken, in `unit`.",
                example = "250",
                minimum = "-1000000000",
                maximum = "1000000000")
        @Nullable
        Double maximum,

        @Schema(description = "UCUM code of the unit of minimum and maximum.", example = "mm") @Nullable
        String unit,

        @Schema(
                description = "The words that are taken.",
                example = "[\"slab\", \"brick\", \"cylinder\", \"sphere\", \"egg\"]")
        @Nullable
        List<String> allowed) {

    private static final int LONGEST_VALUE = 64;

    /** Copies the words and shortens the value. */
    public Fault {
        allowed = allowed == null ? null : List.copyOf(allowed);
        value = value == null ? null : shortened(value);
    }

    /** A fault with a place, a code and a sentence. */
    static Fault of(String pointer, ProblemCode code, String detail) {
        return new Fault(pointer, code.name(), detail, null, null, null, null, null, null);
    }

    /** The same fault with advice. */
    Fault hint(String advice) {
        return new Fault(pointer, code, detail, advice, value, minimum, maximum, unit, allowed);
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
