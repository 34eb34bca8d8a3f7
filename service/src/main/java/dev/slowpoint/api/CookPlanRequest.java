package dev.slowpoint.api;

import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The question for a cook plan: one food, one piece, one bath. */
@Schema(
        description =
                "One food in one bath. All times that follow are seconds counted from the moment the food goes in.")
public record CookPlanRequest(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(description = "What is cooked.") FoodChoice food,

        @Schema(description = "Shape and size of the piece.")
        Geometry geometry,

        @Schema(description = "Temperature of the piece when it goes in.")
        Start start,

        @Schema(description = "What surrounds the piece.") Surroundings surroundings,

        @Schema(description = "What is wanted.", defaultValue = "{}")
        Target target,

        @Schema(
                description =
                        "Who will eat it. `vulnerable` stands for the very young and old, the pregnant, and people"
                                + " with a weak immune system.",
                example = "general",
                defaultValue = "general")
        Eater eater,

        @Schema(
                description =
                        "Id of the published rule to meet; see `/v1/rules`. The default of the parameter set if absent.",
                example = "us-fsis-2021",
                pattern = NAME,
                maxLength = 64)
        @Nullable
        String rule,

        @Schema(
                description = "How far the real values may lie from those given. Each defaults to the parameter set.",
                defaultValue = "{}")
        Tolerances tolerances,

        @Schema(description = "What else is in the bag.", defaultValue = "{}")
        Pack pack,

        @Schema(
                description = "What follows the bath, in order. The piece leaves the bath at `takeOut.bestS`, or at"
                        + " `serveAfterS` if that is sent.",
                defaultValue = "[]")
        @Items(max = 12)
        List<FollowingStep> then)
        implements Checked {

    static final String NAME = "[A-Za-z0-9]+([.-][A-Za-z0-9]+)*";
    static final String VERSION = "[A-Za-z0-9]+([.+-][A-Za-z0-9]+)*";

    /** Two weeks: no longer time may be asked for [s]. */
    static final String LONGEST = "1209600";

    @Override
    public void check(String at, Faults faults) {
        if (surroundings.bath().volumeL() != null && !geometry.weighs()) {
            faults.add(Fault.of(
                            Pointer.child(Pointer.child(at, "geometry"), "massG"),
                            ProblemCode.COMPANION_MISSING,
                            "FAULT_MASS_BESIDE_VOLUME")
                    .hint("HINT_WEIGH"));
        }
    }

    /** Temperature at the start. */
    @Schema(
            description =
                    "Temperature of the piece when it goes in: `temperatureC`, or `surfaceC` and `coreC` of a piece"
                            + " that is not even. Below the freezing point it is taken as frozen.")
    public record Start(
            @Schema(description = "Even temperature.", example = "4", minimum = "-40", maximum = "60")
            @Unit("Cel")
            @Nullable
            Double temperatureC,

            @Schema(description = "Temperature of the surface.", example = "2", minimum = "-40", maximum = "60")
            @Unit("Cel")
            @Nullable
            Double surfaceC,

            @Schema(description = "Temperature of the core.", example = "-1", minimum = "-40", maximum = "60")
            @Unit("Cel")
            @Nullable
            Double coreC,

            @Schema(description = "An earlier cook of the same piece, whose effect on texture counts.") @Nullable
            EarlierCook earlierCook)
            implements Checked {

        @Override
        public void check(String at, Faults faults) {
            checkField(temperatureC, surfaceC, coreC, at, faults);
        }

        /** Adds a fault unless there is one even temperature, or the two of an uneven piece. */
        static void checkField(
                @Nullable Double temperatureC,
                @Nullable Double surfaceC,
                @Nullable Double coreC,
                String at,
                Faults faults) {
            if (temperatureC != null) {
                Exclusion.of("temperatureC", at, faults)
                        .excludes("surfaceC", surfaceC)
                        .excludes("coreC", coreC);
            } else if (surfaceC == null && coreC == null) {
                faults.add(Fault.of(at, ProblemCode.ONE_OF_REQUIRED, "FAULT_START_NEEDED"));
            } else if (surfaceC == null || coreC == null) {
                String missing = surfaceC == null ? "surfaceC" : "coreC";
                faults.add(Fault.of(
                        Pointer.child(at, missing), ProblemCode.COMPANION_MISSING, "FAULT_START_HALF", missing));
            }
        }
    }

    /** A cook that the piece has gone through before. */
    @Schema(description = "A cook that the piece has gone through before.")
    public record EarlierCook(
            @Schema(description = "Temperature of that bath.", example = "55", minimum = "20", maximum = "100")
            @Unit("Cel")
            double setpointC,

            @Schema(description = "Time in that bath.", example = "36000", minimum = "0", maximum = LONGEST) @Unit("s")
            int heldS) {}

    /** What surrounds the piece. */
    @Schema(description = "What surrounds the piece.")
    public record Surroundings(
            @Schema(description = "The water bath.") Bath bath,

            @Schema(
                    description = "Altitude of the kitchen; decides where water boils.",
                    example = "0",
                    minimum = "0",
                    maximum = "5000",
                    defaultValue = "0")
            @Unit("m")
            double altitudeM) {}

    /** A water bath. */
    @Schema(
            description =
                    "A water bath. It stands at its setpoint whatever goes in, unless `volumeL` and `heaterW` tell how"
                            + " much water and heat there is; the other members belong to these two.")
    public record Bath(
            @Schema(
                    description = "Temperature of the water. The service recommends one if absent.",
                    example = "60",
                    minimum = "20",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double setpointC,

            @Schema(description = "Whether a pump moves the water.", example = "pumped", defaultValue = "pumped")
            Stirring stirring,

            @Schema(description = "Volume of the water.", example = "20", minimum = "1", maximum = "2000")
            @Unit("L")
            @Nullable
            Double volumeL,

            @Schema(description = "The most the heater gives.", example = "1200", minimum = "50", maximum = "50000")
            @Unit("W")
            @Nullable
            Double heaterW,

            @Schema(
                    description = "Temperature of the water when the food goes in. The setpoint if absent.",
                    example = "20",
                    minimum = "0",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double startC,

            @Schema(
                    description =
                            "Whether a lid or floating balls keep vapour in. Open if absent, which is the slow side.",
                    example = "true")
            @Nullable
            Boolean covered,

            @Schema(
                    description = "Surface of the water from which vapour leaves. Usual for the volume if absent.",
                    example = "700",
                    minimum = "0",
                    maximum = "50000")
            @Unit("cm2")
            @Nullable
            Double openAreaCm2,

            @Schema(
                    description = "Heat lost through walls and lid. Usual for the volume if absent.",
                    example = "4",
                    minimum = "0",
                    maximum = "500")
            @Unit("W/K")
            @Nullable
            Double lossWPerK,

            @Schema(
                    description = "Temperature of the room. Usual if absent.",
                    example = "21",
                    minimum = "-10",
                    maximum = "50")
            @Unit("Cel")
            @Nullable
            Double roomC,

            @Schema(
                    description = "Mass of all other food in the bath, beside this piece and its pile; none if absent.",
                    example = "3000",
                    minimum = "0",
                    maximum = "1000000")
            @Unit("g")
            @Nullable
            Double otherLoadG)
            implements Checked {

        @Override
        public void check(String at, Faults faults) {
            Map<String, Boolean> sent = new LinkedHashMap<>();
            sent.put("volumeL", volumeL != null);
            sent.put("heaterW", heaterW != null);
            sent.put("startC", startC != null);
            sent.put("covered", covered != null);
            sent.put("openAreaCm2", openAreaCm2 != null);
            sent.put("lossWPerK", lossWPerK != null);
            sent.put("roomC", roomC != null);
            sent.put("otherLoadG", otherLoadG != null);
            List<String> names =
                    sent.keySet().stream().filter(name -> sent.get(name)).toList();
            for (String needed : List.of("volumeL", "heaterW")) {
                if (!names.isEmpty() && !names.contains(needed)) {
                    faults.add(Fault.of(
                            Pointer.child(at, needed),
                            ProblemCode.COMPANION_MISSING,
                            "FAULT_COMPANION",
                            needed,
                            String.join(", ", names)));
                }
            }
        }
    }

    /** What is wanted. */
    @Schema(description = "What is wanted.")
    public record Target(
            @Schema(description = "What the cook is for. Chosen by food and condition if absent.", example = "serve")
            @Nullable
            Purpose purpose,

            @Schema(
                    description = "Core temperature that counts as hot through. The setpoint if absent.",
                    example = "59.5",
                    minimum = "20",
                    maximum = "99")
            @Unit("Cel")
            @Nullable
            Double coreC,

            @Schema(
                    description = "How near to the target the core counts as hot through. Default of the parameter set"
                            + " (half a kelvin) if absent.",
                    example = "0.5",
                    minimum = "0.05",
                    maximum = "5")
            @Unit("K")
            @Nullable
            Double withinK,

            @Schema(
                    description = "Moment at which the food is planned to leave the bath, counted from food in.",
                    example = "7200",
                    minimum = "60",
                    maximum = "345600")
            @Unit("s")
            @Nullable
            Integer serveAfterS) {}

    /** How far the real values may lie from those given. */
    @Schema(description = "How far the real values may lie from those given, to either side.")
    public record Tolerances(
            @Schema(description = "Of thickness or diameter.", example = "2", minimum = "0", maximum = "20")
            @Unit("mm")
            @Nullable
            Double thicknessMm,

            @Schema(description = "Of the start temperature.", example = "2", minimum = "0", maximum = "10")
            @Unit("K")
            @Nullable
            Double startK,

            @Schema(description = "Of the bath around its setpoint.", example = "0.2", minimum = "0", maximum = "5")
            @Unit("K")
            @Nullable
            Double bathK,

            @Schema(description = "Of the thermometer.", example = "0.2", minimum = "0", maximum = "5")
            @Unit("K")
            @Nullable
            Double readingK) {}

    /** What else is in the bag. */
    @Schema(description = "What else is in the bag.")
    public record Pack(
            @Schema(
                    description = "Raw garlic or herbs, which can carry spores.",
                    example = "false",
                    defaultValue = "false")
            boolean rawGarlicOrHerbs,

            @Schema(
                    description = "Salted before packing, which firms meat that is kept.",
                    example = "false",
                    defaultValue = "false")
            boolean salted,

            @Schema(
                    description = "Salt in the food, of cured meat say, in percent of mass, where it is known. It makes"
                            + " bacteria tougher.",
                    example = "3",
                    minimum = "0",
                    maximum = "30")
            @Unit("%")
            @Nullable
            Double saltPercent,

            @Schema(
                    description = "Water activity of the food's surface, where it was measured. Dry surfaces make"
                            + " bacteria tougher.",
                    example = "0.95",
                    minimum = "0",
                    maximum = "1")
            @Unit("1")
            @Nullable
            Double waterActivity,

            @Schema(
                    description =
                            "Whether the cooked bag is sold or supplied to others than guests of the same business.",
                    example = "false",
                    defaultValue = "false")
            boolean soldOrSupplied,

            @Schema(
                    description = "Whether the raw food lay chilled, not frozen, in the sealed bag before the cook.",
                    example = "false",
                    defaultValue = "false")
            boolean sealedWhileChilled) {}
}
