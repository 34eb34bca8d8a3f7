package dev.slowpoint.heat;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A block, heated on all six faces.
 *
 * @param thickness [m]
 * @param width [m]
 * @param length [m]; any of the three may be the shortest
 */
public record Brick(double thickness, double width, double length) implements Body {

    /** Refuses sizes that are not finite and above zero. */
    public Brick {
        Body.positiveLength("thickness", thickness);
        Body.positiveLength("width", width);
        Body.positiveLength("length", length);
    }

    @Override
    public double reach() {
        return 0.5 * Math.min(thickness, Math.min(width, length));
    }

    @Override
    public Brick scaled(double factor) {
        return new Brick(thickness * factor, width * factor, length * factor);
    }

    @Override
    public double across() {
        return thickness;
    }

    @Override
    public Brick withAcross(double across) {
        return new Brick(across, width, length);
    }

    @Override
    public OptionalDouble volume() {
        return OptionalDouble.of(thickness * width * length);
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
        double[] halves = {0.5 * thickness, 0.5 * width, 0.5 * length};
        Arrays.sort(halves);
        return ProductSolution.brick(halves, biot);
    }
}
