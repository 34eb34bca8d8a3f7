package dev.slowpoint.api;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.ThermalModel;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Egg;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.ShortCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.plan.Arrangement;
import dev.slowpoint.plan.Phrase;
import dev.slowpoint.plan.Refusal;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Turns the geometry of a request into a body of metres. Where a mass stands for a size, that follows from the density of
 * the thawed food.
 */
final class PieceTranslation {

    private static final double MM_PER_M = 1000.0;
    private static final double G_PER_KG = 1000.0;

    private final Geometry geometry;
    private final Food food;
    private final ThermalModel thermal;

    PieceTranslation(Geometry geometry, Food food, ThermalModel thermal) {
        this.geometry = geometry;
        this.food = food;
        this.thermal = thermal;
    }

    /**
     * The body.
     *
     * @throws Refusal when the mass gives a size that the shape cannot have
     */
    Body body() {
        return switch (geometry.shape()) {
            case SLAB -> new Slab(metres(geometry.thicknessMm()));
            case BRICK -> brick();
            case CYLINDER -> cylinder();
            case SPHERE ->
                new Sphere(
                        geometry.diameterMm() != null
                                ? metres(geometry.diameterMm())
                                : fitting("diameterMm", StrictMath.cbrt(6.0 / StrictMath.PI * volume()), 0.0));
            case EGG -> egg();
        };
    }

    private Brick brick() {
        Double thickness = geometry.thicknessMm();
        Double width = geometry.widthMm();
        Double length = geometry.lengthMm();
        if (thickness == null) {
            double thinnest = fitting("thicknessMm", volume() / (metres(width) * metres(length)), 0.0);
            if (thinnest > Math.min(metres(width), metres(length))) {
                throw unfit("thicknessMm", thinnest, Phrase.of("WORD_MORE_THAN_OTHERS"));
            }
            return new Brick(thinnest, metres(width), metres(length));
        }
        double least = metres(thickness);
        if (width == null) {
            return new Brick(least, fitting("widthMm", volume() / (least * metres(length)), least), metres(length));
        }
        return length == null
                ? new Brick(least, metres(width), fitting("lengthMm", volume() / (least * metres(width)), least))
                : new Brick(least, metres(width), metres(length));
    }

    private Body cylinder() {
        double diameter = metres(geometry.diameterMm());
        if (geometry.lengthMm() != null) {
            return new ShortCylinder(diameter, metres(geometry.lengthMm()));
        }
        return geometry.massG() == null
                ? new LongCylinder(diameter)
                : new ShortCylinder(
                        diameter, fitting("lengthMm", volume() / (0.25 * StrictMath.PI * diameter * diameter), 0.0));
    }

    private Egg egg() {
        if (geometry.massG() != null) {
            return Egg.ofMass(geometry.massG() / G_PER_KG);
        }
        if (geometry.diameterMm() == null) {
            return Egg.ofLength(metres(geometry.lengthMm()));
        }
        return geometry.lengthMm() == null
                ? Egg.ofWidth(metres(geometry.diameterMm()))
                : new Egg(metres(geometry.diameterMm()), metres(geometry.lengthMm()));
    }

    /** Refuses a size that a message could not have sent, or one below the smallest. */
    private double fitting(String name, double metres, double smallest) {
        RecordShape.Part part = RecordShape.of(Geometry.class).part(name).orElseThrow();
        double millimetres = metres * MM_PER_M;
        if (millimetres < part.minimum().orElseThrow()
                || millimetres > part.maximum().orElseThrow()) {
            throw unfit(
                    name,
                    metres,
                    Phrase.of(
                            "WORD_NOT_BETWEEN",
                            Suspicion.shown(part.minimum().orElseThrow()),
                            Suspicion.shown(part.maximum().orElseThrow())));
        }
        if (metres < smallest) {
            throw unfit(name, metres, Phrase.of("WORD_LESS_THAN_THICKNESS"));
        }
        return metres;
    }

    private Refusal unfit(String name, double metres, Phrase reason) {
        return new Refusal(Refusal.Fault.of(
                        "#/geometry/massG",
                        ProblemCode.MASS_DOES_NOT_FIT.name(),
                        "FAULT_MASS_DOES_NOT_FIT",
                        name,
                        String.format(Locale.ROOT, "%.1f", metres * MM_PER_M),
                        reason)
                .withValue(Suspicion.shown(Objects.requireNonNull(geometry.massG())))
                .withHint("HINT_CHECK_MASS"));
    }

    /** How it lies. */
    Arrangement arrangement() {
        Geometry.Placement placement = geometry.arrangement();
        return new Arrangement(
                placement.pileOf(),
                placement.pouchesTouching(),
                placement.trappedAirMm() / MM_PER_M,
                placement.airC() == null ? OptionalDouble.empty() : OptionalDouble.of(placement.airC()));
    }

    /** Mass of the piece [kg]: as sent, or of its volume. */
    double mass() {
        return geometry.massG() != null
                ? geometry.massG() / G_PER_KG
                : body().volume().orElseThrow() * density();
    }

    private double volume() {
        return Objects.requireNonNull(geometry.massG()) / G_PER_KG / density();
    }

    private double density() {
        return thermal.properties(food, 1.0).referenceDensity();
    }

    private static double metres(@Nullable Double millimetres) {
        return Objects.requireNonNull(millimetres) / MM_PER_M;
    }
}
