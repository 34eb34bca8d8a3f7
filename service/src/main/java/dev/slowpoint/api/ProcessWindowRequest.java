package dev.slowpoint.api;

import dev.slowpoint.safety.Eater;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The question for a process window: a cook plan over a range of setpoints. */
@Schema(
        description = "A cook over a range of setpoints: the members of a cook plan, and the range. A setpoint in"
                + " `surroundings.bath` is a process point of your own, with its moment in `target.serveAfterS`; it is"
                + " judged beside the one that is recommended.")
public record ProcessWindowRequest(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(description = "What is cooked.") FoodChoice food,

        @Schema(description = "Shape and size of the piece.")
        Geometry geometry,

        @Schema(description = "Temperature of the piece when it goes in.")
        CookPlanRequest.Start start,

        @Schema(description = "What surrounds the piece; `bath.setpointC` is that of a point of your own.")
        CookPlanRequest.Surroundings surroundings,

        @Schema(
                description =
                        "What is wanted; `serveAfterS` is the moment of a point of your own, and its best moment is"
                                + " taken if absent.",
                defaultValue = "{}")
        CookPlanRequest.Target target,

        @Schema(description = "Who will eat it.", example = "general", defaultValue = "general")
        Eater eater,

        @Schema(
                description =
                        "Id of the published rule to meet; see `/v1/rules`. The default of the parameter set if absent.",
                example = "us-fsis-2021",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String rule,

        @Schema(
                description = "How far the real values may lie from those given. Each defaults to the parameter set.",
                defaultValue = "{}")
        CookPlanRequest.Tolerances tolerances,

        @Schema(description = "What else is in the bag.", defaultValue = "{}")
        CookPlanRequest.Pack pack,

        @Schema(
                description =
                        "Lowest setpoint looked at. Somewhat below the usual temperatures of the food, or the floor"
                                + " of its rule, if absent; `target.coreC` if that is sent.",
                example = "56",
                minimum = "20",
                maximum = "100")
        @Unit("Cel")
        @Nullable
        Double lowestSetpointC,

        @Schema(
                description = "Highest setpoint looked at. Somewhat above the usual temperatures of the food and the"
                        + " floor of its rule if absent.",
                example = "70",
                minimum = "20",
                maximum = "100")
        @Unit("Cel")
        @Nullable
        Double highestSetpointC,

        @Schema(
                description =
                        "From one setpoint to the next; at most 61 setpoints are answered. Half a kelvin if absent,"
                                + " or as much wider as the range needs. Setpoints are taken to a hundredth of a degree.",
                example = "0.5",
                minimum = "0.05",
                maximum = "20")
        @Unit("K")
        @Nullable
        Double stepK,

        @Schema(
                description = "Time that the cook must fit in. Without bound if absent.",
                example = "14400",
                minimum = "60",
                maximum = "345600")
        @Unit("s")
        @Nullable
        Integer availableS,

        @Schema(
                description =
                        "How far the moment at which the piece leaves the bath may lie from the planned one. Default"
                                + " of the parameter set (five minutes) if absent.",
                example = "300",
                minimum = "0",
                maximum = "86400")
        @Unit("s")
        @Nullable
        Integer momentToleranceS)
        implements Checked {

    @Override
    public void check(String at, Faults faults) {
        asCookPlan().check(at, faults);
        if (target.serveAfterS() != null && surroundings.bath().setpointC() == null) {
            String bath = Pointer.child(Pointer.child(at, "surroundings"), "bath");
            faults.add(Fault.of(Pointer.child(bath, "setpointC"), ProblemCode.COMPANION_MISSING, "FAULT_PROCESS_POINT")
                    .hint("HINT_SEND_AVAILABLE"));
        }
    }

    /** The cook, at the setpoint and moment of a point of the caller's own. */
    CookPlanRequest asCookPlan() {
        return new CookPlanRequest(
                parameterSet, food, geometry, start, surroundings, target, eater, rule, tolerances, pack, List.of());
    }
}
