package dev.slowpoint.heat;

import java.util.Optional;

/**
 * One part of a programme: surroundings that stay as they are for a while, or a bath that lives its own life.
 *
 * @param surroundings what the surface sees; of a slab whose faces see different things, the near face
 * @param farSurroundings what the far face of a slab sees, where that differs
 * @param bath the water, where it has a temperature of its own; the medium of {@code surroundings} is then this water
 * @param until what ends the stage before its duration, if anything does
 * @param duration how long at most [s], finite and greater than zero
 */
public record Stage(
        Surroundings surroundings,
        Optional<Surroundings> farSurroundings,
        Optional<WaterBath> bath,
        Optional<CoreLevel> until,
        double duration) {

    /** Refuses a duration that is not finite and greater than zero. */
    public Stage {
        if (!(duration > 0.0) || Double.isInfinite(duration)) {
            throw new IllegalArgumentException("duration = " + duration + " s must be finite and greater than zero");
        }
    }

    /** The same surroundings on all sides for a fixed time. */
    public Stage(Surroundings surroundings, double duration) {
        this(surroundings, Optional.empty(), Optional.empty(), Optional.empty(), duration);
    }

    /** The same with other surroundings at the far face of a slab. */
    public Stage farFace(Surroundings far) {
        return new Stage(surroundings, Optional.of(far), bath, until, duration);
    }

    /** The same in a bath with a temperature of its own. */
    public Stage inBath(WaterBath water) {
        return new Stage(surroundings, farSurroundings, Optional.of(water), until, duration);
    }

    /** The same, ended early when a level is reached. */
    public Stage endingAt(CoreLevel level) {
        return new Stage(surroundings, farSurroundings, bath, Optional.of(level), duration);
    }
}
