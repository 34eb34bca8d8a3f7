package dev.slowpoint.api;

import dev.slowpoint.safety.Eater;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The question for a load plan: several foods and one bath. */
@Schema(
        description =
                "Several foods and one bath. Moments of the load are seconds from its start, when the first food may go"
                        + " in.")
public record LoadPlanRequest(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(description = "The foods, each with its pieces that are alike.") @Items(min = 2, max = 12)
        List<Item> items,

        @Schema(
                description = "What surrounds all of it. With `bath.setpointC` only that temperature is looked at;"
                        + " `bath.otherLoadG` is not taken here.")
        CookPlanRequest.Surroundings surroundings,

        @Schema(
                description = "Moment at which all is wanted ready. As soon as it can be if absent.",
                example = "14400",
                minimum = "60",
                maximum = "345600")
        @Unit("s")
        @Nullable
        Integer serveAfterS,

        @Schema(description = "Who will eat it.", example = "general", defaultValue = "general")
        Eater eater,

        @Schema(
                description =
                        "Id of the published rule to meet; see `/v1/rules`. The default of the parameter set if absent.",
                example = "us-fsis-2021",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String rule)
        implements Checked {

    @Override
    public void check(String at, Faults faults) {
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < items.size(); i++) {
            String place = Pointer.child(Pointer.child(at, "items"), Integer.toString(i));
            Item item = items.get(i);
            if (!ids.add(item.id())) {
                faults.add(Fault.of(Pointer.child(place, "id"), ProblemCode.IDS_NOT_UNIQUE, "FAULT_ID_TAKEN")
                        .value(item.id()));
            }
            asCookPlan(item).check(place, faults);
        }
        if (surroundings.bath().otherLoadG() != null) {
            String bath = Pointer.child(Pointer.child(at, "surroundings"), "bath");
            faults.add(Fault.of(
                            Pointer.child(bath, "otherLoadG"),
                            ProblemCode.FIELDS_EXCLUDE_EACH_OTHER,
                            "FAULT_EXCLUDES",
                            "otherLoadG",
                            "items")
                    .hint("HINT_AS_ITEM"));
        }
    }

    /** One item as the question of a cook plan. */
    CookPlanRequest asCookPlan(Item item) {
        return new CookPlanRequest(
                parameterSet,
                item.food(),
                item.geometry(),
                item.start(),
                surroundings,
                item.target(),
                eater,
                rule,
                item.tolerances(),
                item.pack(),
                List.of());
    }

    /** Pieces of one food that are alike. */
    @Schema(name = "LoadItem", description = "Pieces of one food that are alike; the members are those of a cook plan.")
    public record Item(
            @Schema(
                    description = "What you call it; comes back in the answer.",
                    example = "pork",
                    pattern = CookPlanRequest.NAME,
                    maxLength = 40)
            String id,

            @Schema(
                    description = "How many of these packs; a pile as told in `geometry` counts as one.",
                    example = "4",
                    minimum = "1",
                    maximum = "500",
                    defaultValue = "1")
            int count,

            @Schema(description = "What is cooked.") FoodChoice food,

            @Schema(description = "Shape and size of one piece.")
            Geometry geometry,

            @Schema(description = "Temperature of a piece when it goes in.")
            CookPlanRequest.Start start,

            @Schema(
                    description = "What is wanted. `serveAfterS` is not taken here, but for the whole load.",
                    defaultValue = "{}")
            CookPlanRequest.Target target,

            @Schema(
                    description =
                            "How far the real values may lie from those given. Each defaults to the parameter set.",
                    defaultValue = "{}")
            CookPlanRequest.Tolerances tolerances,

            @Schema(description = "What else is in the bag.", defaultValue = "{}")
            CookPlanRequest.Pack pack)
            implements Checked {

        @Override
        public void check(String at, Faults faults) {
            if (target.serveAfterS() != null) {
                faults.add(Fault.of(
                                Pointer.child(Pointer.child(at, "target"), "serveAfterS"),
                                ProblemCode.FIELDS_EXCLUDE_EACH_OTHER,
                                "FAULT_NO_MEMBER_OF_ITEM",
                                "serveAfterS")
                        .hint("HINT_BESIDE_ITEMS"));
            }
        }
    }
}
