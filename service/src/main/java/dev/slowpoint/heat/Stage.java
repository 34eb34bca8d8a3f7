package dev.slowpoint.heat;

/**
 * One part of a programme: surroundings that stay as they are for a while.
 *
 * @param surroundings what the surface sees
 * @param duration how long [s], finite and greater than zero
 */
public record Stage(Surroundings surroundings, double duration) {

    /** Refuses a duration that is not finite and greater than zero. */
    public Stage {
        if (!(duration > 0.0) || Double.isInfinite(duration)) {
            throw new IllegalArgumentException("duration = " + duration + " s must be finite and greater than zero");
        }
    }
}
