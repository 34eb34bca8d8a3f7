package dev.slowpoint.api;

import dev.slowpoint.plan.Refusal;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One fault of a request, said in one language, in the shape that all problems share. */
@Schema(name = "Fault", description = "One fault of a request.")
public record FaultEntry(
        @Schema(
                description = "Where: a JSON pointer in URI-fragment form, `?name` for a query parameter,"
                        + " or `#` for the whole body.",
                example = "#/geometry/thicknessMm")
        String pointer,

        @Schema(
                description =
                        "What, for programs. Each code is explained at `/problems/{code}`."
                                + " Treat an unknown word as the `code` of its status: 400 is `BAD_REQUEST`, 422 `REQUEST_REFUSED`.",
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
        @Items(max = 200)
        List<String> allowed) {

    /** Copies the words. */
    public FaultEntry {
        allowed = allowed == null ? null : List.copyOf(allowed);
    }

    /** A fault of a message. */
    static FaultEntry of(Fault fault, Sentences sentences) {
        return new FaultEntry(
                fault.pointer(),
                fault.code().name(),
                sentences.of(fault.detail()),
                fault.hint() == null ? null : sentences.of(fault.hint()),
                fault.value(),
                fault.minimum(),
                fault.maximum(),
                fault.unit(),
                fault.allowed());
    }

    /** The same fault of a part of a message, at the pointer of that part. */
    FaultEntry below(String part) {
        return new FaultEntry(part + pointer.substring(1), code, detail, hint, value, minimum, maximum, unit, allowed);
    }

    /** What stands in the way of an answer. */
    static FaultEntry of(Refusal.Fault fault, Sentences sentences) {
        return new FaultEntry(
                fault.pointer(),
                fault.code(),
                sentences.of(fault.detail()),
                fault.hint().map(sentences::of).orElse(null),
                fault.value().map(Fault::shortened).orElse(null),
                fault.minimum().isPresent() ? fault.minimum().getAsDouble() : null,
                fault.maximum().isPresent() ? fault.maximum().getAsDouble() : null,
                fault.unit().orElse(null),
                null);
    }
}
