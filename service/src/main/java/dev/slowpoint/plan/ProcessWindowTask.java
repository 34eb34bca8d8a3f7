package dev.slowpoint.plan;

import java.util.OptionalDouble;

/**
 * A question for the process window of one piece over a range of setpoints.
 *
 * @param cook the cook at whatever setpoint: without a setpoint, a time to serve, or steps after the bath
 * @param lowestC the lowest setpoint looked at [C]; from what is usual for the food and its rule if empty
 * @param highestC the highest one [C]; likewise
 * @param stepK between setpoints [K]; likewise
 * @param available time there is, from food in [s]; without bound if empty
 * @param momentTolerance how far the moment at which it leaves the bath may lie from the planned one [s]; the default of
 *     the parameter set if empty
 * @param ownC setpoint of a process point that the caller has in mind [C]; present with {@code ownAt} or alone
 * @param ownAt its moment [s from food in]; the best one of that setpoint if empty
 */
public record ProcessWindowTask(
        CookTask cook,
        OptionalDouble lowestC,
        OptionalDouble highestC,
        OptionalDouble stepK,
        OptionalDouble available,
        OptionalDouble momentTolerance,
        OptionalDouble ownC,
        OptionalDouble ownAt) {

    /** Most setpoints that are looked at. */
    public static final int MOST = 61;

    /**
     * The question about a cook; a setpoint that the cook has, and its time to serve, are the point that the caller has in
     * mind.
     */
    public static ProcessWindowTask of(
            CookTask cook,
            OptionalDouble lowestC,
            OptionalDouble highestC,
            OptionalDouble stepK,
            OptionalDouble available,
            OptionalDouble momentTolerance) {
        return new ProcessWindowTask(
                cook.anywhere(),
                lowestC,
                highestC,
                stepK,
                available,
                momentTolerance,
                cook.bath().setpointC(),
                cook.target().serveAfter());
    }

    /** Refuses a cook whose setpoint or moment is fixed, and one that goes on after the bath. */
    public ProcessWindowTask {
        if (cook.bath().setpointC().isPresent()
                || cook.target().serveAfter().isPresent()
                || !cook.then().isEmpty()) {
            throw new IllegalArgumentException(
                    "the cook of a process window has no setpoint, moment or steps of its own");
        }
        if (ownAt.isPresent() && ownC.isEmpty()) {
            throw new IllegalArgumentException("a moment without a setpoint is no process point");
        }
    }
}
