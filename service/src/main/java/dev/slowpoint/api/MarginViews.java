package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Further views of the margin of the organism that decides. */
@Schema(
        name = "Margins",
        description =
                "Further views of the margin of the organism that decides. Rounded down, never up; what could go wrong"
                        + " is rounded up.")
public record MarginViews(
        @Schema(
                description = "Achieved without limit, less growth, over required: for sizing.",
                example = "1.36",
                minimum = "-100",
                maximum = "1000000")
        @Unit("1")
        @Nullable
        Double marginRatio,

        @Schema(
                description = "Achieved less required for the values as given; for information.",
                example = "5.5",
                minimum = "-120",
                maximum = "1000000")
        @Unit("1")
        @Nullable
        Double nominalMarginLog10,

        @Schema(description = "What the published table says; only where the rule is one.") @Nullable
        Table table,

        @Schema(
                description =
                        "How likely the target is missed because bacteria differ, with size, bath and heating at their worst"
                                + " as for the margin: by measured kill and its spread, never by the line of a rule. At least"
                                + " 0.001, because nobody measured such tails. Informs and never decides.",
                example = "0.034",
                minimum = "0.001",
                maximum = "1")
        @Unit("1")
        @Nullable
        Double missProbability,

        @Schema(description = "Id of the measured kill in the parameter set.", example = "KC-SALM-BEEF") @Nullable
        String kinetics,

        @Schema(
                description = "Its spread: standard deviation of log10 of the time for one log reduction.",
                example = "0.107",
                minimum = "0",
                maximum = "2")
        @Unit("1")
        @Nullable
        Double spreadLog10D,

        @Schema(description = "Why there is no probability.") @Nullable
        Reason noProbabilityReason,

        @Schema(
                description =
                        "Predicted growth of toxin formers while warming up. 3 log or more means that toxin is likely,"
                                + " which no cooking undoes; the limit of the warm-up decides.")
        @Items(max = 20)
        List<StepOutcome.Growth> warmUpGrowth) {

    /** Rounds, never in favour of safety, and copies the list. */
    public MarginViews {
        marginRatio = marginRatio == null ? null : Figures.marginRatio(marginRatio);
        nominalMarginLog10 = nominalMarginLog10 == null ? null : Figures.achievedLog10(nominalMarginLog10);
        missProbability = missProbability == null ? null : Figures.missProbability(missProbability);
        warmUpGrowth = List.copyOf(warmUpGrowth);
    }

    /** The legal view. */
    @Schema(
            name = "TableView",
            description =
                    "What a published table says of the slowest-heating point: no credit for the way up, any row will"
                            + " do. The row that is best met, or nearest to being met.")
    public record Table(
            @Schema(description = "Id of the table in the parameter set.", example = "fsis-meat-6.5")
            String table,

            @Schema(description = "Temperature of the row.", example = "60", minimum = "0", maximum = "100")
            @Unit("Cel")
            double rowC,

            @Schema(
                    description = "Time that the row asks for; 0 for an instant row.",
                    example = "720",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int requiredS,

            @Schema(
                    description = "Time at or above it, the reading error taken off.",
                    example = "1900",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int dwelledS,

            @Schema(
                    description = "Time beyond what is asked; negative for what is missing.",
                    example = "1180",
                    minimum = "-100000000",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int marginS,

            @Schema(
                    description = "Time over what is asked; absent for an instant row.",
                    example = "2.63",
                    minimum = "0",
                    maximum = "1000000")
            @Unit("1")
            @Nullable
            Double marginRatio) {

        /** Rounds. */
        public Table {
            rowC = Figures.temperatureC(rowC);
            marginRatio = marginRatio == null ? null : Figures.marginRatio(marginRatio);
        }
    }
}
