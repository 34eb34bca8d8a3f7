package dev.slowpoint.heat;

import java.util.OptionalDouble;

/**
 * A hen's egg in its shell: a ball drawn out along its length.
 *
 * <p>Its shape exponent is {@code 1 + (width/length)^p} with {@code p = 1.711 - 1/(1.2 + 0.65 Bi)}: fitted to the times that
 * a finite-element solution of such bodies needs to the last twentieth of a temperature step (lengths of 1 to 1.45 widths,
 * Biot numbers from 1 up; the figures stand in {@code EggTest}), within 0.004.
 *
 * @param width largest diameter across [m]
 * @param length from end to end [m], at least the width
 */
public record Egg(double width, double length) implements Body {

    /** Width over length of a usual egg: shape index 75 percent (common practice, no source). */
    private static final double USUAL_SHAPE = 0.75;

    /** Density of a fresh egg [kg/m3], from memory. */
    private static final double DENSITY = 1085.0;

    /** Thickness of shell and membranes [m], and their conductivity [W/mK], both from memory. */
    private static final double SHELL = 0.4e-3;

    private static final double SHELL_CONDUCTIVITY = 0.46;

    /**
     * What the fit misses of such times from a half to a two-hundredth of the step left, at most: of a spectral solution
     * whose figures stand in {@code EggTest}.
     */
    private static final double EARLY_BY = 0.037;

    private static final double LATE_BY = 0.012;

    /** Refuses sizes that are not finite and above zero, and a length below the width. */
    public Egg {
        Body.positiveLength("width", width);
        Body.positiveLength("length", length);
        if (length < width) {
            throw new IllegalArgumentException("length = " + length + " m of an egg must be at least its width of "
                    + width + " m. Maybe the two were swapped?");
        }
    }

    /** An egg of a width [m] and the usual shape. */
    public static Egg ofWidth(double width) {
        return new Egg(width, width / USUAL_SHAPE);
    }

    /** An egg of a length [m] and the usual shape. */
    public static Egg ofLength(double length) {
        return new Egg(length * USUAL_SHAPE, length);
    }

    /** An egg of a mass [kg], above zero, and the usual shape. */
    public static Egg ofMass(double mass) {
        return ofWidth(StrictMath.cbrt(6.0 / StrictMath.PI * mass / DENSITY * USUAL_SHAPE));
    }

    @Override
    public double reach() {
        return 0.5 * width;
    }

    @Override
    public Egg scaled(double factor) {
        return new Egg(width * factor, length * factor);
    }

    @Override
    public double across() {
        return width;
    }

    /** An egg of another width keeps its shape. */
    @Override
    public Egg withAcross(double across) {
        return scaled(across / width);
    }

    @Override
    public OptionalDouble volume() {
        return OptionalDouble.of(StrictMath.PI / 6.0 * width * width * length);
    }

    @Override
    public StandIn standIn(double biot) {
        return new StandIn(
                reach(),
                shapeExponent(biot),
                biot,
                1.0,
                EARLY_BY + StandIn.VARYING_PROPERTIES,
                LATE_BY + StandIn.VARYING_PROPERTIES);
    }

    @Override
    public double equalTimeBiot(StandIn standIn, double biot, double left) {
        RadialSeries own = new RadialSeries(shapeExponent(biot), biot);
        return standIn.equalTimeBiot(StandIn.fourierAt(own, left), left);
    }

    private double shapeExponent(double biot) {
        return 1.0 + StrictMath.pow(width / length, 1.711 - 1.0 / (1.2 + 0.65 * biot));
    }

    @Override
    public double filmThroughShell(double film) {
        return 1.0 / (1.0 / film + SHELL / SHELL_CONDUCTIVITY);
    }
}
