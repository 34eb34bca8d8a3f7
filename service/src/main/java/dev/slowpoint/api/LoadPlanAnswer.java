package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.BathCourse;
import dev.slowpoint.api.CookPlanAnswer.Curve;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.Source;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.CookPlanAnswer.Texture;
import dev.slowpoint.api.CookPlanAnswer.Times;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A load plan: how several foods share a bath, or why they do not. */
@Schema(
        description =
                "How several foods share a bath, or why they do not. `...AtS`, `fromS`, `takeOut` and `phases` count"
                        + " seconds from the start of the load; `times`, `safety`, `texture` and `curve` of an item count from the"
                        + " moment that item goes in. A member that does not apply is left out. The same request and parameter set"
                        + " give the same bytes, and the order of the items changes nothing but theirs.")
public record LoadPlanAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
        String digest,

        @Schema(
                description =
                        "`together` (one setpoint, in and out at one time), `staggered` (one setpoint, out together,"
                                + " the slower first in), `twoSetpoints` (the hotter first, the bath cooled for the others) or"
                                + " `apart` (a bath each). Treat an unknown word as `apart`.",
                examples = {"together", "staggered", "twoSetpoints", "apart"})
        String schedule,

        @Schema(description = "Why so.") Reason reason,

        @Schema(description = "What stands in the way; only with `apart`.") @Nullable @Items(max = 500)
        List<Conflict> conflicts,

        @Schema(
                description = "When all is ready; absent with `apart`.",
                example = "11040",
                minimum = "0",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        @Nullable
        Integer readyAtS,

        @Schema(description = "The bath at one setpoint after the other; absent with `apart`.")
        @Nullable
        @Items(max = 20)
        List<Phase> phases,

        @Schema(description = "How to bring the water down between two setpoints; only with `twoSetpoints`.") @Nullable
        Lowering lowering,

        @Schema(
                description = "For how long the heater gives all it can before all is ready; only if `volumeL` and"
                        + " `heaterW` were sent. Zero if it has power left throughout.",
                example = "540",
                minimum = "0",
                maximum = CookPlanAnswer.LONGEST)
        @Unit("s")
        @Nullable
        Integer heaterAtLimitS,

        @Schema(description = "The foods, in the order of the request.") @Items(max = 12)
        List<Item> items,

        @Schema(description = "What to know about the load as a whole.") @Items(max = NoticeTranslation.MOST_WARNINGS)
        List<Warning> warnings,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<Reason> cautions,

        @Schema(description = "The water over time; with `include=curve`, absent with `apart`.") @Nullable
        WaterCurve curve,

        @Schema(description = "Where the numbers come from; with `include=sources`.") @Nullable @Items(max = 200)
        List<Source> sources) {

    /** Copies the lists. */
    public LoadPlanAnswer {
        conflicts = conflicts == null ? null : List.copyOf(conflicts);
        phases = phases == null ? null : List.copyOf(phases);
        items = List.copyOf(items);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
        sources = sources == null ? null : List.copyOf(sources);
    }

    /** One thing that stands in the way. */
    @Schema(name = "LoadConflict", description = "One thing that stands in the way.")
    public record Conflict(
            @Schema(
                    description = "For programs." + " Take an unknown word as a conflict, and show the text.",
                    examples = {
                        "TEMPERATURES_APART",
                        "ITEM_FAILS",
                        "HOTTER_THAN_WANTED",
                        "FAILS_WHERE_THEY_MEET",
                        "FAILS_IN_THIS_LOAD"
                    })
            String code,

            @Schema(
                    description = "For people.",
                    example = "Too far apart: carrots at 83 °C or more, beef at 57 °C or less.")
            String text,

            @Schema(description = "The item; of two the one that needs the hotter bath.", example = "carrots")
            String item,

            @Schema(description = "The other item, if it takes two.", example = "beef") @Nullable
            String otherItem,

            @Schema(
                    description = "The coolest bath that the item may have.",
                    example = "83",
                    minimum = "20",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double needsC,

            @Schema(
                    description = "The hottest bath that the other may have.",
                    example = "57",
                    minimum = "20",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double otherAllowsC,

            @Schema(description = "Why the item has no time to be taken out.") @Nullable
            Reason because) {

        /** Rounds. */
        public Conflict {
            needsC = needsC == null ? null : Figures.temperatureC(needsC);
            otherAllowsC = otherAllowsC == null ? null : Figures.temperatureC(otherAllowsC);
        }
    }

    /** The bath at one setpoint. */
    @Schema(name = "LoadPhase", description = "The bath at one setpoint.")
    public record Phase(
            @Schema(description = "From when.", example = "0", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int fromS,

            @Schema(description = "Its setpoint.", example = "61", minimum = "20", maximum = "100") @Unit("Cel")
            double setpointC,

            @Schema(description = "What the whole load does to the water; only if `volumeL` and `heaterW` were sent.")
            @Nullable
            BathCourse water) {

        /** Rounds. */
        public Phase {
            setpointC = Figures.temperatureC(setpointC);
        }
    }

    /** How to bring the water down. */
    @Schema(
            name = "Lowering",
            description =
                    "How to bring the water down: pour cold water in, mix, then take as much out; or take hot water"
                            + " out first. By the balance of heat of the water alone. Measure before the food goes in.")
    public record Lowering(
            @Schema(description = "When.", example = "8700", minimum = "0", maximum = CookPlanAnswer.LONGEST) @Unit("s")
            int atS,

            @Schema(description = "The water before.", example = "57.2", minimum = "-10", maximum = "100") @Unit("Cel")
            double fromC,

            @Schema(description = "The water after.", example = "53.9", minimum = "-10", maximum = "100") @Unit("Cel")
            double toC,

            @Schema(
                    description = "Temperature of the cold water counted with.",
                    example = "15",
                    minimum = "0",
                    maximum = "40")
            @Unit("Cel")
            double tapC,

            @Schema(
                    description = "Cold water to pour in, for each litre in the bath.",
                    example = "0.0848",
                    minimum = "0",
                    maximum = "100")
            @Unit("1")
            double pourPerL,

            @Schema(
                    description = "Cold water to pour in; only if `volumeL` was sent.",
                    example = "1.27",
                    minimum = "0",
                    maximum = "100000")
            @Unit("L")
            @Nullable
            Double pourL,

            @Schema(
                    description = "Cold water that does the same where as much hot water is taken out first; only if"
                            + " `volumeL` was sent.",
                    example = "1.17",
                    minimum = "0",
                    maximum = "2000")
            @Unit("L")
            @Nullable
            Double exchangeL) {

        /** Rounds. */
        public Lowering {
            fromC = Figures.temperatureC(fromC);
            toC = Figures.temperatureC(toC);
            tapC = Figures.temperatureC(tapC);
            pourPerL = Figures.share(pourPerL);
            pourL = pourL == null ? null : Figures.litres(pourL);
            exchangeL = exchangeL == null ? null : Figures.litres(exchangeL);
        }
    }

    /** One food of the load. */
    @Schema(name = "LoadedItem", description = "One food of the load.")
    public record Item(
            @Schema(description = "What you call it.", example = "pork")
            String id,

            @Schema(
                    description = "The setpoint it goes into; with `apart` that of a bath of its own.",
                    example = "61",
                    minimum = "20",
                    maximum = "100")
            @Unit("Cel")
            double setpointC,

            @Schema(description = "When it goes in.", example = "0", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int entersAtS,

            @Schema(
                    description =
                            "When it comes out. Absent, with a reason beside it, when no time satisfies all that is"
                                    + " asked; the best moment is the planned one.")
            @Nullable
            TakeOut takeOut,

            @Schema(description = "Why there is no time to take it out.") @Nullable
            Reason noTakeOutReason,

            @Schema(
                    description = "Only if true: it stays in the bath while that is cooled for others.",
                    example = "true")
            @Nullable
            Boolean staysThrough,

            @Schema(
                    description = "Core when it comes out, values as given; absent with `apart`.",
                    example = "60.7",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double coreC,

            @Schema(description = "The moments that matter, from when it goes in.")
            Times times,

            @Schema(description = "Whether the rule is met when it comes out, and by what margin.")
            SafetyVerdict safety,

            @Schema(description = "What the cook does to the texture.")
            Texture texture,

            @Schema(description = "What to know about this food.") @Items(max = NoticeTranslation.MOST_WARNINGS)
            List<Warning> warnings,

            @Schema(description = "Temperatures over time, from when it goes in; with `include=curve`.") @Nullable
            Curve curve) {

        /** Rounds, and copies the list. */
        public Item {
            setpointC = Figures.temperatureC(setpointC);
            coreC = coreC == null ? null : Figures.temperatureC(coreC);
            warnings = List.copyOf(warnings);
        }
    }

    /** The water over time. */
    @Schema(
            name = "WaterCurve",
            description =
                    "The water over time, values as given; the lists have the same length. Two values of one moment"
                            + " are a jump.")
    public record WaterCurve(
            @Schema(description = "Moments.", example = "0", minimum = "0", maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Items(max = 4000)
            List<Integer> timesS,

            @Schema(description = "Water.", example = "60", minimum = "-10", maximum = "100")
            @Unit("Cel")
            @Items(max = 4000)
            List<Double> waterC) {

        /** Rounds, and copies the lists. */
        public WaterCurve {
            timesS = List.copyOf(timesS);
            waterC = waterC.stream().map(Figures::temperatureC).toList();
        }
    }
}
