package dev.slowpoint.heat;

import java.util.OptionalDouble;

/**
 * A ball.
 *
 * @param diameter [m], greater than zero
 */
public record Sphere(double diameter) implements Body {

    /** Refuses a diameter that is not a positive finite length. */
    public Sphere {
        Body.positiveLength("diameter", diameter);
    }

    @Override
    public double reach() {
        return diameter / 2.0;
    }

    @Override
    public Sphere scaled(double factor) {
        return new Sphere(diameter * factor);
    }

    @Override
    public double across() {
        return diameter;
    }

    @Override
    public Sphere withAcross(double across) {
        return new Sphere(across);
    }

    @Override
    public OptionalDouble volume() {
        return OptionalDouble.of(StrictMath.PI / 6.0 * diameter * diameter * diameter);
    }

    @Override
    public StandIn standIn(double biot) {
        return StandIn.itself(reach(), 2.0, biot);
    }
}
