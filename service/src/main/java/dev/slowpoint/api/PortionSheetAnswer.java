package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Cards for many portions. */
@Schema(
        description =
                "Bands of portions that one card serves, and which portion belongs to which. A band is planned for its"
                        + " thickest piece with all tolerances against it, and held against its thinnest. Times are whole"
                        + " seconds from food in, as people can set them. The same portion gets the same card whatever else is"
                        + " on the sheet.")
public record PortionSheetAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
        String digest,

        @Schema(description = "The bands, in the order in which portions first need them.")
        @Items(max = PortionSheets.MOST_BANDS)
        List<SheetBand> bands,

        @Schema(description = "The portions, in the order of the request.")
        @Items(max = PortionSheetRequest.MOST_PORTIONS)
        List<PortionPlace> portions,

        @Schema(description = "How many of what.") SheetTotals totals,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<Reason> cautions) {

    /** Copies the lists. */
    public PortionSheetAnswer {
        bands = List.copyOf(bands);
        portions = List.copyOf(portions);
        cautions = List.copyOf(cautions);
    }

    /** Which band a portion belongs to. */
    @Schema(name = "PortionPlace", description = "Which band a portion belongs to, or why it belongs to none.")
    public record PortionPlace(
            @Schema(description = "As sent; absent if it could not be read.", example = "KIT-0417/a") @Nullable
            String id,

            @Schema(
                    description = "Line of the stream it stands in, counted from 1; only in a stream.",
                    example = "2",
                    minimum = "1",
                    maximum = "2147483647")
            @Nullable
            Integer line,

            @Schema(
                    description = "Number of its band; absent if it cannot be planned.",
                    example = "1",
                    minimum = "1",
                    maximum = "2147483647")
            @Nullable
            Integer band,

            @Schema(description = "Why it cannot be planned, the first eight reasons.")
            @Nullable
            @Items(max = ItemFaults.LISTED)
            List<FaultEntry> problems) {

        /** Copies the list. */
        public PortionPlace {
            problems = problems == null ? null : List.copyOf(problems);
        }
    }

    /** How many of what. */
    @Schema(name = "SheetTotals", description = "How many of what, so far or in all.")
    public record SheetTotals(
            @Schema(description = "Portions.", example = "120", minimum = "0", maximum = "2147483647")
            int portions,

            @Schema(description = "Portions that have a band.", example = "119", minimum = "0", maximum = "2147483647")
            int planned,

            @Schema(description = "Portions that have a problem.", example = "1", minimum = "0", maximum = "2147483647")
            int refused,

            @Schema(description = "Bands.", example = "14", minimum = "0", maximum = "2147483647")
            int bands) {}

    /** A band. */
    @Schema(name = "SheetBand", description = "Pieces of one kind and about one size, which one card serves.")
    public record SheetBand(
            @Schema(description = "Its number on this sheet.", example = "1", minimum = "1", maximum = "2147483647")
            int band,

            @Schema(
                    description = "Id of the food; absent if it was described by its composition.",
                    example = "pork-loin")
            @Nullable
            String food,

            @Schema(
                    description = "What was done to the piece.",
                    examples = {"intact", "minced"})
            String form,

            @Schema(
                    description = "Raw, or cooked before.",
                    examples = {"raw", "cooked"})
            String condition,

            @Schema(
                    description = "Its shape.",
                    examples = {"slab", "brick", "cylinder", "sphere", "egg"})
            String shape,

            @Schema(
                    description = "For pieces thicker than this (or of a larger diameter).",
                    example = "40",
                    minimum = "0",
                    maximum = "1000")
            @Unit("mm")
            double overMm,

            @Schema(description = "Up to this thickness.", example = "45", minimum = "0", maximum = "1000") @Unit("mm")
            double upToMm,

            @Schema(description = "For pieces up to this width.", example = "90", minimum = "0", maximum = "2000")
            @Unit("mm")
            @Nullable
            Double widthUpToMm,

            @Schema(description = "For pieces up to this length.", example = "180", minimum = "0", maximum = "2000")
            @Unit("mm")
            @Nullable
            Double lengthUpToMm,

            @Schema(
                    description = "Bath temperature, as it can be set.",
                    example = "60",
                    minimum = "20",
                    maximum = "101")
            @Unit("Cel")
            double setpointC,

            @Schema(description = "The cards that were asked for.") @Items(max = 4)
            List<SheetCard> cards) {

        /** Rounds: never to a smaller range of sizes than was planned. Copies the list. */
        public SheetBand {
            overMm = Figures.bandMm(overMm);
            upToMm = Figures.bandMm(upToMm);
            setpointC = Figures.temperatureC(setpointC);
            cards = List.copyOf(cards);
        }
    }

    /** A card. */
    @Schema(
            name = "SheetCard",
            description = "What to print for a band. A member that does not belong to its kind of card is absent.")
    public record SheetCard(
            @Schema(
                    description = "What it is for.",
                    examples = {"fridge", "frozen", "chillAndKeep", "reheat"})
            String card,

            @Schema(
                    description = "Temperature at which the food goes in.",
                    example = "4",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double startC,

            @Schema(
                    description =
                            "The time on the card, rounded up to what people set. Absent, with a reason beside it, when no"
                                    + " time does.",
                    example = "14100",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer timeS,

            @Schema(description = "Why there is no time.") @Nullable
            Reason noTimeReason,

            @Schema(
                    description = "The worst piece is safe from here on, if everything hinders.",
                    example = "11372",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer safeLateS,

            @Schema(
                    description = "The worst piece is hot through from here on, if everything hinders.",
                    example = "13386",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer hotThroughLateS,

            @Schema(
                    description =
                            "The thinnest piece is at its best until here, if everything quickens; absent when nothing"
                                    + " known closes its texture.",
                    example = "43112",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer latestS,

            @Schema(
                    description = "By how much the time on the card is later than `latestS`; absent if it is not.",
                    example = "600",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer pastBestS,

            @Schema(description = "Safety of the worst piece at the time of the card.") @Nullable
            SheetSafety safety,

            @Schema(description = "The worst piece at the time of the card.") @Nullable
            SheetPiece worst,

            @Schema(description = "The thinnest piece at the time of the card.") @Nullable
            SheetPiece thinnest,

            @Schema(description = "Temperature of the store.", example = "4", minimum = "-40", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double storeC,

            @Schema(
                    description = "Days it may be kept; 0: eat at once. Absent if it is kept frozen, without a limit.",
                    example = "7",
                    minimum = "0",
                    maximum = "1000")
            @Unit("d")
            @Nullable
            Double keepDays,

            @Schema(description = "Id of the cooling rule.", example = "FC-COOL") @Nullable
            String coolingRule,

            @Schema(description = "Whether it is kept.", example = "true") @Nullable
            Boolean coolingKept,

            @Schema(description = "What to know about this card.") @Items(max = NoticeTranslation.MOST_WARNINGS)
            List<Warning> warnings,

            @Schema(description = "Its heading.", example = "Pork loin, 40 to 45 mm: cook from the fridge")
            String title,

            @Schema(description = "Its sentences, in order.", example = "Heat the bath to 60 °C.") @Items(max = 50)
            List<String> steps) {

        /** Rounds, and copies the lists. */
        public SheetCard {
            startC = startC == null ? null : Figures.temperatureC(startC);
            storeC = storeC == null ? null : Figures.temperatureC(storeC);
            keepDays = keepDays == null ? null : Figures.days(keepDays);
            warnings = List.copyOf(warnings);
            steps = List.copyOf(steps);
        }
    }

    /** Safety of the worst piece. */
    @Schema(
            name = "SheetSafety",
            description =
                    "Safety of the worst piece at the time of the card. What was achieved is rounded down, never up.")
    public record SheetSafety(
            @Schema(
                    description = "As in a cook plan. Treat an unknown word as `notMet`.",
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
                    description = "Achieved log reduction if everything hinders.",
                    example = "7.12",
                    minimum = "-100",
                    maximum = "1000000")
            @Unit("1")
            @Nullable
            Double achievedLog10,

            @Schema(description = "Achieved less required.", example = "0.62", minimum = "-120", maximum = "1000000")
            @Unit("1")
            @Nullable
            Double marginLog10,

            @Schema(
                    description = "The margin in words, as in a cook plan." + " Treat an unknown word as `notMet`.",
                    examples = {"notMet", "thin", "normal", "wide"})
            @Nullable
            String band,

            @Schema(
                    description = "Time in hand.",
                    example = "1800",
                    minimum = "-100000000",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer marginS) {

        /** Rounds, never in favour of safety. */
        public SheetSafety {
            requiredLog10 = requiredLog10 == null ? null : Figures.requiredLog10(requiredLog10);
            achievedLog10 = achievedLog10 == null ? null : Figures.achievedLog10(achievedLog10);
            marginLog10 = marginLog10 == null ? null : Figures.achievedLog10(marginLog10);
        }
    }

    /** One piece. */
    @Schema(name = "SheetPiece", description = "One piece at the time of the card, values as given.")
    public record SheetPiece(
            @Schema(description = "Its thickness or diameter.", example = "45", minimum = "0", maximum = "1000")
            @Unit("mm")
            double acrossMm,

            @Schema(description = "Its core.", example = "59.7", minimum = "-40", maximum = "101") @Unit("Cel")
            double coreC,

            @Schema(
                    description = "Where the time lies in its texture window, as in a cook plan."
                            + " Treat an unknown word as `none`.",
                    examples = {"before", "within", "past", "none"})
            String texture,

            @Schema(description = "Loss of moisture.", example = "11.5", minimum = "0", maximum = "100")
            @Unit("%")
            @Nullable
            Double moistureLossPercent) {

        /** Rounds. */
        public SheetPiece {
            acrossMm = Figures.bandMm(acrossMm);
            coreC = Figures.temperatureC(coreC);
            moistureLossPercent = moistureLossPercent == null ? null : Figures.percent(moistureLossPercent);
        }
    }
}
