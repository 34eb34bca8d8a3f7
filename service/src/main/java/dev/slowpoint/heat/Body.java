package dev.slowpoint.heat;

import java.util.OptionalDouble;

/**
 * A piece of food as the solver sees it, heated on all sides alike unless a stage says otherwise.
 *
 * <p>All sizes in metres, greater than zero and finite.
 */
public sealed interface Body permits Slab, LongCylinder, Sphere, Brick, ShortCylinder, Egg {

    /** Distance from the slowest-heating point to the nearest surface [m]: half the shortest size. */
    double reach();

    /** The same kind of body with every length multiplied by {@code factor} (greater than zero). */
    Body scaled(double factor);

    /** The length a cook measures across the slowest-heating point [m]: thickness or diameter. */
    double across();

    /** The same body, {@code across} metres thick; its other sizes stay. */
    Body withAcross(double across);

    /** Its volume [m3]; empty for a slab and a long cylinder, which have no ends. */
    OptionalDouble volume();

    /**
     * The one-dimensional body that the solver runs in its place.
     *
     * @param biot film coefficient times reach over conductivity, above zero, or infinite
     */
    StandIn standIn(double biot);

    /**
     * The Biot number, of the calibrated reach of its stand-in, that this must be given in other surroundings, one field
     * carried through.
     *
     * @param standIn from its first surroundings
     * @param biot of the body in those other surroundings
     * @param left what is left of the temperature step where the times are the same, such as {@link StandIn#EXACT_AT}
     */
    default double equalTimeBiot(StandIn standIn, double biot, double left) {
        return biot;
    }

    /**
     * The film coefficient that is left of one at the outside when the body has a shell [W/m2K]; without a shell the same.
     */
    default double filmThroughShell(double film) {
        return film;
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
