package dev.slowpoint.heat;

/**
 * A body in which heat flows along one coordinate: from the surface at {@link #reach()} to the slowest-heating point at
 * zero.
 *
 * <p>The cross-section for heat flow grows as {@code r^shapeExponent}: 0 for a slab heated on both faces, 1 for a long
 * cylinder, 2 for a sphere. All sizes in metres, greater than zero and finite.
 */
public sealed interface Body permits Slab, LongCylinder, Sphere {

    /** Distance from the slowest-heating point to the surface [m]: half the thickness, or the radius. */
    double reach();

    /** Exponent of the growth of the cross-section with the distance from the slowest-heating point [-]. */
    double shapeExponent();

    /** The same kind of body with every length multiplied by {@code factor} (greater than zero). */
    Body scaled(double factor);

    /** The length a cook measures across the slowest-heating point [m]: thickness or diameter. */
    default double across() {
        return 2.0 * reach();
    }

    /** The same kind of body, {@code across} metres thick. */
    default Body withAcross(double across) {
        return scaled(across / across());
    }

    /** Refuses a length that is not a positive finite number of metres. */
    static double positiveLength(String name, double metres) {
        if (!(metres > 0.0) || Double.isInfinite(metres)) {
            throw new IllegalArgumentException(name + " = " + metres
                    + " m must be finite and greater than zero. Maybe it was given in another unit?");
        }
        return metres;
    }
}
