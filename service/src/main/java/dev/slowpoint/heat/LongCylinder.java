package dev.slowpoint.heat;

import java.util.OptionalDouble;

/**
 * A round piece long enough that its ends do not matter. For a real piece it is the slow side: ends only help.
 *
 * @param diameter [m], greater than zero
 */
public record LongCylinder(double diameter) implements Body {

    /** Refuses a diameter that is not a positive finite length. */
    public LongCylinder {
        Body.positiveLength("diameter", diameter);
    }

    @Override
    public double reach() {
        return diameter / 2.0;
    }

    @Override
    public LongCylinder scaled(double factor) {
        return new LongCylinder(diameter * factor);
    }

    @Override
    public double across() {
        return diameter;
    }

    @Override
    public LongCylinder withAcross(double across) {
        return new LongCylinder(across);
    }

    @Override
    public OptionalDouble volume() {
        return OptionalDouble.empty();
    }

    @Override
    public StandIn standIn(double biot) {
        return StandIn.itself(reach(), 1.0, biot);
    }
}
