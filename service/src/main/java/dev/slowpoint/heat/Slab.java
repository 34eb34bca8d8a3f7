package dev.slowpoint.heat;

import java.util.OptionalDouble;

/**
 * A flat piece of even thickness, heated on both faces, wide enough that its edges do not matter. For a real piece it is the slow side: ends only help.
 *
 * @param thickness [m], greater than zero
 */
public record Slab(double thickness) implements Body {

    /** Refuses a thickness that is not a positive finite length. */
    public Slab {
        Body.positiveLength("thickness", thickness);
    }

    @Override
    public double reach() {
        return thickness / 2.0;
    }

    @Override
    public Slab scaled(double factor) {
        return new Slab(thickness * factor);
    }

    @Override
    public double across() {
        return thickness;
    }

    @Override
    public Slab withAcross(double across) {
        return new Slab(across);
    }

    @Override
    public OptionalDouble volume() {
        return OptionalDouble.empty();
    }

    @Override
    public StandIn standIn(double biot) {
        return StandIn.itself(reach(), 0.0, biot);
    }
}
