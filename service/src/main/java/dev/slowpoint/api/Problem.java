package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A problem document (RFC 9457). The same fault always gives the same bytes. */
@Schema(
        description =
                "What went wrong (RFC 9457). `code` is that of the first fault when there are faults, and explained"
                        + " at `type`.")
public record Problem(
        @Schema(description = "Path that names and explains the problem.", example = "/problems/out-of-range")
        String type,

        @Schema(description = "The problem in a few words.", example = "Out of range")
        String title,

        @Schema(description = "HTTP status.", example = "400", minimum = "400", maximum = "599")
        int status,

        @Schema(
                description = "The problem, for programs." + " Treat an unknown word by `status` and `retryable`.",
                examples = {"OUT_OF_RANGE", "MALFORMED_BODY", "UNKNOWN_FOOD"})
        String code,

        @Schema(
                description = "This occurrence, for people.",
                example = "thicknessMm is 2, but must lie between 3 and 250 mm")
        String detail,

        @Schema(description = "All faults of the request, at most 51; empty when the problem is none of the body.")
        @Items(max = Faults.MOST)
        List<FaultEntry> errors,

        @Schema(description = "Whether the same request may succeed later.", example = "false")
        boolean retryable,

        @Schema(description = "Baths that would do instead; only where some were looked for.")
        @Nullable
        @Items(max = 20)
        List<Alternative> alternatives) {

    /** Copies the lists. */
    public Problem {
        errors = List.copyOf(errors);
        alternatives = alternatives == null ? null : List.copyOf(alternatives);
    }

    /** A bath that would do instead. */
    @Schema(name = "Alternative", description = "A bath that would do instead of the one asked for.")
    public record Alternative(
            @Schema(description = "Its temperature.", example = "57", minimum = "20", maximum = "100") @Unit("Cel")
            double setpointC,

            @Schema(
                    description = "When the rule is met in it, for the values as given.",
                    example = "4953",
                    minimum = "0",
                    maximum = "1209600")
            @Unit("s")
            int safeNominalS,

            @Schema(
                    description = "The same if everything hinders.",
                    example = "8683",
                    minimum = "0",
                    maximum = "1209600")
            @Unit("s")
            int safeLateS) {}

    /** The same problem with baths that would do instead. */
    Problem offering(List<Alternative> offered) {
        return new Problem(type, title, status, code, detail, errors, retryable, offered.isEmpty() ? null : offered);
    }

    /** A problem that lies in no field, of which there is no more to say than why it happens. */
    static Problem of(ProblemCode code, Sentences sentences) {
        return of(code, sentences.cause(code), List.of(), sentences);
    }

    /** A problem that lies in no field. */
    static Problem of(ProblemCode code, Phrase detail, Sentences sentences) {
        return of(code, sentences.of(detail), List.of(), sentences);
    }

    /** A problem with its faults; the first decides type and code. */
    static Problem of(ProblemCode code, List<FaultEntry> faults, int count, Sentences sentences) {
        String first = faults.get(0).detail();
        String all = Integer.toString(count);
        String detail = count == 1
                ? first
                : sentences.of(
                        count > faults.size()
                                ? Phrase.of("FAULTS_SOME", all, Integer.toString(faults.size()), first)
                                : Phrase.of("FAULTS_MANY", all, first));
        return of(code, detail, faults, sentences);
    }

    private static Problem of(ProblemCode code, String detail, List<FaultEntry> faults, Sentences sentences) {
        return new Problem(
                code.type(), sentences.title(code), code.status(), code.name(), detail, faults, code.retryable(), null);
    }
}
