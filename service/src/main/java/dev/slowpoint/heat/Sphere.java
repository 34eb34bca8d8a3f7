package dev.slowpoint.heat;

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
    public double shapeExponent() {
        return 2.0;
    }

    @Override
    public Sphere scaled(double factor) {
        return new Sphere(diameter * factor);
    }
}
