package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Curve;
import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.Source;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import dev.slowpoint.api.StepOutcome.Cooling;
import dev.slowpoint.api.StepOutcome.Keeping;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A chill plan: how long a cooked piece takes to cool, and whether that is fast enough. */
@Schema(
        description =
                "How long a cooked piece takes to cool, and whether that keeps the cooling rule. Times are whole seconds"
                        + " from the moment it goes in. A member that does not apply is left out. The same request and parameter set"
                        + " give the same bytes.")
public record ChillPlanAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
        String digest,

        @Schema(
                description = "Temperature of the medium counted with.",
                example = "0.5",
                minimum = "-40",
                maximum = "25")
        @Unit("Cel")
        double mediumC,

        @Schema(
                description =
                        "When the chill ends: after the time asked for, or when all of the piece is cold enough to"
                                + " store. Absent if it never is.")
        @Nullable
        Milestone ends,

        @Schema(description = "Core at its end, values as given.", example = "4.4", minimum = "-60", maximum = "100")
        @Unit("Cel")
        double coreC,

        @Schema(
                description = "Core at its end, the least over the tolerances.",
                example = "3.1",
                minimum = "-60",
                maximum = "100")
        @Unit("Cel")
        double coreLowC,

        @Schema(
                description = "Core at its end, the most over the tolerances.",
                example = "6.2",
                minimum = "-60",
                maximum = "100")
        @Unit("Cel")
        double coreHighC,

        @Schema(description = "Whether the cooling rule is kept.")
        Cooling cooling,

        @Schema(description = "Whether the store is cold and short enough; only if one was sent.") @Nullable
        Keeping keeping,

        @Schema(description = "What to know about this plan.") @Items(max = NoticeTranslation.MOST_WARNINGS)
        List<Warning> warnings,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<Reason> cautions,

        @Schema(description = "Temperatures over time; with `include=curve`.") @Nullable
        Curve curve,

        @Schema(description = "Where the numbers come from; with `include=sources`.") @Nullable @Items(max = 200)
        List<Source> sources) {

    /** Rounds, and copies the lists. */
    public ChillPlanAnswer {
        mediumC = Figures.temperatureC(mediumC);
        coreC = Figures.temperatureC(coreC);
        coreLowC = Figures.temperatureC(coreLowC);
        coreHighC = Figures.temperatureC(coreHighC);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
        sources = sources == null ? null : List.copyOf(sources);
    }
}
