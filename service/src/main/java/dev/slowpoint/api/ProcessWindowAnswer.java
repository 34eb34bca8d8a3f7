package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A process window: the lines of a cook plan over setpoints, the region between them, and points in it. */
@Schema(
        description =
                "The lines of a cook plan over a range of setpoints, and the region between them. Times are whole seconds"
                        + " from food in. A member that does not apply is left out. The same request and parameter set give"
                        + " the same bytes.")
public record ProcessWindowAnswer(
        @Schema(description = "Version of the parameter set that was used.", example = "2026.1")
        String parameterSet,

        @Schema(description = "Start of the SHA-256 digest of the parameter set.", example = "5d41402abc4b2a76")
        String digest,

        @Schema(description = "Id of the rule judged by; see `/v1/rules`.", example = "us-fsis-2021")
        String rule,

        @Schema(description = "From one setpoint to the next.", example = "0.5", minimum = "0.05", maximum = "20")
        @Unit("K")
        double stepK,

        @Schema(
                description = "How closely the ends of the region are found.",
                example = "0.05",
                minimum = "0",
                maximum = "1")
        @Unit("K")
        double edgeWithinK,

        @Schema(description = "What goes wrong once in each input.")
        Once once,

        @Schema(description = "The lines at each setpoint, from the coolest up; those of a cook plan at this setpoint.")
        @Items(max = 61)
        List<AtSetpoint> setpoints,

        @Schema(
                description =
                        "The setpoints with a moment to take the piece out, from the coolest up; empty if there is"
                                + " none. Between two setpoints of `setpoints` that are alike nothing is looked for.")
        @Items(max = 61)
        List<Interval> region,

        @Schema(description = "Why there is no region; only if there is none.") @Nullable
        Closed closed,

        @Schema(
                description = "A robust point: of the setpoints in the region that are safe to the core, and usual for"
                        + " the food if such are among them, the coolest with a spare of one, at its soonest moment that"
                        + " is not before its `takeOut.bestS`; if none has so much, the one with the most. A cook plan"
                        + " without a setpoint takes the coolest that is safe instead, spare or not. Absent if there is"
                        + " no region.")
        @Nullable
        ProcessPoint recommended,

        @Schema(description = "The point of your own; only if one was sent.") @Nullable
        ProcessPoint own,

        @Schema(description = "A sentence for each `barredBy`.") @Items(max = 50)
        List<Reason> reasons,

        @Schema(
                description =
                        "What to know about the recommended point, or if there is none about the hottest setpoint.")
        @Items(max = NoticeTranslation.MOST_WARNINGS)
        List<Warning> warnings,

        @Schema(description = "What always holds.") @Items(max = NoticeTranslation.MOST_CAUTIONS)
        List<Reason> cautions) {

    /** Rounds, and copies the lists. */
    public ProcessWindowAnswer {
        stepK = Figures.temperatureC(stepK);
        edgeWithinK = Figures.temperatureC(edgeWithinK);
        setpoints = List.copyOf(setpoints);
        region = List.copyOf(region);
        reasons = List.copyOf(reasons);
        warnings = List.copyOf(warnings);
        cautions = List.copyOf(cautions);
    }

    /** What goes wrong once. */
    @Schema(name = "Once", description = "What goes wrong once in each input: its tolerance, as sent or by default.")
    public record Once(
            @Schema(description = "Of the bath.", example = "0.2", minimum = "0", maximum = "5") @Unit("K")
            double bathK,

            @Schema(
                    description = "Of the moment at which it leaves the bath.",
                    example = "300",
                    minimum = "0",
                    maximum = "86400")
            @Unit("s")
            int momentS,

            @Schema(description = "Of thickness or diameter.", example = "2", minimum = "0", maximum = "50") @Unit("mm")
            double thicknessMm,

            @Schema(description = "Of the start temperature.", example = "2", minimum = "0", maximum = "10") @Unit("K")
            double startK) {

        /** Rounds. */
        public Once {
            bathK = Figures.temperatureC(bathK);
            thicknessMm = Figures.temperatureC(thicknessMm);
            startK = Figures.temperatureC(startK);
        }
    }

    /** One setpoint. */
    @Schema(
            name = "AtSetpoint",
            description =
                    "The lines at one setpoint. One that is never reached, or not asked, is absent; all are absent"
                            + " where a cook plan at this setpoint is refused.")
    public record AtSetpoint(
            @Schema(description = "The setpoint.", example = "60", minimum = "20", maximum = "100") @Unit("Cel")
            double setpointC,

            @Schema(description = "The core is within `withinK` of the target temperature.") @Nullable
            Milestone hotThrough,

            @Schema(description = "The rule is met at the place that heats most slowly.") @Nullable
            Milestone safe,

            @Schema(description = "The texture opens.") @Nullable
            Milestone tender,

            @Schema(description = "The texture closes, past which it is past its best.") @Nullable
            Milestone goodUntil,

            @Schema(description = "Too soft for most.") @Nullable
            Milestone softFrom,

            @Schema(
                    description = "The warm-up limit of the rule is used up, if everything hinders: by then the core"
                            + " has been between 10 and 54.4 C, or what the rule says, for as long as it may. Absent if"
                            + " the core leaves that range in time.",
                    example = "23400",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer slowWarmUpS,

            @Schema(description = "When to take the piece out; absent where a line is in the way.") @Nullable
            TakeOut takeOut,

            @Schema(
                    description = "What is in the way of taking it out in the time available; see `reasons`. Absent if"
                            + " nothing is."
                            + " An unknown word bars too.",
                    examples = {"RULE_NEVER_MET", "TEXTURE_CLOSES_FIRST", "NOT_IN_TIME", "CORE_ABOVE_BATH"})
            @Nullable
            String barredBy,

            @Schema(
                    description = "Of the rule, at the best moment or, without one, at the moment a cook plan judges."
                            + " Treat an unknown word as `notMet`.",
                    examples = {"met", "notMet", "surfaceOnly", "notApplicable"})
            @Nullable
            String verdict) {

        /** Rounds. */
        public AtSetpoint {
            setpointC = Figures.temperatureC(setpointC);
        }
    }

    /** A part of the region. */
    @Schema(
            name = "SetpointInterval",
            description = "Setpoints with a moment to take the piece out and one verdict. Both ends lie inside.")
    public record Interval(
            @Schema(description = "The coolest.", example = "58.28", minimum = "20", maximum = "100") @Unit("Cel")
            double fromC,

            @Schema(description = "The hottest.", example = "65.03", minimum = "20", maximum = "100") @Unit("Cel")
            double toC,

            @Schema(
                    description = "Of the rule. Treat an unknown word as `notMet`.",
                    examples = {"met", "surfaceOnly", "notApplicable"})
            String verdict,

            @Schema(description = "When to take it out at the coolest.")
            TakeOut takeOutAtFrom,

            @Schema(description = "When to take it out at the hottest.")
            TakeOut takeOutAtTo,

            @Schema(
                    description = "What is in the way below. Absent at the end of the range, and where another interval"
                            + " adjoins."
                            + " An unknown word bars too.",
                    examples = {"RULE_NEVER_MET"})
            @Nullable
            String belowBarredBy,

            @Schema(
                    description = "What is in the way above. Absent likewise." + " An unknown word bars too.",
                    examples = {"TEXTURE_CLOSES_FIRST"})
            @Nullable
            String aboveBarredBy) {

        /** Rounds. */
        public Interval {
            fromC = Figures.temperatureC(fromC);
            toC = Figures.temperatureC(toC);
        }
    }

    /** Why there is no region. */
    @Schema(name = "ClosedWindow", description = "Why there is no region, and what would open one.")
    public record Closed(
            @Schema(
                    description = "What is in the way at most setpoints; see `reasons`." + " An unknown word bars too.",
                    examples = {"WARM_UP_TOO_SLOW"})
            String barredBy,

            @Schema(description = "Changes that open a region, each alone; empty if none of those tried does.")
            @Items(max = 20)
            List<Opening> openings) {

        /** Copies the list. */
        public Closed {
            openings = List.copyOf(openings);
        }
    }

    /** One change. */
    @Schema(name = "Opening", description = "One change that opens a region, all else left as it is.")
    public record Opening(
            @Schema(
                    description = "What to change: a setpoint above or below the range, a smaller piece, more time, or"
                            + " another purpose.",
                    examples = {"hotter", "cooler", "thinner", "longer", "otherPurpose"})
            String change,

            @Schema(description = "A setpoint at which it opens.", example = "62", minimum = "20", maximum = "100")
            @Unit("Cel")
            double setpointC,

            @Schema(
                    description = "Of the rule, there and then. Treat an unknown word as `notMet`.",
                    examples = {"met", "surfaceOnly", "notApplicable"})
            String verdict,

            @Schema(
                    description = "Thickness or diameter with which it opens; only for `thinner`.",
                    example = "70",
                    minimum = "0",
                    maximum = "250")
            @Unit("mm")
            @Nullable
            Double thicknessMm,

            @Schema(
                    description = "Time with which it opens; only for `longer`.",
                    example = "18000",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer availableS,

            @Schema(
                    description = "Purpose for which it opens; only for `otherPurpose`.",
                    examples = {"serve"})
            @Nullable
            String purpose,

            @Schema(description = "The same for people.", example = "A piece of 70 mm, in a bath of 62 °C.")
            String text) {

        /** Rounds. */
        public Opening {
            setpointC = Figures.temperatureC(setpointC);
            thicknessMm = thicknessMm == null ? null : Figures.marginMm(thicknessMm);
        }
    }

    /** A setpoint and a moment. */
    @Schema(name = "ProcessPoint", description = "A setpoint and a moment, and how far they lie from the edges.")
    public record ProcessPoint(
            @Schema(description = "The setpoint.", example = "60", minimum = "20", maximum = "100") @Unit("Cel")
            double setpointC,

            @Schema(
                    description = "When the piece leaves the bath.",
                    example = "9900",
                    minimum = "0",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            int atS,

            @Schema(description = "Whether the point lies in the region.", example = "true")
            boolean inside,

            @Schema(
                    description =
                            "How many times each tolerance of `once` may go wrong, all of them together, before the"
                                    + " point lies outside. Bath, thickness and start are off by so many tolerances, all the slow"
                                    + " way or all the fast way, the piece leaves the bath by so many too soon or too late, and"
                                    + " the cook is planned anew with those values. Its lines count their own tolerances once:"
                                    + " what is told here comes on top of that. At most 10. Absent if the point lies outside"
                                    + " already.",
                    example = "1.45",
                    minimum = "0",
                    maximum = "10")
            @Unit("1")
            @Nullable
            Double spareTolerances,

            @Schema(
                    description =
                            "The edge that is crossed first. Absent if none is." + " Treat an unknown word as an edge.",
                    examples = {"hotThrough", "safe", "tender", "goodUntil", "slowWarmUp", "availableTime"})
            @Nullable
            String nearestEdge,

            @Schema(
                    description = "Of the rule, at this point, worst case. Treat an unknown word as `notMet`.",
                    examples = {"met", "notMet", "surfaceOnly", "notApplicable"})
            String verdict,

            @Schema(description = "From each edge that there is, all else left as it is.") @Items(max = 20)
            List<Distance> distances) {

        /** Rounds, never in favour of safety. */
        public ProcessPoint {
            setpointC = Figures.temperatureC(setpointC);
            spareTolerances = spareTolerances == null ? null : Figures.marginRatio(spareTolerances);
            distances = List.copyOf(distances);
        }
    }

    /** How far a point lies from one edge. */
    @Schema(
            name = "EdgeDistance",
            description = "How far a point lies from one edge; below zero where it lies beyond it. `hotThrough` and"
                    + " `tender` are counted for values as given, `safe` and `slowWarmUp` if everything hinders,"
                    + " `goodUntil` if everything helps.")
    public record Distance(
            @Schema(
                    description = "The edge." + " Treat an unknown word as an edge.",
                    examples = {"hotThrough", "safe", "tender", "goodUntil", "slowWarmUp", "availableTime"})
            String edge,

            @Schema(
                    description = "How much sooner the piece may leave the bath, or later for an edge that it has to be"
                            + " out by. Absent if the edge is never reached here.",
                    example = "1080",
                    minimum = "-100000000",
                    maximum = CookPlanAnswer.LONGEST)
            @Unit("s")
            @Nullable
            Integer distanceS,

            @Schema(
                    description = "How much colder the setpoint may be, or hotter for `goodUntil`; what counts as hot"
                            + " through moves with it unless `target.coreC` is sent. Absent if none within 30 K crosses"
                            + " the edge.",
                    example = "0.75",
                    minimum = "-100",
                    maximum = "100")
            @Unit("K")
            @Nullable
            Double distanceK,

            @Schema(
                    description = "How much thicker the piece may be, or thinner for `goodUntil`. Absent if none of up"
                            + " to 200 mm more, or down to 3 mm, crosses the edge.",
                    example = "3.2",
                    minimum = "-250",
                    maximum = "250")
            @Unit("mm")
            @Nullable
            Double distanceMm) {

        /** Rounds down. */
        public Distance {
            distanceK = distanceK == null ? null : Figures.marginK(distanceK);
            distanceMm = distanceMm == null ? null : Figures.marginMm(distanceMm);
        }
    }
}
