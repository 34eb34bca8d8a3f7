package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.media.Schema;

/** What stands in the query when two parameter sets are compared. */
@Schema(description = "What a parameter set is compared with.")
record DifferenceTerms(
        @Schema(
                description = "Version of the parameter set to compare with.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        String from) {}
