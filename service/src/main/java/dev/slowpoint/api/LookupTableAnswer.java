package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A lookup table. */
@Schema(
        description =
                "Times at the nodes of a grid. Node (i, j, k) of the axes `thicknessMm`, `setpointC` and `startC` has"
                        + " the index `(i * setpointC.length + j) * startC.length + k`. Between nodes a time is linear in the"
                        + " square of the thickness, in the setpoint and in the start: with shares `u = (d*d - d0*d0) / (d1*d1 -"
                        + " d0*d0)`, `v` and `w` of the way between the neighbouring planes, it is the sum over the eight nodes"
                        + " around of `(u or 1-u) * (v or 1-v) * (w or 1-w) * time`. An axis of one plane counts with the share 0."
                        + " A node that counts with nothing is left out. If any node that counts holds -1, the answer is never: do"
                        + " not cook so. Outside the axes there is no answer. Round what is waited for up, and what the food must be"
                        + " out by down. The same request and parameter set give the same bytes.")
public record LookupTableAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(
                description =
                        "Start of the SHA-256 digest of the parameter set: tells a device where its table came from.",
                example = "5d41402abc4b2a76")
        String digest,

        @Schema(
                description = "Planes of thickness or diameter, rising.",
                example = "35",
                minimum = "3",
                maximum = "250")
        @Unit("mm")
        @Items(max = 65536)
        List<Double> thicknessMm,

        @Schema(description = "Planes of the setpoint, rising.", example = "62", minimum = "20", maximum = "100")
        @Unit("Cel")
        @Items(max = 65536)
        List<Double> setpointC,

        @Schema(description = "Planes of the start, rising.", example = "4", minimum = "-40", maximum = "60")
        @Unit("Cel")
        @Items(max = 65536)
        List<Double> startC,

        @Schema(description = "One quantity each, at all nodes.") @Items(max = 5)
        List<Column> columns,

        @Schema(
                description =
                        "Fresh random points at which the table was held against cook plans. It was on the safe side"
                                + " of all of them: a check, no proof. Tolerances are in the plans.",
                example = "400",
                minimum = "0",
                maximum = "10000")
        @Unit("1")
        int checkedPoints,

        @Schema(
                description =
                        "Sets of such points that were drawn. Where it is above one, earlier sets found a point on"
                                + " the wrong side, and the table was mended before the last, which found none.",
                example = "1",
                minimum = "1",
                maximum = "10")
        @Unit("1")
        int rounds,

        @Schema(
                description =
                        "What to know about plans at the ends of the ranges: each code once, with the values of the"
                                + " first end that has it, the thickest piece in the coolest bath before the others.")
        @Items(max = NoticeTranslation.MOST_WARNINGS)
        List<CodedNotice> warnings,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<CodedNotice> cautions) {

    /** Rounds, and copies the lists. */
    public LookupTableAnswer {
        thicknessMm = thicknessMm.stream().map(Figures::node).toList();
        setpointC = setpointC.stream().map(Figures::node).toList();
        startC = startC.stream().map(Figures::node).toList();
        columns = List.copyOf(columns);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
    }

    /** A warning or a caution, with its sentence or without. */
    @Schema(name = "CodedNotice", description = "A warning or a caution; each code is explained at `/v1/warnings`.")
    public record CodedNotice(
            @Schema(
                    description = "For programs." + " Go by `severity` for an unknown word.",
                    examples = {"POULTRY_BELOW_58", "TABLE_CHECKED_NOT_PROVEN"})
            String code,

            @Schema(
                    description = "How grave. Treat an unknown word as `danger`.",
                    examples = {"info", "caution", "danger"})
            String severity,

            @Schema(
                    description = "For people; unless `sentences` is false.",
                    example = "An estimate from published data, not a guarantee.")
            @Nullable
            String text) {}

    /** One quantity. */
    @Schema(name = "TableColumn", description = "One quantity at all nodes, and how far it is from plans.")
    public record Column(
            @Schema(
                    description =
                            "`hotThrough`, `safe` and `tender` are waited for: the latest over the tolerances, and"
                                    + " never sooner than the plan. `goodUntil` and `softFrom` are what the food must be out by:"
                                    + " the earliest, and never later than the plan. `safe` is never where the rule is not met at"
                                    + " the slowest-heating point, or the warm-up takes too long; whether searing the outside"
                                    + " would do is a question for the service. `goodUntil` is also the moment at which the"
                                    + " warm-up has used up its limit; what nothing closes stands at the end of all plans. Leave"
                                    + " out a quantity you do not know.",
                    examples = {"hotThrough", "safe", "tender", "goodUntil", "softFrom"})
            String quantity,

            @Schema(
                    description = "Times from food in, -1 for never. The start varies fastest, the thickness slowest.",
                    example = "6840",
                    minimum = "-1",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Items(max = 65536)
            List<Integer> timesS,

            @Schema(
                    description = "How far the table is from the plan at the worst of the checked points, to the safe"
                            + " side.",
                    example = "85",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int greatestErrorS,

            @Schema(
                    description = "The same as a share of the time, at the worst point for that; of a minute at least.",
                    example = "1.4",
                    minimum = "0",
                    maximum = "10000")
            @Unit("%")
            double greatestErrorPercent,

            @Schema(
                    description = "How far it is at 19 of 20 points at most.",
                    example = "40",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int usualErrorS,

            @Schema(description = "The same as a share of the time.", example = "0.6", minimum = "0", maximum = "10000")
            @Unit("%")
            double usualErrorPercent,

            @Schema(
                    description = "Share of the points where the table says never, though the plan names a time.",
                    example = "0.5",
                    minimum = "0",
                    maximum = "100")
            @Unit("%")
            double needlesslyNeverPercent) {

        /** Rounds up, and copies the list. */
        public Column {
            timesS = List.copyOf(timesS);
            greatestErrorPercent = Figures.errorPercent(greatestErrorPercent);
            usualErrorPercent = Figures.errorPercent(usualErrorPercent);
            needlesslyNeverPercent = Figures.errorPercent(needlesslyNeverPercent);
        }
    }
}
