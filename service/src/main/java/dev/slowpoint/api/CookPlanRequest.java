package dev.slowpoint.api;

import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import io.swagger.v3.oas.annotations.media.Schema;
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
        Pack pack) {

    private static final String NAME = "[A-Za-z0-9]+([.-][A-Za-z0-9]+)*";
    private static final String VERSION = "[A-Za-z0-9]+([.+-][A-Za-z0-9]+)*";

    /** Shape and size. */
    @Schema(
            description = "Shape and size of the piece, measured in the bag at its thickest point. A slab takes"
                    + " `thicknessMm`; a cylinder (long) and a sphere take `diameterMm`.")
    public record Geometry(
            @Schema(description = "The shape that fits best.", example = "slab")
            Shape shape,

            @Schema(description = "Thickness of a slab.", example = "45", minimum = "3", maximum = "250")
            @Unit("mm")
            @Nullable
            Double thicknessMm,

            @Schema(description = "Diameter of a cylinder or a sphere.", example = "60", minimum = "3", maximum = "250")
            @Unit("mm")
            @Nullable
            Double diameterMm)
            implements Checked {

        @Override
        public void check(String at, Faults faults) {
            boolean slab = shape == Shape.SLAB;
            size("thicknessMm", thicknessMm, slab, at, faults);
            size("diameterMm", diameterMm, !slab, at, faults);
        }

        private void size(String name, @Nullable Double size, boolean needed, String at, Faults faults) {
            String place = Pointer.child(at, name);
            if (needed && size == null) {
                faults.add(Fault.of(place, ProblemCode.SIZE_MISSING, "A " + Words.of(shape) + " needs " + name + "."));
            } else if (!needed && size != null) {
                faults.add(
                        Fault.of(place, ProblemCode.SIZE_NOT_OF_SHAPE, "A " + Words.of(shape) + " has no " + name + ".")
                                .value(Suspicion.shown(size)));
            }
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
            if (temperatureC != null) {
                Exclusion.of("temperatureC", at, faults)
                        .excludes("surfaceC", surfaceC)
                        .excludes("coreC", coreC);
            } else if (surfaceC == null && coreC == null) {
                faults.add(Fault.of(
                        at,
                        ProblemCode.ONE_OF_REQUIRED,
                        "One of temperatureC, and surfaceC together with coreC, is required."));
            } else if (surfaceC == null || coreC == null) {
                String missing = surfaceC == null ? "surfaceC" : "coreC";
                faults.add(Fault.of(
                        Pointer.child(at, missing),
                        ProblemCode.COMPANION_MISSING,
                        missing + " is required beside the other temperature."));
            }
        }
    }

    /** A cook that the piece has gone through before. */
    @Schema(description = "A cook that the piece has gone through before.")
    public record EarlierCook(
            @Schema(description = "Temperature of that bath.", example = "55", minimum = "20", maximum = "100")
            @Unit("Cel")
            double setpointC,

            @Schema(description = "Time in that bath.", example = "36000", minimum = "0", maximum = "1209600")
            @Unit("s")
            int heldS) {}

    /** What surrounds the piece. */
    @Schema(description = "What surrounds the piece.")
    public record Surroundings(
            @Schema(description = "The water bath. The piece is wholly under water.")
            Bath bath,

            @Schema(
                    description = "Altitude of the kitchen; decides where water boils.",
                    example = "0",
                    minimum = "0",
                    maximum = "5000",
                    defaultValue = "0")
            @Unit("m")
            double altitudeM) {}

    /** A water bath at its setpoint. */
    @Schema(description = "A water bath that stands at its setpoint when the food goes in.")
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
            Stirring stirring) {}

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
            boolean salted) {}

    /** Shapes with one size. */
    public enum Shape {
        /** Wide against its thickness; heated from both faces. */
        SLAB,
        /** Long against its diameter. */
        CYLINDER,
        /** Round on all sides. */
        SPHERE
    }
}
