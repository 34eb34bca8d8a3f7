package dev.slowpoint.api;

import dev.slowpoint.api.MarginViews.Table;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A cook plan: when the piece is hot through, when it is safe, and when its texture is best, never merged into one time.
 * Numbers are rounded by {@link Figures} when a record is made.
 */
@Schema(
        description =
                "When the piece is hot through, when it is safe and when its texture is best. Times are whole seconds"
                        + " from food in. A member that does not apply is left out. The same request and parameter set give the"
                        + " same bytes.")
public record CookPlanAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
        String digest,

        @Schema(description = "Bath temperature of the plan.", example = "60", minimum = "20", maximum = "100")
        @Unit("Cel")
        double setpointC,

        @Schema(
                description = "Why this bath temperature; only if the service recommended it.",
                example = "The coolest bath that makes this piece safe in six hours.")
        @Nullable
        String setpointReason,

        @Schema(description = "The moments that matter.") Times times,

        @Schema(
                description = "When to take the piece out: the one answer a display shows. Absent, with a reason beside"
                        + " it, when no time satisfies all that is asked.")
        @Nullable
        TakeOut takeOut,

        @Schema(description = "Why there is no time to take it out.") @Nullable
        Reason noTakeOutReason,

        @Schema(description = "The piece at `serveAfterS`; only if that was asked.") @Nullable
        AtServe atServe,

        @Schema(description = "Whether the rule is met, and by what margin.")
        SafetyVerdict safety,

        @Schema(description = "What the cook does to the texture.")
        Texture texture,

        @Schema(description = "What the food does to the water; only if `volumeL` and `heaterW` were sent.") @Nullable
        BathCourse bath,

        @Schema(description = "What each step after the bath does, in order; only if steps were sent.")
        @Nullable
        @Items(max = 12)
        List<StepOutcome> then,

        @Schema(
                description =
                        "What all steps together do to the texture, at the end of the last; only if steps were sent.")
        @Nullable
        Texture textureAtEnd,

        @Schema(description = "What to know about this plan.") @Items(max = NoticeTranslation.MOST_WARNINGS)
        List<Warning> warnings,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<Reason> cautions,

        @Schema(description = "Temperatures over time; with `include=curve`.") @Nullable
        Curve curve,

        @Schema(description = "Every organism that was judged; with `include=organisms`.") @Nullable @Items(max = 20)
        List<Organism> organisms,

        @Schema(description = "What a sample of possible cooks says; with `include=uncertainty`.") @Nullable
        UncertaintyAnswer uncertainty,

        @Schema(description = "Further views of the margin; with `include=margins`.") @Nullable
        MarginViews margins,

        @Schema(
                description =
                        "The largest share by which times may be computed too short because a body with ends is run"
                                + " without; already added to what is late. With `include=sources`, only for such bodies.",
                example = "4.2",
                minimum = "0",
                maximum = "100")
        @Unit("%")
        @Nullable
        Double shapeErrorPercent,

        @Schema(description = "Where the numbers come from; with `include=sources`.") @Nullable @Items(max = 200)
        List<Source> sources,

        @Schema(
                description =
                        "How every other rule would judge the same cook at `safety.judgedAtS`; with `include=rules`.")
        @Nullable
        @Items(max = 100)
        List<OtherRule> otherRules) {

    /** More than the longest chain of steps that may be asked for: twelve stores of sixty days each, and baths [s]. */
    static final String LONGEST = "100000000";

    /** Rounds, and copies the lists. */
    public CookPlanAnswer {
        setpointC = Figures.temperatureC(setpointC);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
        then = then == null ? null : List.copyOf(then);
        organisms = organisms == null ? null : List.copyOf(organisms);
        shapeErrorPercent = shapeErrorPercent == null ? null : Figures.errorPercent(shapeErrorPercent);
        sources = sources == null ? null : List.copyOf(sources);
        otherRules = otherRules == null ? null : List.copyOf(otherRules);
    }

    /** The moments that matter; one that is never reached is absent. */
    @Schema(description = "The moments that matter. One that is never reached, or not asked, is absent.")
    public record Times(
            @Schema(description = "The core is within `withinK` of the target temperature.") @Nullable
            Milestone hotThrough,

            @Schema(description = "The rule is met at the place that heats most slowly.") @Nullable
            Milestone safe,

            @Schema(description = "The texture opens.") @Nullable
            Milestone tender,

            @Schema(description = "The texture closes.") @Nullable
            Milestone goodUntil,

            @Schema(description = "Too soft for most.") @Nullable
            Milestone softFrom) {}

    /** One moment over the stated tolerances. */
    @Schema(description = "One moment: for the values as given, and the earliest and latest over the tolerances.")
    public record Milestone(
            @Schema(description = "For the values as given.", example = "6840", minimum = "0", maximum = LONGEST)
            @Unit("s")
            @Nullable
            Integer nominalS,

            @Schema(
                    description = "If everything helps. Absent if not even then.",
                    example = "6120",
                    minimum = "0",
                    maximum = LONGEST)
            @Unit("s")
            @Nullable
            Integer earlyS,

            @Schema(
                    description = "If everything hinders. Absent if then never.",
                    example = "7740",
                    minimum = "0",
                    maximum = LONGEST)
            @Unit("s")
            @Nullable
            Integer lateS) {}

    /** When to take the piece out. */
    @Schema(description = "When to take the piece out.")
    public record TakeOut(
            @Schema(description = "Not before.", example = "7740", minimum = "0", maximum = LONGEST) @Unit("s")
            int earliestS,

            @Schema(description = "Best.", example = "8100", minimum = "0", maximum = LONGEST) @Unit("s")
            int bestS,

            @Schema(
                    description = "Not after; absent when nothing known closes the texture.",
                    example = "21600",
                    minimum = "0",
                    maximum = LONGEST)
            @Unit("s")
            @Nullable
            Integer latestS) {}

    /** A code and its sentence. */
    @Schema(description = "A code for programs and a sentence for people.")
    public record Reason(
            @Schema(
                    description = "For programs." + " Show the text of an unknown word.",
                    examples = {"ESTIMATE_NOT_GUARANTEE", "RULE_NEVER_MET"})
            String code,

            @Schema(description = "For people.", example = "Where a local food code asks for more, the code prevails.")
            String text) {}

    /** The piece at the moment it is planned to leave the bath. */
    @Schema(description = "The piece at the moment it is planned to leave the bath.")
    public record AtServe(
            @Schema(description = "The moment.", example = "7200", minimum = "60", maximum = LONGEST) @Unit("s")
            int atS,

            @Schema(description = "Core, values as given.", example = "58.91", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double coreC,

            @Schema(description = "Core if everything helps.", example = "59.4", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double coreEarlyC,

            @Schema(description = "Core if everything hinders.", example = "57.96", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double coreLateC,

            @Schema(description = "Surface, values as given.", example = "59.95", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double surfaceC) {

        /** Rounds. */
        public AtServe {
            coreC = Figures.temperatureC(coreC);
            coreEarlyC = Figures.temperatureC(coreEarlyC);
            coreLateC = Figures.temperatureC(coreLateC);
            surfaceC = Figures.temperatureC(surfaceC);
        }
    }

    /** What the cook does to the texture. */
    @Schema(name = "Texture", description = "What the cook does to the texture.")
    public record Texture(
            @Schema(
                    description =
                            "Where the best moment lies in the window, or `none` if texture is not modelled or the"
                                    + " window never opens. Treat an unknown word as `none`.",
                    examples = {"before", "within", "past", "none"})
            String verdict,

            @Schema(description = "When the texture is best.") @Nullable
            Window windowS,

            @Schema(description = "Loss of moisture.", example = "11.5", minimum = "0", maximum = "100")
            @Unit("%")
            @Nullable
            Double moistureLossPercent,

            @Schema(
                    description = "What closes the window." + " Treat an unknown word as `notModelled`.",
                    examples = {"softening", "dryness", "notReached", "notModelled"})
            @Nullable
            String limit,

            @Schema(
                    description = "How much the window may be trusted." + " Treat an unknown word as `low`.",
                    examples = {"low", "medium"})
            @Nullable
            String confidence) {

        /** Rounds. */
        public Texture {
            moistureLossPercent = moistureLossPercent == null ? null : Figures.percent(moistureLossPercent);
        }
    }

    /** What the food does to the water. */
    @Schema(name = "BathCourse", description = "What the food does to the water, values as given.")
    public record BathCourse(
            @Schema(description = "Its lowest temperature.", example = "57.3", minimum = "-60", maximum = "100")
            @Unit("Cel")
            double lowestC,

            @Schema(description = "When that is.", example = "420", minimum = "0", maximum = LONGEST) @Unit("s")
            int lowestAtS,

            @Schema(
                    description = "When it is back within `withinK` of its setpoint; absent if it does not come back.",
                    example = "1500",
                    minimum = "0",
                    maximum = LONGEST)
            @Unit("s")
            @Nullable
            Integer backAtS) {

        /** Rounds. */
        public BathCourse {
            lowestC = Figures.temperatureC(lowestC);
        }
    }

    /** A span of time. */
    @Schema(name = "Window", description = "A span of time. Open to one side if that member is absent.")
    public record Window(
            @Schema(description = "From.", example = "5400", minimum = "0", maximum = LONGEST) @Unit("s") @Nullable
            Integer opensS,

            @Schema(description = "To.", example = "28800", minimum = "0", maximum = LONGEST) @Unit("s") @Nullable
            Integer closesS) {}

    /** What to know about a plan. */
    @Schema(name = "Warning", description = "What to know about this plan; each code is explained at `/v1/warnings`.")
    public record Warning(
            @Schema(
                    description = "For programs." + " Go by `severity` for an unknown word, and show the text.",
                    examples = {"WARM_UP_OVER_4H", "FROM_FROZEN"})
            String code,

            @Schema(
                    description = "How grave. Treat an unknown word as `danger`.",
                    examples = {"info", "caution", "danger"})
            String severity,

            @Schema(
                    description = "For people.",
                    example = "The core takes more than six hours to leave the growth range.")
            String text) {}

    /** Temperatures over time. */
    @Schema(name = "Curve", description = "Temperatures over time; the lists have the same length.")
    public record Curve(
            @Schema(description = "Moments.", example = "0", minimum = "0", maximum = LONGEST)
            @Unit("s")
            @Items(max = 4000)
            List<Integer> timesS,

            @Schema(description = "Core.", example = "4", minimum = "-60", maximum = "400")
            @Unit("Cel")
            @Items(max = 4000)
            List<Double> coreC,

            @Schema(description = "Core if everything helps.", example = "6", minimum = "-60", maximum = "400")
            @Unit("Cel")
            @Items(max = 4000)
            List<Double> coreEarlyC,

            @Schema(description = "Core if everything hinders.", example = "2", minimum = "-60", maximum = "400")
            @Unit("Cel")
            @Items(max = 4000)
            List<Double> coreLateC,

            @Schema(description = "Surface.", example = "4", minimum = "-60", maximum = "400")
            @Unit("Cel")
            @Items(max = 4000)
            List<Double> surfaceC,

            @Schema(description = "Mean of the piece.", example = "4", minimum = "-60", maximum = "400")
            @Unit("Cel")
            @Items(max = 4000)
            List<Double> meanC,

            @Schema(
                    description =
                            "Water, as told, recorded or computed, else its setpoint. With replans, and with plans without steps"
                                    + " where volume and heater are told.",
                    example = "60",
                    minimum = "-60",
                    maximum = "400")
            @Unit("Cel")
            @Nullable
            @Items(max = 4000)
            List<Double> waterC) {

        /** Rounds, and refuses lists of different lengths. */
        public Curve {
            timesS = List.copyOf(timesS);
            coreC = rounded(coreC, timesS);
            coreEarlyC = rounded(coreEarlyC, timesS);
            coreLateC = rounded(coreLateC, timesS);
            surfaceC = rounded(surfaceC, timesS);
            meanC = rounded(meanC, timesS);
            waterC = waterC == null ? null : rounded(waterC, timesS);
        }

        private static List<Double> rounded(List<Double> temperaturesC, List<Integer> timesS) {
            if (temperaturesC.size() != timesS.size()) {
                throw new IllegalArgumentException(
                        "a curve of " + timesS.size() + " moments has " + temperaturesC.size() + " temperatures");
            }
            return temperaturesC.stream().map(Figures::temperatureC).toList();
        }
    }

    /** One organism that was judged. */
    @Schema(name = "Organism", description = "One organism that was judged.")
    public record Organism(
            @Schema(description = "Plain id.", example = "listeria")
            String organism,

            @Schema(description = "Id of the requirement.", example = "RQ-POULTRY-CHICKEN")
            String rule,

            @Schema(description = "Required log reduction.", example = "6", minimum = "0", maximum = "20") @Unit("1")
            double requiredLog10,

            @Schema(
                    description = "Achieved log reduction if everything hinders.",
                    example = "8.2",
                    minimum = "-100",
                    maximum = "1000000")
            @Unit("1")
            double achievedLog10,

            @Schema(description = "Achieved less required.", example = "2.2", minimum = "-120", maximum = "1000000")
            @Unit("1")
            double marginLog10,

            @Schema(description = "Whether it informs only and does not decide the verdict.", example = "true")
            boolean advisory,

            @Schema(
                    description = "Whether the rule names a treatment: the numbers then count whole treatments, not log"
                            + " reductions; only if so.",
                    example = "true")
            @Nullable
            Boolean wholeTreatment,

            @Schema(
                    description = "Predicted growth before the core was hot enough to kill, added to what is required;"
                            + " only if any counts.",
                    example = "1.3",
                    minimum = "0",
                    maximum = "1000")
            @Unit("1")
            @Nullable
            Double growthLog10,

            @Schema(
                    description = "The margin if slow heating made it tougher; only where that is less.",
                    example = "0.2",
                    minimum = "-120",
                    maximum = "1000000")
            @Unit("1")
            @Nullable
            Double adaptedMarginLog10,

            @Schema(description = "What the published table says; only where the rule is one.") @Nullable
            Table table) {

        /** Rounds, never in favour of safety. */
        public Organism {
            requiredLog10 = Figures.requiredLog10(requiredLog10);
            achievedLog10 = Figures.achievedLog10(achievedLog10);
            marginLog10 = Figures.achievedLog10(marginLog10);
            growthLog10 = growthLog10 == null ? null : Figures.growthLog10(growthLog10);
            adaptedMarginLog10 = adaptedMarginLog10 == null ? null : Figures.achievedLog10(adaptedMarginLog10);
        }
    }

    /** How another rule would judge. */
    @Schema(
            name = "OtherRule",
            description = "How another rule would judge the same cook at the same moment, if everything hinders.")
    public record OtherRule(
            @Schema(description = "Id of the rule, see `/v1/rules`.", example = "uk-fsa")
            String rule,

            @Schema(
                    description = "As `safety.verdict`. Treat an unknown word as `notMet`.",
                    examples = {"met", "notMet", "surfaceOnly", "notApplicable"})
            String verdict,

            @Schema(
                    description = "`own` if the rule itself asks what decides; `fallback` if it names nothing that was"
                            + " read for this food, and the strictest benchmark that was read stands in."
                            + " Treat an unknown word as `fallback`.",
                    examples = {"own", "fallback"})
            @Nullable
            String basis,

            @Schema(description = "The organism that decides.", example = "listeriaMonocytogenes") @Nullable
            String organism,

            @Schema(
                    description = "Required log reduction; 1 for one whole treatment.",
                    example = "6",
                    minimum = "0",
                    maximum = "20")
            @Unit("1")
            @Nullable
            Double requiredLog10,

            @Schema(
                    description = "Achieved log reduction, or treatments.",
                    example = "1.72",
                    minimum = "-100",
                    maximum = "1000000")
            @Unit("1")
            @Nullable
            Double achievedLog10,

            @Schema(description = "Achieved less required.", example = "-4.28", minimum = "-120", maximum = "1000000")
            @Unit("1")
            @Nullable
            Double marginLog10,

            @Schema(
                    description = "From when on the rule would be met; absent if never, or if it asks for nothing.",
                    example = "5400",
                    minimum = "0",
                    maximum = LONGEST)
            @Unit("s")
            @Nullable
            Integer safeLateS) {

        /** Rounds, never in favour of safety. */
        public OtherRule {
            requiredLog10 = requiredLog10 == null ? null : Figures.requiredLog10(requiredLog10);
            achievedLog10 = achievedLog10 == null ? null : Figures.achievedLog10(achievedLog10);
            marginLog10 = marginLog10 == null ? null : Figures.achievedLog10(marginLog10);
        }
    }

    /** Where a number comes from. */
    @Schema(name = "Source", description = "Where a number comes from.")
    public record Source(
            @Schema(description = "What was taken from it.", example = "thermal properties of pork-loin")
            String what,

            @Schema(
                    description = "How it is known." + " Treat an unknown word as `memory`.",
                    examples = {"read", "fitted", "memory"})
            String mark,

            @Schema(description = "Author, year and table, or the data it was fitted to.", example = "USDA FSIS 2021")
            String source) {}
}
