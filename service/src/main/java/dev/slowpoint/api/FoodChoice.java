package dev.slowpoint.api;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What is cooked: a food of the catalogue, or one described by its composition. */
@Schema(description = "A food of the catalogue by `id`, or any other by `composition`; exactly one of the two.")
public record FoodChoice(
        @Schema(
                description = "Id from `/v1/foods`.",
                example = "pork-loin",
                pattern = "[a-z0-9]+(-[a-z0-9]+)*",
                maxLength = 64)
        @Nullable
        String id,

        @Schema(description = "Composition of a food that the catalogue lacks.") @Nullable
        CompositionPercent composition,

        @Schema(
                description = "What kind of food was described by its composition; decides hazards and freezing.",
                example = "pork")
        @Nullable
        FoodGroup group,

        @Schema(
                description = "Class of the texture model for a food described by its composition. Texture is not"
                        + " judged if absent.",
                example = "beef_tender",
                pattern = "[a-z0-9]+([-_][a-z0-9]+)*",
                maxLength = 64)
        @Nullable
        String textureClass,

        @Schema(
                description =
                        "What was done to the piece. Intact if absent, or for a food that does not come intact the"
                                + " least handled of its forms.",
                example = "intact")
        @Nullable
        Form form,

        @Schema(description = "Raw, or cooked before and chilled.", example = "raw", defaultValue = "raw")
        Condition condition,

        @Schema(
                description = "Fat in percent of mass of this piece, where it differs from the catalogue.",
                example = "8",
                minimum = "0",
                maximum = "90")
        @Unit("%")
        @Nullable
        Double fatPercent,

        @Schema(
                description = "Whether a fish was frozen before, as is done against parasites.",
                example = "false",
                defaultValue = "false")
        boolean previouslyFrozen)
        implements Checked {

    @Override
    public void check(String at, Faults faults) {
        if (id == null && composition == null) {
            faults.add(Fault.of(at, ProblemCode.ONE_OF_REQUIRED, "FAULT_FOOD_NEEDED"));
        }
        if (id != null) {
            Exclusion.of("id", at, faults)
                    .excludes("composition", composition)
                    .excludes("group", group)
                    .excludes("textureClass", textureClass);
        }
        if (composition != null && group == null) {
            faults.add(Fault.of(Pointer.child(at, "group"), ProblemCode.COMPANION_MISSING, "FAULT_GROUP_NEEDED"));
        }
        if (composition != null) {
            Exclusion.of("composition", at, faults).excludes("fatPercent", fatPercent);
        }
    }

    /** Composition in percent of mass. */
    @Schema(description = "Composition in percent of mass. The six parts must add up to between 98 and 102.")
    public record CompositionPercent(
            @Schema(description = "Water.", example = "72", minimum = "0", maximum = "100") @Unit("%")
            double waterPercent,

            @Schema(description = "Protein.", example = "21", minimum = "0", maximum = "100") @Unit("%")
            double proteinPercent,

            @Schema(description = "Fat.", example = "6", minimum = "0", maximum = "100") @Unit("%")
            double fatPercent,

            @Schema(
                    description = "Carbohydrate without fibre.",
                    example = "0",
                    minimum = "0",
                    maximum = "100",
                    defaultValue = "0")
            @Unit("%")
            double carbohydratePercent,

            @Schema(description = "Fibre.", example = "0", minimum = "0", maximum = "100", defaultValue = "0")
            @Unit("%")
            double fibrePercent,

            @Schema(description = "Ash.", example = "1", minimum = "0", maximum = "100", defaultValue = "0") @Unit("%")
            double ashPercent)
            implements Checked {

        private static final double LEAST = 98.0;
        private static final double GREATEST = 102.0;

        @Override
        public void check(String at, Faults faults) {
            double sum = waterPercent + proteinPercent + fatPercent + carbohydratePercent + fibrePercent + ashPercent;
            if (sum < LEAST || sum > GREATEST) {
                String shown = Suspicion.shown(Figures.percent(sum));
                Fault fault = Fault.of(at, ProblemCode.SUM_NOT_WHOLE, "FAULT_SUM", shown)
                        .value(shown)
                        .range(LEAST, GREATEST, "%");
                faults.add(sum > 0.9 && sum < 1.1 ? fault.hint("HINT_FRACTIONS") : fault);
            }
        }
    }
}
