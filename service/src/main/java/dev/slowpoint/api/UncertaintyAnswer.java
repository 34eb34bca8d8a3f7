package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a sample of possible cooks says where the tolerances only bound. */
@Schema(
        name = "Uncertainty",
        description =
                "What a sample of possible cooks says, drawn evenly from the spread of each input. An estimate, never"
                        + " a guarantee: see what is not sampled. Percentiles are taken outwards; a moment that is not reached is"
                        + " absent.")
public record UncertaintyAnswer(
        @Schema(description = "How many cooks were computed.", example = "128", minimum = "20", maximum = "4096")
        @Unit("1")
        int points,

        @Schema(description = "Name of the sequence of points; the same on every call.", example = "sobol-joe-kuo-2008")
        String sequence,

        @Schema(
                description = "Seed of the shift of the sequence.",
                example = "20261",
                minimum = "0",
                maximum = "2147483647")
        @Unit("1")
        int seed,

        @Schema(description = "The core is within `withinK` of the target temperature.")
        SampledTime hotThrough,

        @Schema(description = "The rule is met as written, on the core as it would truly be.") @Nullable
        SampledTime safe,

        @Schema(description = "The texture opens.") @Nullable
        SampledTime tender,

        @Schema(description = "The texture closes.") @Nullable
        SampledTime goodUntil,

        @Schema(description = "Too soft for most.") @Nullable
        SampledTime softFrom,

        @Schema(description = "Core temperature at `judgedAtS`.")
        SampledTemperature core,

        @Schema(description = "Achieved log reduction of the organism that decides, at `judgedAtS`.") @Nullable
        SampledLog10 achieved,

        @Schema(
                description =
                        "How many of the cooks do not meet the rule at `judgedAtS`, counted at the core even where an"
                                + " answer by the surface is allowed.",
                example = "0",
                minimum = "0",
                maximum = "4096")
        @Unit("1")
        @Nullable
        Integer missedPoints,

        @Schema(
                description = "That number as a share of all. Absent when it is zero: no sample proves that a rule is"
                        + " always met.",
                example = "3.2",
                minimum = "0",
                maximum = "100")
        @Unit("%")
        @Nullable
        Double missProbabilityPercent,

        @Schema(
                description =
                        "Upper bound of that probability at 95 percent confidence; without a miss about three over"
                                + " the number of points. Only for the inputs that are sampled.",
                example = "2.4",
                minimum = "0",
                maximum = "100")
        @Unit("%")
        @Nullable
        Double missProbabilityAtMostPercent,

        @Schema(
                description = "The inputs that were varied.",
                examples = {"thickness", "startTemperature", "bathTemperature", "filmCoefficient", "conductivity"})
        @Items(max = 20)
        List<String> sampled,

        @Schema(
                description = "What is uncertain besides, and was not varied.",
                examples = {"inactivationKinetics", "textureKinetics", "composition", "arrangement"})
        @Items(max = 20)
        List<String> notSampled) {

    /** Rounds, never in favour of safety, and copies the lists. */
    public UncertaintyAnswer {
        missProbabilityPercent = missProbabilityPercent == null ? null : Figures.errorPercent(missProbabilityPercent);
        missProbabilityAtMostPercent =
                missProbabilityAtMostPercent == null ? null : Figures.errorPercent(missProbabilityAtMostPercent);
        sampled = List.copyOf(sampled);
        notSampled = List.copyOf(notSampled);
    }

    /** One moment over the sample. */
    @Schema(
            name = "SampledTime",
            description =
                    "One moment over the sample: a time to wait for is rounded up at its late end, a time to be done"
                            + " by is rounded down.")
    public record SampledTime(
            @Schema(
                    description = "At most one cook in twenty is there by then.",
                    example = "6180",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer p5S,

            @Schema(
                    description = "Half the cooks are there by then.",
                    example = "6900",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer p50S,

            @Schema(
                    description = "At most one cook in twenty is later.",
                    example = "7620",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer p95S,

            @Schema(
                    description = "Share of the cooks that never get there; absent when all do.",
                    example = "12.5",
                    minimum = "0",
                    maximum = "100")
            @Unit("%")
            @Nullable
            Double neverPercent) {

        /** Rounds. */
        public SampledTime {
            neverPercent = neverPercent == null ? null : Figures.errorPercent(neverPercent);
        }
    }

    /** A temperature over the sample. */
    @Schema(name = "SampledTemperature", description = "A temperature over the sample.")
    public record SampledTemperature(
            @Schema(
                    description = "At most one cook in twenty is colder.",
                    example = "59.1",
                    minimum = "-60",
                    maximum = "120")
            @Unit("Cel")
            double p5C,

            @Schema(description = "The middle one.", example = "59.6", minimum = "-60", maximum = "120") @Unit("Cel")
            double p50C,

            @Schema(
                    description = "At most one cook in twenty is warmer.",
                    example = "60",
                    minimum = "-60",
                    maximum = "120")
            @Unit("Cel")
            double p95C) {

        /** Rounds. */
        public SampledTemperature {
            p5C = Figures.temperatureC(p5C);
            p50C = Figures.temperatureC(p50C);
            p95C = Figures.temperatureC(p95C);
        }
    }

    /** A log reduction over the sample. */
    @Schema(name = "SampledLog10", description = "A log reduction over the sample, rounded down.")
    public record SampledLog10(
            @Schema(
                    description = "At most one cook in twenty has less.",
                    example = "7.9",
                    minimum = "0",
                    maximum = "20")
            @Unit("1")
            double p5Log10,

            @Schema(description = "The middle one.", example = "9.8", minimum = "0", maximum = "20") @Unit("1")
            double p50Log10,

            @Schema(description = "At most one cook in twenty has more.", example = "12", minimum = "0", maximum = "20")
            @Unit("1")
            double p95Log10) {

        /** Rounds, never in favour of safety. */
        public SampledLog10 {
            p5Log10 = Figures.achievedLog10(p5Log10);
            p50Log10 = Figures.achievedLog10(p50Log10);
            p95Log10 = Figures.achievedLog10(p95Log10);
        }
    }
}
