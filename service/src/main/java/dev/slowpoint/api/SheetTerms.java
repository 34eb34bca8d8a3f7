package dev.slowpoint.api;

import dev.slowpoint.plan.Card;
import dev.slowpoint.plan.DisplayUnits;
import dev.slowpoint.plan.Step;
import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Eater;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What all portions of a sheet have in common. */
@Schema(
        description =
                "What all portions of a sheet have in common. A sheet is planned for a bath that keeps its setpoint, and it"
                        + " finds the time itself: of `surroundings.bath` only `setpointC` and `stirring` are taken, and of"
                        + " `target` no `serveAfterS`.")
public record SheetTerms(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(
                description =
                        "What surrounds the pieces. `setpointC` is rounded up to what a bath can be set to, half a degree"
                                + " Celsius or a whole degree Fahrenheit, and planned so. Without it one is recommended for"
                                + " each food, and for a band that this does not suit its own.")
        CookPlanRequest.@Nullable Surroundings surroundings,

        @Schema(description = "What is wanted.", defaultValue = "{}")
        CookPlanRequest.Target target,

        @Schema(description = "Who will eat it.", example = "general", defaultValue = "general")
        Eater eater,

        @Schema(
                description = "Id of the published rule to meet; see `/v1/rules`. The default of the parameter set if"
                        + " absent.",
                example = "us-fsis-2021",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String rule,

        @Schema(
                description =
                        "How far the real values may lie from those given, in every band, beside the spread of each"
                                + " portion. Each defaults to the parameter set.",
                defaultValue = "{}")
        CookPlanRequest.Tolerances tolerances,

        @Schema(
                description =
                        "Which cards are wanted: `fridge` and `frozen` cook from there, whatever the start of the portion;"
                                + " `chillAndKeep` and `reheat` follow the cook. If none that cooks is named, the one that fits"
                                + " the start of each portion.",
                example = "fridge",
                defaultValue = "[]")
        @Items(max = 4)
        List<Card> cards,

        @Schema(
                description = "What the pieces are cooled in, for `chillAndKeep`.",
                example = "iceWater",
                defaultValue = "iceWater")
        Step.ChillMedium chillIn,

        @Schema(
                description =
                        "Temperature at which they are kept and from which they are warmed up. That of a fridge if absent.",
                example = "4",
                minimum = "-40",
                maximum = "10")
        @Unit("Cel")
        @Nullable
        Double storeC,

        @Schema(
                description = "Start of the card `fridge` for portions that come frozen. That of a fridge if absent.",
                example = "4",
                minimum = "-1",
                maximum = "10")
        @Unit("Cel")
        @Nullable
        Double fridgeC,

        @Schema(
                description = "Start of the card `frozen` for portions that come chilled. That of a freezer if absent.",
                example = "-18",
                minimum = "-40",
                maximum = "-8")
        @Unit("Cel")
        @Nullable
        Double freezerC,

        @Schema(
                description =
                        "Units that people read and set: `metric` (°C, mm) or `us` (°F, inches). Decides the words of the"
                                + " cards, the bands and how setpoints are rounded; all numbers stay in SI and Celsius.",
                example = "metric",
                defaultValue = "metric")
        DisplayUnits displayUnits)
        implements Checked {

    /** Copies the list. */
    public SheetTerms {
        cards = List.copyOf(cards);
    }

    @Override
    public void check(String at, Faults faults) {
        if (target.serveAfterS() != null) {
            faults.add(Fault.of(
                    Pointer.child(Pointer.child(at, "target"), "serveAfterS"),
                    ProblemCode.FIELDS_EXCLUDE_EACH_OTHER,
                    "FAULT_SERVE_IN_SHEET"));
        }
        CookPlanRequest.Bath bath = surroundings == null ? null : surroundings.bath();
        if (bath != null && bath.volumeL() != null) {
            faults.add(Fault.of(
                            Pointer.child(Pointer.child(Pointer.child(at, "surroundings"), "bath"), "volumeL"),
                            ProblemCode.FIELDS_EXCLUDE_EACH_OTHER,
                            "FAULT_VOLUME_IN_SHEET")
                    .hint("HINT_PLAN_ONE_LOAD"));
        }
    }

    /** What surrounds a portion. */
    CookPlanRequest.Surroundings around() {
        return surroundings == null
                ? new CookPlanRequest.Surroundings(
                        new CookPlanRequest.Bath(null, Stirring.PUMPED, null, null, null, null, null, null, null, null),
                        0.0)
                : surroundings;
    }
}
