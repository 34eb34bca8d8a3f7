package dev.slowpoint.heat;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One part of a programme: surroundings that stay as they are for a while, or a bath that lives its own life.
 *
 * @param surroundings what the surface sees; of a slab whose faces see different things, the near face
 * @param farSurroundings what the far face of a slab sees, where that differs
 * @param bath the water, where it has a temperature of its own; the medium of {@code surroundings} is then this water
 * @param rampsToC temperature [C] that the near medium reaches at the end of {@code duration}, in a straight line from that of
 *     {@code surroundings}; empty where it stays. Not together with a bath
 * @param until what ends the stage before its duration, if anything does
 * @param duration how long at most [s], finite and greater than zero
 */
public record Stage(
        Surroundings surroundings,
        Optional<Surroundings> farSurroundings,
        Optional<WaterBath> bath,
        OptionalDouble rampsToC,
        Optional<CoreLevel> until,
        double duration) {

    /** Refuses a duration that is not finite and greater than zero, and a medium that both ramps and lives its own life. */
    public Stage {
        if (!(duration > 0.0) || Double.isInfinite(duration)) {
            throw new IllegalArgumentException("duration = " + duration + " s must be finite and greater than zero");
        }
        if (rampsToC.isPresent() && (bath.isPresent() || !Double.isFinite(rampsToC.getAsDouble()))) {
            throw new IllegalArgumentException(
                    "a medium ramps to " + rampsToC + " C only where it is no bath of its own");
        }
    }

    /** The same surroundings on all sides for a fixed time. */
    public Stage(Surroundings surroundings, double duration) {
        this(surroundings, Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty(), duration);
    }

    /** The same with other surroundings at the far face of a slab. */
    public Stage farFace(Surroundings far) {
        return new Stage(surroundings, Optional.of(far), bath, rampsToC, until, duration);
    }

    /** The same in a bath with a temperature of its own. */
    public Stage inBath(WaterBath water) {
        return new Stage(surroundings, farSurroundings, Optional.of(water), rampsToC, until, duration);
    }

    /** The same with the near medium on its way to another temperature [C], there at the end of the duration. */
    public Stage rampingTo(double endC) {
        return new Stage(surroundings, farSurroundings, bath, OptionalDouble.of(endC), until, duration);
    }

    /** The same for another time [s]. */
    public Stage lasting(double seconds) {
        return new Stage(surroundings, farSurroundings, bath, rampsToC, until, seconds);
    }

    /** Temperature of the near medium when the duration is over [C]; of a bath of its own that of {@code surroundings}. */
    double mediumAtEndC() {
        return rampsToC.orElse(surroundings.temperatureC());
    }

    /** The same, ended early when a level is reached. */
    public Stage endingAt(CoreLevel level) {
        return new Stage(surroundings, farSurroundings, bath, rampsToC, Optional.of(level), duration);
    }
}
