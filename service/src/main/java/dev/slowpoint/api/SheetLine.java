package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.PortionSheetAnswer.PortionPlace;
import dev.slowpoint.api.PortionSheetAnswer.SheetBand;
import dev.slowpoint.api.PortionSheetAnswer.SheetTotals;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One line of a sheet that is answered as a stream. */
@Schema(
        description =
                "One line of a sheet that is answered as a stream; it holds one member. The first line is a `head`; a `band`"
                        + " stands before the first portion that needs it; the last line is `totals`, or `problem` where the"
                        + " stream broke off.")
public record SheetLine(
        @Schema(description = "What the sheet was planned with.") @Nullable
        Head head,

        @Schema(description = "A band that is needed for the first time, or again after very many others.") @Nullable
        SheetBand band,

        @Schema(description = "A portion.") @Nullable PortionPlace portion,

        @Schema(description = "How many so far.") @Nullable SheetTotals progress,

        @Schema(description = "How many in all; the stream is complete.") @Nullable
        SheetTotals totals,

        @Schema(description = "Why the stream breaks off.") @Nullable
        Problem problem) {

    /** What a sheet was planned with. */
    @Schema(name = "SheetHead", description = "What a sheet was planned with, and what always holds.")
    public record Head(
            @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
            String parameterSet,

            @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
            String digest,

            @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
            List<Reason> cautions) {

        /** Copies the list. */
        public Head {
            cautions = List.copyOf(cautions);
        }
    }

    static SheetLine of(Head head) {
        return new SheetLine(head, null, null, null, null, null);
    }

    static SheetLine of(SheetBand band) {
        return new SheetLine(null, band, null, null, null, null);
    }

    static SheetLine of(PortionPlace portion) {
        return new SheetLine(null, null, portion, null, null, null);
    }

    static SheetLine progress(SheetTotals soFar) {
        return new SheetLine(null, null, null, soFar, null, null);
    }

    static SheetLine totals(SheetTotals all) {
        return new SheetLine(null, null, null, null, all, null);
    }

    static SheetLine of(Problem problem) {
        return new SheetLine(null, null, null, null, null, problem);
    }
}
