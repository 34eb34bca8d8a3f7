package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Shape and size of a piece. */
@Schema(
        description = "Shape and size of the piece, measured in the bag at its thickest point. A `slab` takes"
                + " `thicknessMm`, and `massG` if it is known. A `brick` takes `thicknessMm`, `widthMm` and `lengthMm`, one"
                + " of which `massG` can stand for. A `cylinder` takes `diameterMm`, and `lengthMm` or `massG` unless it is"
                + " long. A `sphere` takes `diameterMm` or `massG`; an `egg` takes `diameterMm`, `lengthMm` or both, or"
                + " `massG`.")
public record Geometry(
        @Schema(description = "The shape that fits best.", example = "slab")
        Shape shape,

        @Schema(description = "Thickness of a slab or a brick.", example = "45", minimum = "3", maximum = "250")
        @Unit("mm")
        @Nullable
        Double thicknessMm,

        @Schema(
                description = "Width of a brick, not less than its thickness.",
                example = "90",
                minimum = "3",
                maximum = "1000")
        @Unit("mm")
        @Nullable
        Double widthMm,

        @Schema(
                description = "Length of a brick, not less than its thickness; of a cylinder or an egg along its axis.",
                example = "180",
                minimum = "3",
                maximum = "1000")
        @Unit("mm")
        @Nullable
        Double lengthMm,

        @Schema(
                description = "Diameter of a cylinder, a sphere, or an egg at its widest.",
                example = "60",
                minimum = "3",
                maximum = "250")
        @Unit("mm")
        @Nullable
        Double diameterMm,

        @Schema(
                description = "Mass of the piece; stands for a size that was not measured.",
                example = "800",
                minimum = "1",
                maximum = "30000")
        @Unit("g")
        @Nullable
        Double massG,

        @Schema(description = "How the pack lies. Free in the medium on all sides if absent.", defaultValue = "{}")
        Placement arrangement)
        implements Checked {

    @Override
    public void check(String at, Faults faults) {
        for (String name : List.of("thicknessMm", "widthMm", "lengthMm", "diameterMm")) {
            Double size = size(name);
            if (size != null && !shape.takes(name)) {
                faults.add(Fault.of(
                                Pointer.child(at, name),
                                ProblemCode.SIZE_NOT_OF_SHAPE,
                                "FAULT_NO_MEMBER",
                                shape.called(),
                                name)
                        .value(Suspicion.shown(size)));
            }
        }
        switch (shape) {
            case SLAB -> needed("thicknessMm", at, faults);
            case BRICK -> brick(at, faults);
            case CYLINDER -> {
                needed("diameterMm", at, faults);
                exclusive(List.of("lengthMm"), at, faults);
            }
            case SPHERE -> oneOf(List.of("diameterMm"), at, faults);
            case EGG -> {
                oneOf(List.of("diameterMm", "lengthMm"), at, faults);
                notBelow("lengthMm", lengthMm, "diameterMm", diameterMm, at, faults);
            }
        }
    }

    private @Nullable Double size(String name) {
        return switch (name) {
            case "thicknessMm" -> thicknessMm;
            case "widthMm" -> widthMm;
            case "lengthMm" -> lengthMm;
            case "diameterMm" -> diameterMm;
            default -> throw new IllegalArgumentException(name + " is no size");
        };
    }

    private void needed(String name, String at, Faults faults) {
        if (size(name) == null) {
            faults.add(missing(name, at));
        }
    }

    private Fault missing(String name, String at) {
        return Fault.of(Pointer.child(at, name), ProblemCode.SIZE_MISSING, "FAULT_NEEDS", shape.called(), name);
    }

    private void brick(String at, Faults faults) {
        List<String> edges = List.of("thicknessMm", "widthMm", "lengthMm");
        List<String> absent = edges.stream().filter(name -> size(name) == null).toList();
        if (absent.size() > (massG == null ? 0 : 1)) {
            for (String name : absent) {
                faults.add(missing(name, at).hint("HINT_MASS_FOR_SIZE"));
            }
        } else if (absent.isEmpty() && massG != null) {
            faults.add(Fault.of(
                    Pointer.child(at, "massG"), ProblemCode.FIELDS_EXCLUDE_EACH_OTHER, "FAULT_MASS_BESIDE_SIZES"));
        }
        notBelow("widthMm", widthMm, "thicknessMm", thicknessMm, at, faults);
        notBelow("lengthMm", lengthMm, "thicknessMm", thicknessMm, at, faults);
    }

    private void notBelow(
            String name, @Nullable Double size, String least, @Nullable Double smallest, String at, Faults faults) {
        if (size != null && smallest != null && size < smallest) {
            faults.add(Fault.of(
                            Pointer.child(at, name),
                            ProblemCode.SIZES_CONTRADICT,
                            "FAULT_SIZES_CONTRADICT",
                            shape.called(),
                            name,
                            least)
                    .value(Suspicion.shown(size))
                    .range(smallest, null, "mm"));
        }
    }

    private void oneOf(List<String> names, String at, Faults faults) {
        boolean measured = names.stream().anyMatch(name -> size(name) != null);
        if (!measured && massG == null) {
            faults.add(Fault.of(
                    at,
                    ProblemCode.ONE_OF_REQUIRED,
                    "FAULT_ONE_SIZE_NEEDED",
                    shape.called(),
                    String.join(", ", names)));
        }
        exclusive(names, at, faults);
    }

    private void exclusive(List<String> measured, String at, Faults faults) {
        if (massG != null) {
            Exclusion exclusion = Exclusion.of("massG", at, faults);
            measured.forEach(name -> exclusion.excludes(name, size(name)));
        }
    }

    /** Whether its mass is sent, or follows from its sizes and the density of the food. */
    boolean weighs() {
        return massG != null || lengthMm != null || (shape != Shape.SLAB && shape != Shape.CYLINDER);
    }

    /** Shapes, by the sizes that they have. */
    public enum Shape {
        /** Wide against its thickness; heated from both faces. */
        SLAB("thicknessMm"),
        /** Heated from six sides. */
        BRICK("thicknessMm", "widthMm", "lengthMm"),
        /** Round about one axis; long against its diameter unless its length is known. */
        CYLINDER("diameterMm", "lengthMm"),
        /** Round on all sides. */
        SPHERE("diameterMm"),
        /** An egg in its shell. */
        EGG("diameterMm", "lengthMm");

        private final List<String> sizes;

        Shape(String... sizes) {
            this.sizes = List.copyOf(Arrays.asList(sizes));
        }

        private boolean takes(String size) {
            return sizes.contains(size);
        }

        private Phrase called() {
            return Phrase.of("WORD_SHAPE_" + name());
        }
    }

    /** How the pack lies, as far as that keeps heat from it. */
    @Schema(
            name = "Arrangement",
            description =
                    "How a flat pack lies, as far as that keeps heat from it. Other shapes take the defaults only.")
    public record Placement(
            @Schema(
                    description = "Packs that lie on each other without water between them, this one included.",
                    example = "1",
                    minimum = "1",
                    maximum = "10",
                    defaultValue = "1")
            @Unit("1")
            int pileOf,

            @Schema(
                    description = "One flat face lies against another pack, a tray or a wall, and no water reaches it.",
                    example = "false",
                    defaultValue = "false")
            boolean pouchesTouching,

            @Schema(
                    description = "Thickness of a layer of air in the bag over one flat face.",
                    example = "0",
                    minimum = "0",
                    maximum = "5",
                    defaultValue = "0")
            @Unit("mm")
            double trappedAirMm,

            @Schema(
                    description = "Whether the whole pack is under water, or floats with one flat face in air.",
                    example = "full",
                    defaultValue = "full")
            Submersion submerged,

            @Schema(
                    description = "Temperature of the air over a face that is out of the water; that of the room is the"
                            + " safe side.",
                    example = "21",
                    minimum = "-10",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double airC)
            implements Checked {

        @Override
        public void check(String at, Faults faults) {
            String place = Pointer.child(at, "airC");
            if (submerged == Submersion.ONE_FACE_IN_AIR && airC == null) {
                faults.add(Fault.of(place, ProblemCode.COMPANION_MISSING, "FAULT_AIR_MISSING")
                        .hint("HINT_ROOM_TEMPERATURE"));
            } else if (submerged == Submersion.FULL && airC != null) {
                faults.add(Fault.of(place, ProblemCode.FIELDS_EXCLUDE_EACH_OTHER, "FAULT_AIR_UNDER_WATER"));
            }
        }
    }

    /** How far the pack is under water. */
    public enum Submersion {
        /** On all sides. */
        FULL,
        /** One flat face is out of the water. */
        ONE_FACE_IN_AIR
    }
}
