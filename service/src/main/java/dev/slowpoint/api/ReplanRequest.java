package dev.slowpoint.api;

import dev.slowpoint.safety.Eater;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The question for a replan: a cook plan, and what really happened so far. */
@Schema(
        description =
                "A cook that is under way: the members of a cook plan as they were when the food went in, and what"
                        + " really happened so far.")
public record ReplanRequest(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(description = "What is cooked.") FoodChoice food,

        @Schema(description = "Shape and size of the piece, as told or guessed.")
        Geometry geometry,

        @Schema(description = "Temperature of the piece when it went in.")
        CookPlanRequest.Start start,

        @Schema(description = "What surrounds the piece; `bath.setpointC` is required here, and is that at food in.")
        CookPlanRequest.Surroundings surroundings,

        @Schema(description = "What is wanted.", defaultValue = "{}")
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

        @Schema(description = "What really happened so far.")
        SoFar soFar)
        implements Checked {

    @Override
    public void check(String at, Faults faults) {
        asCookPlan().check(at, faults);
        if (surroundings.bath().setpointC() == null) {
            String bath = Pointer.child(Pointer.child(at, "surroundings"), "bath");
            faults.add(Fault.of(
                    Pointer.child(bath, "setpointC"), ProblemCode.COMPANION_MISSING, "FAULT_SETPOINT_BESIDE_SO_FAR"));
        }
    }

    /** The cook as it was meant. */
    CookPlanRequest asCookPlan() {
        return new CookPlanRequest(
                parameterSet, food, geometry, start, surroundings, target, eater, rule, tolerances, pack, List.of());
    }
}
