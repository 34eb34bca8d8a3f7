package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Milestone;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What one step after the bath does to the piece. */
@Schema(
        description =
                "What one step after the bath does to the piece. Beside the common members stands the part that belongs"
                        + " to the step: `holding` (and `swapWater`), `interruption`, `sear`, `cooling`, `keeping` or `reheating`.")
public record StepOutcome(
        @Schema(
                description = "The step, as asked.",
                examples = {"bath", "sear", "chill"})
        String step,

        @Schema(description = "When it begins.") @Nullable Milestone begins,

        @Schema(description = "When it ends.") @Nullable Milestone ends,

        @Schema(description = "Core at its end, values as given.", example = "4.4", minimum = "-60", maximum = "400")
        @Unit("Cel")
        double coreC,

        @Schema(
                description = "Core at its end, the least over the tolerances.",
                example = "3.1",
                minimum = "-60",
                maximum = "400")
        @Unit("Cel")
        double coreLowC,

        @Schema(
                description = "Core at its end, the most over the tolerances.",
                example = "6.2",
                minimum = "-60",
                maximum = "400")
        @Unit("Cel")
        double coreHighC,

        @Schema(description = "Surface at its end, values as given.", example = "1.2", minimum = "-60", maximum = "400")
        @Unit("Cel")
        double surfaceC,

        @Schema(description = "Of a further bath.") @Nullable
        Holding holding,

        @Schema(description = "Of a bath cooler than the one before, where its volume is known.") @Nullable
        SwapWater swapWater,

        @Schema(description = "Of a bath whose heater was off.") @Nullable
        Interruption interruption,

        @Schema(description = "Of a sear.") @Nullable SearEffect sear,

        @Schema(description = "Of a chill, and of a store into which the piece went warm.") @Nullable
        Cooling cooling,

        @Schema(description = "Of a store.") @Nullable Keeping keeping,

        @Schema(description = "Of a reheat.") @Nullable Reheating reheating) {

    /** Rounds. */
    public StepOutcome {
        coreC = Figures.temperatureC(coreC);
        coreLowC = Figures.temperatureC(coreLowC);
        coreHighC = Figures.temperatureC(coreHighC);
        surfaceC = Figures.temperatureC(surfaceC);
    }

    /** A further bath. */
    @Schema(name = "Holding", description = "What a further bath does, in the worst case.")
    public record Holding(
            @Schema(
                    description = "By the rule of the plan, all kill since food in counted. Treat an unknown word as"
                            + " `notMet`.",
                    examples = {"met", "notMet", "surfaceOnly", "notApplicable"})
            String verdict,

            @Schema(
                    description = "Achieved log reduction of the organism that decides.",
                    example = "7.12",
                    minimum = "-100",
                    maximum = "1000000")
            @Unit("1")
            @Nullable
            Double achievedLog10,

            @Schema(
                    description = "Time of the coldest point below 52.3 C, where spores that survive a cook grow.",
                    example = "0",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int belowGrowthLimitS,

            @Schema(description = "Whether it is cooler than a business may hold food hot.", example = "false")
            boolean belowHotHolding,

            @Schema(description = "That limit.", example = "57", minimum = "0", maximum = "100") @Unit("Cel")
            double hotHoldingC,

            @Schema(description = "Predicted growth of spore formers; empty for a bath too hot for any.")
            @Items(max = 20)
            List<Growth> growth) {

        /** Rounds, and copies the list. */
        public Holding {
            achievedLog10 = achievedLog10 == null ? null : Figures.achievedLog10(achievedLog10);
            hotHoldingC = Figures.temperatureC(hotHoldingC);
            growth = List.copyOf(growth);
        }
    }

    /** Water to exchange. */
    @Schema(name = "SwapWater", description = "Water to exchange so that the bath drops to its new setpoint at once.")
    public record SwapWater(
            @Schema(description = "To take out and replace.", example = "3.4", minimum = "0", maximum = "2000")
            @Unit("L")
            double volumeL,

            @Schema(
                    description = "Temperature of the tap water counted with.",
                    example = "15",
                    minimum = "0",
                    maximum = "100")
            @Unit("Cel")
            double tapC) {

        /** Rounds. */
        public SwapWater {
            volumeL = Figures.volumeL(volumeL);
            tapC = Figures.temperatureC(tapC);
        }
    }

    /** A time without heater. */
    @Schema(name = "Interruption", description = "A time without heater, over the tolerances.")
    public record Interruption(
            @Schema(
                    description =
                            "What follows: `mayGoOn` or `discardOrDecide` (discard it, or get a food-safety decision)."
                                    + " Treat an unknown word as `discardOrDecide`.",
                    examples = {"mayGoOn", "discardOrDecide"})
            String verdict,

            @Schema(description = "How long the heater was off.") @Nullable
            Milestone off,

            @Schema(description = "Whether that was worked out from the temperature found.", example = "true")
            boolean inferred,

            @Schema(
                    description = "Water at the end, values as given.",
                    example = "51",
                    minimum = "-10",
                    maximum = "100")
            @Unit("Cel")
            double waterC,

            @Schema(
                    description = "Below it counts: the upper growth limit of Clostridium perfringens.",
                    example = "52.3",
                    minimum = "0",
                    maximum = "100")
            @Unit("Cel")
            double growthLimitC,

            @Schema(
                    description = "Longest time of the water below it.",
                    example = "3600",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int waterBelowS,

            @Schema(
                    description = "Longest time of the coldest point of the piece below it.",
                    example = "1800",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int coldestBelowS,

            @Schema(
                    description = "Longest time of its warmest point below it.",
                    example = "900",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int warmestBelowS,

            @Schema(description = "Cooling rule that it is held against, see `/v1/rules`.", example = "S-OPT1")
            String rule,

            @Schema(description = "Whether no limit of that rule was exceeded.", example = "true")
            boolean withinRule,

            @Schema(description = "Predicted growth of spore formers while the heater was off.") @Items(max = 20)
            List<Growth> growth) {

        /** Rounds, and copies the list. */
        public Interruption {
            waterC = Figures.temperatureC(waterC);
            growthLimitC = Figures.temperatureC(growthLimitC);
            growth = List.copyOf(growth);
        }
    }

    /** A hot finish. */
    @Schema(name = "SearEffect", description = "What a sear does inside.")
    public record SearEffect(
            @Schema(
                    description = "Rise of the core from the start of the sear to its peak, values as given.",
                    example = "2.4",
                    minimum = "-100",
                    maximum = "400")
            @Unit("K")
            double riseK,

            @Schema(description = "The most over the tolerances.", example = "3.1", minimum = "-100", maximum = "400")
            @Unit("K")
            double riseHighK,

            @Schema(
                    description =
                            "When the core peaks, counted from the end of the sear; negative where that is before it.",
                    example = "240",
                    minimum = "-100000000",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer peaksAfterS,

            @Schema(
                    description = "Core at its peak, values as given.",
                    example = "56.1",
                    minimum = "-60",
                    maximum = "400")
            @Unit("Cel")
            double peakC,

            @Schema(description = "The most over the tolerances.", example = "57", minimum = "-60", maximum = "400")
            @Unit("Cel")
            double peakHighC,

            @Schema(description = "Core that was wanted.", example = "54", minimum = "-60", maximum = "100")
            @Unit("Cel")
            double wantedC,

            @Schema(
                    description = "How deep below the surface the piece was ever as warm as `doneC`, values as given.",
                    example = "1.8",
                    minimum = "0",
                    maximum = "1000")
            @Unit("mm")
            double depthMm,

            @Schema(description = "The most over the tolerances.", example = "2.3", minimum = "0", maximum = "1000")
            @Unit("mm")
            double depthHighMm,

            @Schema(
                    description = "Temperature that counts as well done.",
                    example = "70",
                    minimum = "0",
                    maximum = "100")
            @Unit("Cel")
            double doneC,

            @Schema(description = "A chill before the sear that keeps the core at what was wanted.") @Nullable
            PreChill chillFirst,

            @Schema(
                    description = "Bath with which the core peaks at what was wanted, this sear included.",
                    example = "52.5",
                    minimum = "20",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double lowerSetpointC) {

        /** Rounds. */
        public SearEffect {
            riseK = Figures.temperatureC(riseK);
            riseHighK = Figures.temperatureC(riseHighK);
            peakC = Figures.temperatureC(peakC);
            peakHighC = Figures.temperatureC(peakHighC);
            wantedC = Figures.temperatureC(wantedC);
            depthMm = Figures.depthMm(depthMm);
            depthHighMm = Figures.depthMm(depthHighMm);
            doneC = Figures.temperatureC(doneC);
            lowerSetpointC = lowerSetpointC == null ? null : Figures.temperatureC(lowerSetpointC);
        }
    }

    /** A chill before a sear. */
    @Schema(name = "PreChill", description = "A chill in ice water before a sear.")
    public record PreChill(
            @Schema(description = "How long.", example = "300", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int durationS,

            @Schema(description = "Temperature of the ice water.", example = "0.5", minimum = "-40", maximum = "25")
            @Unit("Cel")
            double mediumC,

            @Schema(description = "Core when the sear begins.", example = "53", minimum = "-60", maximum = "100")
            @Unit("Cel")
            double coreC,

            @Schema(description = "Core at its peak after the sear.", example = "54", minimum = "-60", maximum = "400")
            @Unit("Cel")
            double peakC) {

        /** Rounds. */
        public PreChill {
            mediumC = Figures.temperatureC(mediumC);
            coreC = Figures.temperatureC(coreC);
            peakC = Figures.temperatureC(peakC);
        }
    }

    /** Cooling after a cook. */
    @Schema(
            name = "Cooling",
            description =
                    "Cooling after a cook, from the end of the last heating to the next one, at the warmest point.")
    public record Cooling(
            @Schema(description = "Whether every limit of the rule is kept over the tolerances.", example = "true")
            boolean kept,

            @Schema(description = "Id of the cooling rule, see `/v1/rules`.", example = "FC-COOL")
            String rule,

            @Schema(description = "The limits of the rule.") @Items(max = 20)
            List<CoolingLimit> limits,

            @Schema(description = "When the warmest point falls to temperatures of interest.") @Items(max = 20)
            List<LevelTime> levels,

            @Schema(
                    description =
                            "Predicted growth of spore formers meanwhile, for information: it never mends a broken"
                                    + " limit.")
            @Items(max = 20)
            List<Growth> growth) {

        /** Copies the lists. */
        public Cooling {
            limits = List.copyOf(limits);
            levels = List.copyOf(levels);
            growth = List.copyOf(growth);
        }
    }

    /** One limit of a cooling rule, and how it was kept. */
    @Schema(name = "CoolingLimit", description = "One limit of a cooling rule, and how it is kept.")
    public record CoolingLimit(
            @Schema(description = "Where its clock starts.", example = "57", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double fromC,

            @Schema(description = "Where its clock stops.", example = "21", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double toC,

            @Schema(
                    description = "The longest time.",
                    example = "7200",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int longestS,

            @Schema(description = "Time on its clock; absent if its end is not reached.") @Nullable
            Milestone taken,

            @Schema(
                    description =
                            "What is left of the limit in the worst case; negative if exceeded, absent if its end is not"
                                    + " reached.",
                    example = "3600",
                    minimum = "-100000000",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer leftS,

            @Schema(description = "Whether it is kept over the tolerances.", example = "true")
            boolean kept) {

        /** Rounds. */
        public CoolingLimit {
            fromC = Figures.temperatureC(fromC);
            toC = Figures.temperatureC(toC);
        }
    }

    /** When the warmest point falls to a temperature. */
    @Schema(name = "LevelTime", description = "When the warmest point falls to a temperature.")
    public record LevelTime(
            @Schema(description = "The temperature.", example = "10", minimum = "-40", maximum = "100") @Unit("Cel")
            double levelC,

            @Schema(description = "Counted from the begin of cooling; absent if it is not reached.") @Nullable
            Milestone after) {

        /** Rounds. */
        public LevelTime {
            levelC = Figures.temperatureC(levelC);
        }
    }

    /** Predicted growth. */
    @Schema(name = "Growth", description = "Predicted growth by one published model, in the worst case, rounded up.")
    public record Growth(
            @Schema(description = "What grows.", example = "cPerfringens")
            String organism,

            @Schema(description = "Id of the model in the parameter set.", example = "G-CP")
            String model,

            @Schema(
                    description =
                            "Decimal orders, the most over the tolerances and all points. Absent where the model was"
                                    + " tested at none of the temperatures: then nothing is predicted, which does not mean no growth.",
                    example = "0.31",
                    minimum = "0",
                    maximum = "1000000")
            @Unit("1")
            @Nullable
            Double growthLog10,

            @Schema(
                    description = "The same for the values as given.",
                    example = "0.2",
                    minimum = "0",
                    maximum = "1000000")
            @Unit("1")
            @Nullable
            Double nominalLog10,

            @Schema(
                    description = "Whether the lag of spores after a cook was taken off; else this is an upper bound.",
                    example = "true")
            boolean lagCounted,

            @Schema(
                    description =
                            "Coldest temperature the model was tested at; only where nothing is predicted. All of them"
                                    + " stand in the sources.",
                    example = "10",
                    minimum = "-10",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double testedFromC,

            @Schema(
                    description = "Warmest temperature it was tested at; only where nothing is predicted.",
                    example = "51",
                    minimum = "-10",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double testedToC,

            @Schema(
                    description =
                            "Longest time of a point where the organism grows and the model was not tested; only if"
                                    + " any.",
                    example = "95",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer untestedS) {

        /** Rounds. */
        public Growth {
            growthLog10 = growthLog10 == null ? null : Figures.growthLog10(growthLog10);
            nominalLog10 = nominalLog10 == null ? null : Figures.growthLog10(nominalLog10);
            testedFromC = testedFromC == null ? null : Figures.temperatureC(testedFromC);
            testedToC = testedToC == null ? null : Figures.temperatureC(testedToC);
        }
    }

    /** A limit of exposure. */
    @Schema(
            name = "Exposure",
            description =
                    "How long food may be at the temperature of the store before an organism grows or forms toxin, by"
                            + " rule. The only statement there is for botulism spores, for which no growth rate was published.")
    public record Exposure(
            @Schema(description = "What grows.", example = "cBotulinumNonProteolytic")
            String organism,

            @Schema(description = "Id of the limit in the parameter set.", example = "X-CBN-1")
            String limit,

            @Schema(description = "Longest time.", example = "7", minimum = "0", maximum = "10000") @Unit("d")
            double longestDays,

            @Schema(description = "Whether this store alone is no longer.", example = "true")
            boolean kept) {

        /** Rounds, never up. */
        public Exposure {
            longestDays = Figures.days(longestDays);
        }
    }

    /** Time in a cold store. */
    @Schema(name = "Keeping", description = "Whether a store is cold and short enough.")
    public record Keeping(
            @Schema(description = "Whether the time asked for is allowed.", example = "true")
            boolean kept,

            @Schema(
                    description =
                            "The most that is allowed, earlier stores counted; 0 for eat at once, absent for no limit"
                                    + " while frozen.",
                    example = "7",
                    minimum = "0",
                    maximum = "10000")
            @Unit("d")
            @Nullable
            Double longestDays,

            @Schema(description = "Time asked for.", example = "5", minimum = "0", maximum = "60") @Unit("d")
            double askedDays,

            @Schema(
                    description = "Why it is limited so. Treat an unknown word as `notFitToKeep`.",
                    examples = {"coldHoldsSpores", "listeriaNotKilled", "notFitToKeep"})
            String basis,

            @Schema(description = "Id of the limit in the parameter set.", example = "FC-ROP-5C")
            String limit,

            @Schema(description = "Organism that it is about, where it names one.", example = "listeriaMonocytogenes")
            @Nullable
            String organism,

            @Schema(
                    description =
                            "Predicted growth meanwhile of what a store does not stop, for information: it never makes a"
                                    + " limit longer.")
            @Items(max = 20)
            List<Growth> growth,

            @Schema(description = "Limits of exposure at its temperature; empty where no rule names one.")
            @Items(max = 20)
            List<Exposure> exposures) {

        /** Rounds, and copies the lists. */
        public Keeping {
            growth = List.copyOf(growth);
            exposures = List.copyOf(exposures);
            longestDays = longestDays == null ? null : Figures.days(longestDays);
            askedDays = Figures.days(askedDays);
        }
    }

    /** Warming up again. */
    @Schema(name = "Reheating", description = "What a reheat does.")
    public record Reheating(
            @Schema(description = "When the core is near its target, counted from the begin of the step.") @Nullable
            Milestone hotThroughAfter,

            @Schema(description = "Time of the coldest point in the warm-up range.") @Nullable
            Milestone warmUp,

            @Schema(description = "Predicted growth of spore formers meanwhile; empty for a bath too hot for any.")
            @Items(max = 20)
            List<Growth> growth,

            @Schema(description = "What rules ask of a reheat, by what is done with the food afterwards.")
            @Items(max = 20)
            List<ReheatCheck> checks,

            @Schema(
                    description = "Log reduction of Listeria by this step alone, in the worst case.",
                    example = "0.4",
                    minimum = "0",
                    maximum = "1000000")
            @Unit("1")
            double killLog10,

            @Schema(description = "Whether that makes the step a kill step of its own.", example = "false")
            boolean killStep) {

        /** Rounds, and copies the lists. */
        public Reheating {
            growth = List.copyOf(growth);
            checks = List.copyOf(checks);
            killLog10 = Figures.achievedLog10(killLog10);
        }
    }

    /** What a rule asks of a reheat. */
    @Schema(name = "ReheatCheck", description = "What a rule asks of a reheat, and whether this one does it.")
    public record ReheatCheck(
            @Schema(
                    description = "What the food is reheated for.",
                    examples = {"serveAtOnce", "hotHolding", "hotHoldingReadyToEat", "leftovers"})
            String use,

            @Schema(description = "Id of the row in the parameter set.", example = "REHEAT-HOLD")
            String rule,

            @Schema(description = "Whether it is met at the coldest point over the tolerances.", example = "true")
            boolean met) {}
}
