package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.Source;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The review of a log: an evidence record. */
@Schema(
        description =
                "Whether a log shows that a published rule was met, with all that an inspector needs to check it. Times are"
                        + " those of the log. A member that does not apply is left out. No clock is read: the same request and"
                        + " parameter set give the same bytes.")
public record LogReviewAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
        String digest,

        @Schema(
                description = "Over all limits that decide: `met` only if each was, time over which nothing was read"
                        + " earning no kill and counting as warm-up and cooling; `undecided` where the log leaves it open; `notApplicable` where it shows nothing that"
                        + " the rule asks for."
                        + " Treat an unknown word as `notMet`.",
                examples = {"met", "notMet", "undecided", "notApplicable"})
        String verdict,

        @Schema(description = "What the record is called, as sent.", example = "Cook log 17") @Nullable
        String label,

        @Schema(description = "What the record belongs to, as sent.", example = "Batch 4, tray 2") @Nullable
        String batch,

        @Schema(description = "What was cooked, for whom and why.")
        Subject subject,

        @Schema(description = "The rule that the cook was judged by; absent where no cook was judged.") @Nullable
        NamedRule rule,

        @Schema(description = "The rule that the cooling was judged by; absent where none was judged.") @Nullable
        NamedRule coolingRule,

        @Schema(description = "Each critical limit.") @Items(max = 50)
        List<CriticalLimit> limits,

        @Schema(description = "What was not as it should be, in order of time; at most 50.") @Items(max = 50)
        List<Deviation> deviations,

        @Schema(
                description = "How many deviations there were in all.",
                example = "1",
                minimum = "0",
                maximum = "200000")
        int deviationCount,

        @Schema(description = "What was read.") Readings readings,

        @Schema(
                description =
                        "Predicted growth of spore formers while the food cooled, wherever nothing was read at its"
                                + " fastest; for information.")
        @Nullable
        @Items(max = 20)
        List<Growth> growth,

        @Schema(description = "The core that was computed from the bath; only there.") @Nullable
        ComputedCore computedCore,

        @Schema(description = "What to know about this log.") @Items(max = NoticeTranslation.MOST_WARNINGS)
        List<Warning> warnings,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<Reason> cautions,

        @Schema(description = "Readings over time, thinned to at most 200; with `include=curve`.") @Nullable
        LogCurve curve,

        @Schema(description = "Where the limits come from; with `include=sources`.") @Nullable @Items(max = 200)
        List<Source> sources) {

    /** Copies the lists. */
    public LogReviewAnswer {
        limits = List.copyOf(limits);
        deviations = List.copyOf(deviations);
        growth = growth == null ? null : List.copyOf(growth);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
        sources = sources == null ? null : List.copyOf(sources);
    }

    /** What was cooked. */
    @Schema(name = "LogSubject", description = "What was cooked, for whom and why.")
    public record Subject(
            @Schema(description = "Id of the food; absent for one described by its composition.", example = "pork-loin")
            @Nullable
            String food,

            @Schema(
                    description = "What was done to it.",
                    examples = {"intact", "minced"})
            String form,

            @Schema(
                    description = "Raw, or cooked before.",
                    examples = {"raw", "cooked"})
            String condition,

            @Schema(
                    description = "Why it was cooked.",
                    examples = {"serve", "keep"})
            String purpose,

            @Schema(
                    description = "Who will eat it.",
                    examples = {"general", "vulnerable"})
            String eater,

            @Schema(
                    description = "Where the sensor sat.",
                    examples = {"core", "bath", "surface"})
            String place) {}

    /** A rule. */
    @Schema(name = "NamedRule", description = "A published rule.")
    public record NamedRule(
            @Schema(description = "Its id.", example = "us-fsis-2021")
            String id,

            @Schema(description = "What it is called.", example = "FSIS cooking guideline")
            String name,

            @Schema(description = "Which text of it.", example = "December 2021") @Nullable
            String edition,

            @Schema(description = "Where it was read.", example = "FSIS-GD-2021-14")
            String source) {}

    /** A critical limit. */
    @Schema(
            name = "CriticalLimit",
            description =
                    "A critical limit, the error of the instrument added. What is required and measured stands in the unit"
                            + " of its name.")
    public record CriticalLimit(
            @Schema(description = "Its id.", example = "RQ-PORK-INTACT")
            String id,

            @Schema(
                    description = "What it is of.",
                    examples = {"lethality", "tableTime", "warmUp", "fallenBack", "hotHolding", "cooling", "reheating"})
            String what,

            @Schema(
                    description = "The organism it is about.",
                    examples = {"salmonella", "listeriaMonocytogenes"})
            @Nullable
            String organism,

            @Schema(
                    description = "Lower end or begin of the range it speaks of.",
                    example = "54.94",
                    minimum = "-60",
                    maximum = "130")
            @Unit("Cel")
            @Nullable
            Double fromC,

            @Schema(
                    description = "Upper end or end of the range it speaks of.",
                    example = "54.94",
                    minimum = "-60",
                    maximum = "130")
            @Unit("Cel")
            @Nullable
            Double toC,

            @Schema(
                    description = "Decimal reductions required, predicted growth added.",
                    example = "6.5",
                    minimum = "0",
                    maximum = "1000")
            @Unit("1")
            @Nullable
            Double requiredLog10,

            @Schema(description = "Decimal reductions shown.", example = "8.24", minimum = "0", maximum = "12")
            @Unit("1")
            @Nullable
            Double measuredLog10,

            @Schema(
                    description = "Seconds required at least, by a table; or allowed at most.",
                    example = "21600",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer requiredS,

            @Schema(
                    description =
                            "Seconds shown; where a limit is of the most, with those over which nothing was read.",
                    example = "4210",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer measuredS,

            @Schema(description = "Lowest temperature allowed.", example = "57.5", minimum = "0", maximum = "130")
            @Unit("Cel")
            @Nullable
            Double requiredC,

            @Schema(description = "Lowest temperature shown.", example = "58.9", minimum = "-200", maximum = "400")
            @Unit("Cel")
            @Nullable
            Double measuredC,

            @Schema(
                    description = "Whether it was met." + " Treat an unknown word as `notMet`.",
                    examples = {"met", "notMet", "undecided"})
            String met,

            @Schema(description = "Whether it is told and does not decide.", example = "false")
            boolean advisory) {}

    /** A deviation. */
    @Schema(name = "Deviation", description = "What was not as it should be.")
    public record Deviation(
            @Schema(description = "When it began.", example = "3600", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int fromS,

            @Schema(description = "When it ended.", example = "4500", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int untilS,

            @Schema(
                    description = "What, for programs." + " Take an unknown word as a deviation, and show the text.",
                    examples = {"GAP", "FAULT_VALUE", "COOLING_TOO_SLOW"})
            String code,

            @Schema(description = "What, for people.", example = "No reading for 900 seconds. The time earns no kill.")
            String text) {}

    /** What was read. */
    @Schema(name = "LogReadings", description = "What was read.")
    public record Readings(
            @Schema(description = "Readings received.", example = "240", minimum = "2", maximum = "100000")
            int received,

            @Schema(description = "Readings that are believed.", example = "238", minimum = "2", maximum = "100000")
            int used,

            @Schema(
                    description = "Readings taken for those of a faulty sensor.",
                    example = "2",
                    minimum = "0",
                    maximum = "100000")
            int excluded,

            @Schema(description = "Time of the first.", example = "0", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int fromS,

            @Schema(
                    description = "Time of the last.",
                    example = "7200",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int untilS,

            @Schema(description = "Lowest that is believed.", example = "4.1", minimum = "-200", maximum = "400")
            @Unit("Cel")
            double lowestC,

            @Schema(description = "Highest that is believed.", example = "60.2", minimum = "-200", maximum = "400")
            @Unit("Cel")
            double highestC,

            @Schema(
                    description = "How far a reading may lie from the truth; added to every limit.",
                    example = "0.5",
                    minimum = "0",
                    maximum = "5")
            @Unit("K")
            double errorK,

            @Schema(
                    description = "The longest time without reading that counted as read.",
                    example = "300",
                    minimum = "1",
                    maximum = "1800")
            @Unit("s")
            double longestGapS,

            @Schema(
                    description =
                            "SHA-256 of the readings as received: for each the time in seconds and the temperature in"
                                    + " degrees Celsius as IEEE 754 double precision, the high byte first, and 7ff8000000000000"
                                    + " where there was no reading; 16 bytes a reading, in order.",
                    example = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08")
            String sha256) {}

    /** Predicted growth. */
    @Schema(name = "LogGrowth", description = "Predicted growth by one published model, at most.")
    public record Growth(
            @Schema(
                    description = "What grows.",
                    examples = {"cPerfringens", "bCereus"})
            String organism,

            @Schema(description = "Id of the model.", example = "G-CP-BEEF")
            String model,

            @Schema(description = "Decimal orders.", example = "0.12", minimum = "0", maximum = "1000") @Unit("1")
            double growthLog10,

            @Schema(
                    description =
                            "Whether the lag of spores after a cook was taken off; without it this is an upper bound.",
                    example = "true")
            boolean lagCounted) {}

    /** A computed core. */
    @Schema(
            name = "ComputedCore",
            description =
                    "The core computed from the bath: the least that is certain, with the bath at its lowest and everything"
                            + " else on the slow side.")
    public record ComputedCore(
            @Schema(description = "Its highest.", example = "58.7", minimum = "-100", maximum = "200") @Unit("Cel")
            double highestC,

            @Schema(description = "At the end of the log.", example = "58.7", minimum = "-100", maximum = "200")
            @Unit("Cel")
            double endsC,

            @Schema(
                    description =
                            "How far apart the least and the most that the bath was taken for lie at most, unread stretches"
                                    + " aside.",
                    example = "1.2",
                    minimum = "0",
                    maximum = "1000")
            @Unit("K")
            double bathWithinK) {}

    /** Readings over time. */
    @Schema(name = "LogCurve", description = "Readings that are believed, thinned so that low and high ones stay.")
    public record LogCurve(
            @Schema(description = "Times.", example = "60", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Items(max = 200)
            List<Integer> timesS,

            @Schema(description = "Temperatures.", example = "58.4", minimum = "-200", maximum = "400")
            @Unit("Cel")
            @Items(max = 200)
            List<Double> temperaturesC) {

        /** Copies the lists. */
        public LogCurve {
            timesS = List.copyOf(timesS);
            temperaturesC = List.copyOf(temperaturesC);
        }
    }
}
