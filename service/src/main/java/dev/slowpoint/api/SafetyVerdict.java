package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** Whether the rule is met. */
@Schema(
        name = "Safety",
        description = "Whether the rule is met. What was achieved and the margins are rounded down, never up.")
public record SafetyVerdict(
        @Schema(
                description = "`met`, `notMet`, `surfaceOnly` (an intact piece, made safe on its outside alone) or"
                        + " `notApplicable`. Treat an unknown word as `notMet`.",
                examples = {"met", "notMet", "surfaceOnly", "notApplicable"})
        String verdict,

        @Schema(description = "Id of the rule, see `/v1/rules`.", example = "us-fsis-2021")
        String rule,

        @Schema(description = "The organism that decides.", example = "salmonella") @Nullable
        String organism,

        @Schema(description = "Required log reduction.", example = "6.5", minimum = "0", maximum = "20")
        @Unit("1")
        @Nullable
        Double requiredLog10,

        @Schema(
                description = "Achieved log reduction if everything hinders, at `judgedAtS`.",
                example = "7.12",
                minimum = "-100",
                maximum = "1000000")
        @Unit("1")
        @Nullable
        Double achievedLog10,

        @Schema(
                description = "Achieved log reduction for the values as given.",
                example = "9.4",
                minimum = "-100",
                maximum = "1000000")
        @Unit("1")
        @Nullable
        Double nominalLog10,

        @Schema(description = "Achieved less required.", example = "0.62", minimum = "-120", maximum = "1000000")
        @Unit("1")
        @Nullable
        Double marginLog10,

        @Schema(
                description =
                        "The margin in words: `notMet`, `thin` (under 1 log), `normal` (1 to 3) or `wide`. A met rule"
                                + " with a thin margin is no more than met. Treat an unknown word as `notMet`.",
                examples = {"notMet", "thin", "normal", "wide"})
        @Nullable
        String band,

        @Schema(
                description =
                        "Predicted growth before the core was hot enough to kill, added to what is required; only if"
                                + " any counts.",
                example = "1.3",
                minimum = "0",
                maximum = "1000")
        @Unit("1")
        @Nullable
        Double growthLog10,

        @Schema(
                description =
                        "The margin if the slow warm-up made the bacteria twice as heat-tolerant, which was seen and is"
                                + " no upper bound; only where the warm-up is that slow and this is less than `marginLog10`.",
                example = "0.2",
                minimum = "-120",
                maximum = "1000000")
        @Unit("1")
        @Nullable
        Double adaptedMarginLog10,

        @Schema(
                description =
                        "Where the rule is a published table: time beyond what its best row asks, no credit for the way"
                                + " up. Negative if it is not met; then neither is the rule, whatever `marginLog10` says.",
                example = "1180",
                minimum = "-100000000",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        @Nullable
        Integer tableMarginS,

        @Schema(
                description = "By how much the piece may leave the bath sooner before the rule fails.",
                example = "360",
                minimum = "-100000000",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        @Nullable
        Integer marginS,

        @Schema(
                description = "By how much the bath may be colder before the rule fails.",
                example = "0.4",
                minimum = "-100",
                maximum = "100")
        @Unit("K")
        @Nullable
        Double marginK,

        @Schema(
                description = "By how much the piece may be thicker before the rule fails.",
                example = "1.8",
                minimum = "-250",
                maximum = "250")
        @Unit("mm")
        @Nullable
        Double marginMm,

        @Schema(
                description = "Time the core spends where bacteria grow, values as given.",
                example = "2400",
                minimum = "0",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        int growthRangeS,

        @Schema(
                description = "Worst-case time the core spends between 10 and 54.4 C.",
                example = "3100",
                minimum = "0",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        @Nullable
        Integer warmUpS,

        @Schema(
                description = "What is left of the time that the rule allows for warming up; negative if exceeded.",
                example = "18500",
                minimum = "-100000000",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        @Nullable
        Integer warmUpLeftS,

        @Schema(
                description = "The moment to which the verdict belongs.",
                example = "8100",
                minimum = "0",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        @Nullable
        Integer judgedAtS) {

    /** Rounds, never in favour of safety. */
    public SafetyVerdict {
        requiredLog10 = requiredLog10 == null ? null : Figures.requiredLog10(requiredLog10);
        achievedLog10 = achievedLog10 == null ? null : Figures.achievedLog10(achievedLog10);
        nominalLog10 = nominalLog10 == null ? null : Figures.achievedLog10(nominalLog10);
        marginLog10 = marginLog10 == null ? null : Figures.achievedLog10(marginLog10);
        growthLog10 = growthLog10 == null ? null : Figures.growthLog10(growthLog10);
        adaptedMarginLog10 = adaptedMarginLog10 == null ? null : Figures.achievedLog10(adaptedMarginLog10);
        marginK = marginK == null ? null : Figures.marginK(marginK);
        marginMm = marginMm == null ? null : Figures.marginMm(marginMm);
    }
}
