package dev.slowpoint.api;

import dev.slowpoint.plan.Step;
import dev.slowpoint.safety.Eater;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The question for a chill plan: one cooked piece, one cold medium. */
@Schema(
        description =
                "One cooked piece in one cold medium. All times that follow are seconds counted from the moment it goes"
                        + " in.")
public record ChillPlanRequest(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(
                description = "What is chilled, as in a cook plan. It is taken as cooked; `condition`, `textureClass`,"
                        + " `fatPercent` and `previouslyFrozen` change nothing here.")
        FoodChoice food,

        @Schema(description = "Shape and size of the piece.")
        Geometry geometry,

        @Schema(description = "Temperature of the piece when it goes in.")
        Start start,

        @Schema(description = "What it is chilled in.") Chill chill,

        @Schema(description = "Where it is kept afterwards.") @Nullable
        Store store,

        @Schema(
                description = "Id of the cooling rule to judge by; see `/v1/rules`. The default of the parameter set if"
                        + " absent.",
                example = "FC-COOL",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String rule,

        @Schema(
                description =
                        "Whether the cook is known to have been fit to keep: six decimal reductions of Listeria, as in"
                                + " a cook plan with the purpose `keep` and the verdict `met`.",
                example = "true",
                defaultValue = "false")
        boolean fitToKeep,

        @Schema(description = "Who will eat it.", example = "general", defaultValue = "general")
        Eater eater,

        @Schema(
                description = "How far the real values may lie from those given. Each defaults to the parameter set.",
                defaultValue = "{}")
        Tolerances tolerances) {

    /** Temperature at the start. */
    @Schema(
            name = "ChillStart",
            description =
                    "Temperature of the piece when it goes in: `temperatureC`, or `surfaceC` and `coreC` of a piece that is"
                            + " not even.")
    public record Start(
            @Schema(description = "Even temperature.", example = "60", minimum = "0", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double temperatureC,

            @Schema(description = "Temperature of the surface.", example = "55", minimum = "0", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double surfaceC,

            @Schema(description = "Temperature of the core.", example = "60", minimum = "0", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double coreC)
            implements Checked {

        @Override
        public void check(String at, Faults faults) {
            CookPlanRequest.Start.checkField(temperatureC, surfaceC, coreC, at, faults);
        }
    }

    /** A cold medium. */
    @Schema(name = "Chill", description = "What a piece is chilled in, and for how long.")
    public record Chill(
            @Schema(description = "The medium.", example = "iceWater")
            Step.ChillMedium medium,

            @Schema(
                    description = "Its temperature. The usual one if absent.",
                    example = "0.5",
                    minimum = "-40",
                    maximum = "25")
            @Unit("Cel")
            @Nullable
            Double mediumC,

            @Schema(
                    description = "How long the piece stays in. Until all of it is cold enough to store if absent.",
                    example = "5400",
                    minimum = "1",
                    maximum = CookPlanRequest.LONGEST)
            @Unit("s")
            @Nullable
            Integer durationS) {}

    /** A cold store. */
    @Schema(name = "Store", description = "Where a piece is kept, and for how long.")
    public record Store(
            @Schema(description = "Temperature of the store.", example = "3", minimum = "-40", maximum = "25")
            @Unit("Cel")
            double temperatureC,

            @Schema(description = "Days in the store.", example = "5", minimum = "0.01", maximum = "60") @Unit("d")
            double days) {}

    /** How far the real values may lie from those given. */
    @Schema(name = "ChillTolerances", description = "How far the real values may lie from those given, to either side.")
    public record Tolerances(
            @Schema(description = "Of thickness or diameter.", example = "2", minimum = "0", maximum = "20")
            @Unit("mm")
            @Nullable
            Double thicknessMm,

            @Schema(description = "Of the start temperature.", example = "2", minimum = "0", maximum = "10")
            @Unit("K")
            @Nullable
            Double startK) {}
}
