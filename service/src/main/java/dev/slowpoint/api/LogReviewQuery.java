package dev.slowpoint.api;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.plan.LogTask;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What stands in the query when a log comes as a table: the members of {@link LogReviewRequest} that are not its columns. */
@Schema(description = "What goes with a log that is sent as a table.")
record LogReviewQuery(
        @Schema(
                description = "Version of the parameter set.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(
                description = "Id of the food.",
                example = "pork-loin",
                pattern = "[a-z0-9]+(-[a-z0-9]+)*",
                maxLength = 64)
        String food,

        @Schema(description = "What was done to the piece.", example = "intact") @Nullable
        Form form,

        @Schema(description = "Raw, or cooked before.", example = "raw", defaultValue = "raw")
        Condition condition,

        @Schema(description = "Fat in percent of mass.", example = "8", minimum = "0", maximum = "90")
        @Unit("%")
        @Nullable
        Double fatPercent,

        @Schema(
                description = "Id of the rule.",
                example = "us-fsis-2021",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String rule,

        @Schema(
                description = "Id of the cooling rule.",
                example = "FC-COOL",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String coolingRule,

        @Schema(description = "Why it was cooked.", example = "serve") @Nullable
        Purpose purpose,

        @Schema(description = "Who will eat it.", example = "general", defaultValue = "general")
        Eater eater,

        @Schema(description = "What to judge, joined by commas.", example = "cooking", defaultValue = "[]")
        @Items(max = 4)
        List<LogTask.Aspect> aspects,

        @Schema(description = "Where the sensor sat.", example = "core")
        LogTask.SensorPlace place,

        @Schema(
                description = "How far its reading may lie from the truth.",
                example = "0.5",
                minimum = "0",
                maximum = "5")
        @Unit("K")
        @Nullable
        Double errorK,

        @Schema(description = "How often it reads.", example = "30", minimum = "0.1", maximum = "900")
        @Unit("s")
        @Nullable
        Double intervalS,

        @Schema(
                description = "The longest time between two readings that counts as read.",
                example = "120",
                minimum = "1",
                maximum = "1800")
        @Unit("s")
        @Nullable
        Double longestGapS,

        @Schema(
                description = "What the record is called.",
                example = "Cook log 17",
                pattern = LogReviewRequest.TEXT,
                maxLength = 120)
        @Nullable
        String label,

        @Schema(
                description = "What the record belongs to.",
                example = "Batch 4, tray 2",
                pattern = LogReviewRequest.TEXT,
                maxLength = 120)
        @Nullable
        String batch) {

    /** Copies the list. */
    LogReviewQuery {
        aspects = List.copyOf(aspects);
    }

    /** The request of this query and two columns. */
    LogReviewRequest with(double[] timesS, double[] temperaturesC) {
        return new LogReviewRequest(
                parameterSet,
                new FoodChoice(food, null, null, null, form, condition, fatPercent, false),
                rule,
                coolingRule,
                purpose,
                eater,
                aspects,
                new LogReviewRequest.Sensor(place, errorK, intervalS),
                timesS,
                temperaturesC,
                longestGapS,
                null,
                null,
                null,
                label,
                batch);
    }
}
