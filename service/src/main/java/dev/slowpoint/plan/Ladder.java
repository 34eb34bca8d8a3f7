package dev.slowpoint.plan;

import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Egg;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.ShortCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import java.util.function.DoubleUnaryOperator;

/**
 * The fixed rungs that sizes are banded by, so that a portion falls into the same band whatever else is on the sheet.
 *
 * @param width of a band [m]
 * @param otherSize step of the sizes that are not banded [m]
 */
record Ladder(double width, double otherSize) {

    static Ladder of(DisplayUnits units, SheetDefaults defaults, int halvings) {
        return new Ladder(units.band(defaults) / (1 << halvings), defaults.otherSize());
    }

    /**
     * Sizes from above one rung up to and with another.
     *
     * @param from lower end [m]
     * @param to upper end [m]
     */
    record Rungs(double from, double to) {}

    /** The narrowest run of whole bands that holds all sizes from one to another [m]. */
    Rungs around(double thinnest, double thickest) {
        double to = DisplayUnits.up(thickest, width);
        return new Rungs(Math.min(DisplayUnits.down(thinnest, width), to - width), to);
    }

    /** The slowest piece of a band. */
    Body slowest(Body body, Rungs rungs) {
        double to = rungs.to();
        return of(body, to, size -> Math.max(to, DisplayUnits.up(size, otherSize)));
    }

    /** The fastest piece of a band; of the lowest band one half as thick as its rung. */
    Body fastest(Body body, Rungs rungs) {
        double from = Math.max(rungs.from(), 0.5 * width);
        return of(body, from, size -> Math.max(from, DisplayUnits.down(size, otherSize)));
    }

    private static Body of(Body body, double across, DoubleUnaryOperator other) {
        if (body instanceof Brick brick) {
            return new Brick(across, other.applyAsDouble(brick.width()), other.applyAsDouble(brick.length()));
        }
        if (body instanceof ShortCylinder cylinder) {
            return cylinder.length() < cylinder.diameter()
                    ? new ShortCylinder(other.applyAsDouble(cylinder.diameter()), across)
                    : new ShortCylinder(across, other.applyAsDouble(cylinder.length()));
        }
        if (body instanceof Egg egg) {
            return new Egg(across, other.applyAsDouble(egg.length()));
        }
        if (body instanceof Slab || body instanceof LongCylinder || body instanceof Sphere) {
            return body.withAcross(across);
        }
        throw new IllegalArgumentException("no ladder for " + body);
    }
}
