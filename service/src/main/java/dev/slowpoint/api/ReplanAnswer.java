package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Curve;
import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.Organism;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.Source;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.CookPlanAnswer.Texture;
import dev.slowpoint.api.CookPlanAnswer.Times;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A replan: what to do now with a cook under way, and the plan from here on. */
@Schema(
        description = "What to do with a cook under way. Times are whole seconds from food in, but for those of `left`,"
                + " which count from now. A member that does not apply is left out. The same request and parameter set"
                + " give the same bytes.")
public record ReplanAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
        String digest,

        @Schema(description = "Setpoint from now on.", example = "60", minimum = "20", maximum = "100") @Unit("Cel")
        double setpointC,

        @Schema(
                description = "`carryOn`: leave it in. `ready`: it may leave the bath now. `changePlan`: no moment"
                        + " satisfies all at this setpoint. `getDecision`: not certified; someone qualified in food"
                        + " safety has to decide, or else throw it away. `discard`: throw it away. Treat an unknown"
                        + " word as `discard`.",
                examples = {"carryOn", "ready", "changePlan", "getDecision", "discard"})
        String decision,

        @Schema(
                description = "Why, where it is not just to go on. Always there where `safety.verdict` is `notMet`; a"
                        + " warning of severity danger is then there too.")
        @Nullable
        Reason reason,

        @Schema(description = "The piece now.") State state,

        @Schema(description = "Time left from now. Absent where the food is to be thrown away or no time fits.")
        @Nullable
        Left left,

        @Schema(description = "The moments that matter, past and future.")
        Times times,

        @Schema(
                description = "When to take the piece out, from food in. Absent, with a reason beside it, when no time"
                        + " satisfies all that is asked; absent as well where the decision is discard or getDecision.")
        @Nullable
        TakeOut takeOut,

        @Schema(description = "Why there is no time to take it out.") @Nullable
        Reason noTakeOutReason,

        @Schema(description = "Whether the rule is met by the whole history, and by what margin.")
        SafetyVerdict safety,

        @Schema(description = "What the cook does to the texture.")
        Texture texture,

        @Schema(description = "What was worked out from what was seen; only if something was.") @Nullable
        Inferred inferred,

        @Schema(description = "What to know about this plan.") @Items(max = NoticeTranslation.MOST_WARNINGS)
        List<Warning> warnings,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<Reason> cautions,

        @Schema(description = "Temperatures over time; with `include=curve`.") @Nullable
        Curve curve,

        @Schema(description = "Every organism that was judged; with `include=organisms`.") @Nullable @Items(max = 20)
        List<Organism> organisms,

        @Schema(description = "Where the numbers come from; with `include=sources`.") @Nullable @Items(max = 200)
        List<Source> sources) {

    /** Rounds, and copies the lists. */
    public ReplanAnswer {
        setpointC = Figures.temperatureC(setpointC);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
        organisms = organisms == null ? null : List.copyOf(organisms);
        sources = sources == null ? null : List.copyOf(sources);
    }

    /** The piece now. */
    @Schema(name = "StateNow", description = "The piece now.")
    public record State(
            @Schema(description = "Now.", example = "3600", minimum = "0", maximum = CookPlanAnswer.LONGEST) @Unit("s")
            int atS,

            @Schema(description = "Core, values as given.", example = "54", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double coreC,

            @Schema(
                    description = "Core, the least over the tolerances.",
                    example = "53",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            double coreLowC,

            @Schema(
                    description = "Core, the most over the tolerances.",
                    example = "55",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            double coreHighC,

            @Schema(description = "Surface, values as given.", example = "64.8", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double surfaceC,

            @Schema(description = "Water, values as given.", example = "65.6", minimum = "-127", maximum = "125")
            @Unit("Cel")
            double waterC) {

        /** Rounds. */
        public State {
            coreC = Figures.temperatureC(coreC);
            coreLowC = Figures.temperatureC(coreLowC);
            coreHighC = Figures.temperatureC(coreHighC);
            surfaceC = Figures.temperatureC(surfaceC);
            waterC = Figures.temperatureC(waterC);
        }
    }

    /** Time left. */
    @Schema(name = "TimeLeft", description = "Time left from now; zero for what has passed.")
    public record Left(
            @Schema(description = "Not before.", example = "2200", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int earliestS,

            @Schema(description = "Best.", example = "2900", minimum = "0", maximum = CookPlanAnswer.LONGEST) @Unit("s")
            int bestS,

            @Schema(
                    description = "Not after; absent when nothing known closes the texture.",
                    example = "20000",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer latestS) {}

    /** What was worked out. */
    @Schema(name = "Inferred", description = "What was worked out from what was seen.")
    public record Inferred(
            @Schema(
                    description = "Thickness or diameter that the core readings mean, in water as told.",
                    example = "47.2",
                    minimum = "0",
                    maximum = "500")
            @Unit("mm")
            @Nullable
            Double thicknessMm,

            @Schema(
                    description = "The least over their error and all explanations.",
                    example = "39.5",
                    minimum = "0",
                    maximum = "500")
            @Unit("mm")
            @Nullable
            Double thicknessLowMm,

            @Schema(
                    description = "The most over their error and all explanations.",
                    example = "52.1",
                    minimum = "0",
                    maximum = "500")
            @Unit("mm")
            @Nullable
            Double thicknessHighMm,

            @Schema(
                    description =
                            "The other explanation: the film coefficient that the readings mean for a piece of the"
                                    + " size told. Absent if none does.",
                    example = "70",
                    minimum = "0",
                    maximum = "5000")
            @Unit("W/(m2.K)")
            @Nullable
            Double filmWPerM2K,

            @Schema(
                    description =
                            "How well the readings by themselves pin the safe time. They may be wrong even so: a tip off"
                                    + " the middle reads too high. Treat an unknown word as `poorly`.",
                    examples = {"well", "fairly", "poorly"})
            @Nullable
            String pinned,

            @Schema(description = "How long the heater was off, all times together; only if it was.") @Nullable
            Milestone heaterOff,

            @Schema(description = "Whether that was worked out from the temperature of the water.", example = "true")
            @Nullable
            Boolean heaterOffWorkedOut) {

        /** Rounds. */
        public Inferred {
            thicknessMm = thicknessMm == null ? null : Figures.depthMm(thicknessMm);
            thicknessLowMm = thicknessLowMm == null ? null : Figures.depthMm(thicknessLowMm);
            thicknessHighMm = thicknessHighMm == null ? null : Figures.depthMm(thicknessHighMm);
            filmWPerM2K = filmWPerM2K == null ? null : Figures.percent(filmWPerM2K);
        }
    }
}
