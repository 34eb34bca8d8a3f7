package dev.slowpoint.heat;

import java.util.OptionalDouble;

/**
 * A cylinder with ends, heated on all sides: from a disc to a roll.
 *
 * @param diameter [m]
 * @param length [m]
 */
public record ShortCylinder(double diameter, double length) implements Body {

    /** Refuses sizes that are not finite and above zero. */
    public ShortCylinder {
        Body.positiveLength("diameter", diameter);
        Body.positiveLength("length", length);
    }

    @Override
    public double reach() {
        return 0.5 * Math.min(diameter, length);
    }

    @Override
    public ShortCylinder scaled(double factor) {
        return new ShortCylinder(diameter * factor, length * factor);
    }

    /** The diameter of a roll, the thickness of a disc: heat takes the shorter way. */
    @Override
    public double across() {
        return Math.min(diameter, length);
    }

    @Override
    public ShortCylinder withAcross(double across) {
        return length < diameter ? new ShortCylinder(diameter, across) : new ShortCylinder(across, length);
    }

    @Override
    public OptionalDouble volume() {
        return OptionalDouble.of(0.25 * StrictMath.PI * diameter * diameter * length);
    }

    @Override
    public StandIn standIn(double biot) {
        return StandIn.of(solution(biot), reach(), biot);
    }

    @Override
    public double equalTimeBiot(StandIn standIn, double biot, double left) {
        return standIn.equalTimeBiot(solution(biot).fourierAt(left), left);
    }

    private ProductSolution solution(double biot) {
        return ProductSolution.cylinder(0.5 * diameter, 0.5 * length, biot);
    }
}
