package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;

/** The question for a sheet of portions. */
@Schema(
        description =
                "Many portions for which cards are to be printed. A portion that cannot be planned gets its own problem and"
                        + " does not keep the others from being planned. As a stream of lines there may be any number of them.")
@LongestBody(PortionSheetRequest.LONGEST_BODY)
public record PortionSheetRequest(
        @Schema(description = "What all portions have in common.", defaultValue = "{}")
        SheetTerms sheet,

        @Schema(description = "The portions, in the order of the answer.") @Items(min = 1, max = MOST_PORTIONS)
        List<SheetPortion> portions) {

    /** Most portions of a sheet that is not a stream. */
    static final int MOST_PORTIONS = 10_000;

    /** Longest body [bytes]: so many portions, written with white space. */
    static final int LONGEST_BODY = 12 * 1024 * 1024;

    /** Copies the list. */
    public PortionSheetRequest {
        portions = List.copyOf(portions);
    }
}
