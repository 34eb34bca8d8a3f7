package dev.slowpoint.api;

import dev.slowpoint.plan.LookupTable.Quantity;
import dev.slowpoint.plan.Phrase;
import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The question for a lookup table: a cook plan over ranges of thickness, setpoint and start. */
@Schema(
        description =
                "One food over ranges of thickness, setpoint and start. All else is as for a cook plan and the same"
                        + " at every point.")
public record LookupTableRequest(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(description = "What is cooked.") FoodChoice food,

        @Schema(description = "Shape of the pieces, and those of their sizes that stay the same.")
        TabulatedShape geometry,

        @Schema(
                description =
                        "Range of the thickness of a slab or a brick, of the diameter of a cylinder, a sphere or an"
                                + " egg. Taken wider to the next hundredth.")
        ThicknessRange thickness,

        @Schema(description = "Range of the setpoint. Taken wider to the next hundredth.")
        SetpointRange setpoint,

        @Schema(
                description = "Range of the even temperature at which pieces go in. It lies on one side of the freezing"
                        + " point of the food: ask for a table of its own from the freezer. Taken wider to the next"
                        + " hundredth.")
        StartRange start,

        @Schema(description = "What surrounds the piece.", defaultValue = "{}")
        TabulatedSurroundings surroundings,

        @Schema(description = "What is wanted.", defaultValue = "{}")
        TabulatedTarget target,

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
                description = "How far the real values may lie from those that the device is told. Each defaults to the"
                        + " parameter set.",
                defaultValue = "{}")
        CookPlanRequest.Tolerances tolerances,

        @Schema(description = "What else is in the bag.", defaultValue = "{}")
        CookPlanRequest.Pack pack,

        @Schema(
                description = "What to tabulate. If empty: hotThrough, goodUntil, and where they are modelled safe and"
                        + " tender.",
                example = "safe",
                defaultValue = "[]")
        @Items(max = 5)
        List<Quantity> quantities,

        @Schema(
                description =
                        "How near the table is to be to the plans; it grows until it is, or until it is as long as it"
                                + " may be. An aim: what was reached is stated in the answer.",
                example = "1",
                minimum = "0.2",
                maximum = "20",
                defaultValue = "1")
        @Unit("%")
        double withinPercent,

        @Schema(
                description = "The most bytes of the body of the answer, in the representation that is asked for.",
                example = "8192",
                minimum = "512",
                maximum = "65536",
                defaultValue = "8192")
        @Unit("By")
        int longestBytes,

        @Schema(
                description =
                        "Whether warnings and cautions carry their sentences beside their codes. Without them more"
                                + " of the bytes is left for the table; ask once with them, and read what they say.",
                example = "true",
                defaultValue = "true")
        boolean sentences)
        implements Checked {

    /** Copies the list. */
    public LookupTableRequest {
        quantities = List.copyOf(quantities);
    }

    @Override
    public void check(String at, Faults faults) {
        reversed("thickness/fromMm", thickness.fromMm(), thickness.toMm(), "mm", at, faults);
        reversed("setpoint/fromC", setpoint.fromC(), setpoint.toC(), "Cel", at, faults);
        reversed("start/fromC", start.fromC(), start.toC(), "Cel", at, faults);
        geometry.check(thickness.toMm(), Pointer.child(at, "geometry"), faults);
    }

    private static void reversed(String name, double from, double to, String unit, String at, Faults faults) {
        if (from > to) {
            faults.add(Fault.of(at + '/' + name, ProblemCode.RANGE_REVERSED, "FAULT_RANGE_REVERSED")
                    .value(Suspicion.shown(from))
                    .range(null, to, unit));
        }
    }

    /** Shape without the size that is tabulated. */
    @Schema(
            description =
                    "Shape of the pieces, and those of their sizes that stay the same while the thickness or diameter"
                            + " varies. A `brick` takes `widthMm` and `lengthMm`; a `cylinder` is long unless it takes"
                            + " `lengthMm`; none of them may be below the greatest thickness. An `egg` keeps the usual"
                            + " proportions.")
    public record TabulatedShape(
            @Schema(description = "The shape that fits best.", example = "slab")
            Geometry.Shape shape,

            @Schema(description = "Width of a brick.", example = "90", minimum = "3", maximum = "1000")
            @Unit("mm")
            @Nullable
            Double widthMm,

            @Schema(
                    description = "Length of a brick, or of a cylinder along its axis.",
                    example = "180",
                    minimum = "3",
                    maximum = "1000")
            @Unit("mm")
            @Nullable
            Double lengthMm,

            @Schema(description = "How the pack lies. Free in the water on all sides if absent.", defaultValue = "{}")
            Geometry.Placement arrangement) {

        private void check(double thickestMm, String at, Faults faults) {
            boolean brick = shape == Geometry.Shape.BRICK;
            size("widthMm", widthMm, brick, brick, thickestMm, at, faults);
            size("lengthMm", lengthMm, brick, brick || shape == Geometry.Shape.CYLINDER, thickestMm, at, faults);
        }

        private static void size(
                String name,
                @Nullable Double size,
                boolean needed,
                boolean taken,
                double thickestMm,
                String at,
                Faults faults) {
            String place = Pointer.child(at, name);
            if (size == null && needed) {
                faults.add(
                        Fault.of(place, ProblemCode.SIZE_MISSING, "FAULT_NEEDS", Phrase.of("WORD_SHAPE_BRICK"), name));
            } else if (size != null && !taken) {
                faults.add(Fault.of(place, ProblemCode.SIZE_NOT_OF_SHAPE, "FAULT_SHAPE_HAS_NO", name)
                        .value(Suspicion.shown(size)));
            } else if (size != null && size < thickestMm) {
                faults.add(Fault.of(place, ProblemCode.SIZES_CONTRADICT, "FAULT_BELOW_RANGE", name)
                        .value(Suspicion.shown(size))
                        .range(thickestMm, null, "mm"));
            }
        }

        /** The piece of one thickness [mm]. */
        Geometry of(double thicknessMm) {
            boolean flat = shape == Geometry.Shape.SLAB || shape == Geometry.Shape.BRICK;
            return new Geometry(
                    shape, flat ? thicknessMm : null, widthMm, lengthMm, flat ? null : thicknessMm, null, arrangement);
        }
    }

    /** A range of sizes. */
    @Schema(description = "A range of thicknesses or diameters; one value if both ends are the same.")
    public record ThicknessRange(
            @Schema(description = "The least.", example = "10", minimum = "3", maximum = "250") @Unit("mm")
            double fromMm,

            @Schema(description = "The greatest.", example = "60", minimum = "3", maximum = "250") @Unit("mm")
            double toMm) {}

    /** A range of setpoints. */
    @Schema(description = "A range of setpoints; one value if both ends are the same.")
    public record SetpointRange(
            @Schema(description = "The coldest.", example = "58", minimum = "20", maximum = "100") @Unit("Cel")
            double fromC,

            @Schema(description = "The hottest.", example = "70", minimum = "20", maximum = "100") @Unit("Cel")
            double toC) {}

    /** A range of start temperatures. */
    @Schema(description = "A range of start temperatures; one value if both ends are the same.")
    public record StartRange(
            @Schema(description = "The coldest.", example = "1", minimum = "-40", maximum = "60") @Unit("Cel")
            double fromC,

            @Schema(description = "The warmest.", example = "10", minimum = "-40", maximum = "60") @Unit("Cel")
            double toC) {}

    /** What surrounds the piece. */
    @Schema(description = "What surrounds the piece: a bath that stands at its setpoint whatever goes in.")
    public record TabulatedSurroundings(
            @Schema(description = "The water bath.", defaultValue = "{}")
            TabulatedBath bath,

            @Schema(
                    description = "Altitude of the kitchen; decides where water boils.",
                    example = "0",
                    minimum = "0",
                    maximum = "5000",
                    defaultValue = "0")
            @Unit("m")
            double altitudeM) {}

    /** The bath. */
    @Schema(description = "A water bath that stands at its setpoint.")
    public record TabulatedBath(
            @Schema(description = "Whether a pump moves the water.", example = "pumped", defaultValue = "pumped")
            Stirring stirring) {}

    /** What is wanted. */
    @Schema(description = "What is wanted.")
    public record TabulatedTarget(
            @Schema(description = "What the cook is for. Chosen by food and condition if absent.", example = "serve")
            @Nullable
            Purpose purpose,

            @Schema(
                    description = "Core temperature that counts as hot through. The setpoint if absent.",
                    example = "57.5",
                    minimum = "20",
                    maximum = "99")
            @Unit("Cel")
            @Nullable
            Double coreC,

            @Schema(
                    description = "How near to the target the core counts as hot through. Default of the parameter set"
                            + " if absent.",
                    example = "0.5",
                    minimum = "0.05",
                    maximum = "5")
            @Unit("K")
            @Nullable
            Double withinK) {}
}
