package dev.slowpoint.plan;

/**
 * A covered bath whose heater is off: its water nears the temperature of the room exponentially.
 *
 * @param startC of the water [C]
 * @param roomC it cools towards [C]
 * @param timeConstant [s]
 * @param duration [s]
 */
record PowerCut(double startC, double roomC, double timeConstant, double duration) {

    /** A room is at least this much colder than the water found in it [K] (our own choice). */
    private static final double ROOM_BELOW_FOUND_K = 1.0;

    /**
     * What is known of it, the rest from the usual cooling of a covered bath.
     *
     * <p>Where the length is inferred, early is the shortest it may have been and late the longest. Where only the length
     * is known, late is the bath that cools fastest: it spends most time where bacteria grow.
     */
    static PowerCut of(Step.Unheated step, double startC, Corner corner, AfterBath after) {
        double roomC = after.roomC();
        double warmRoomC = roomC + after.roomToleranceK();
        if (step.foundC().isEmpty()) {
            double duration = step.duration().orElseThrow();
            return switch (corner) {
                case NOMINAL -> new PowerCut(startC, roomC, after.bathCooling().nominal(), duration);
                case EARLY ->
                    new PowerCut(startC, warmRoomC, after.bathCooling().high(), duration);
                case LATE -> new PowerCut(startC, roomC, after.bathCooling().low(), duration);
            };
        }
        double foundC = step.foundC().getAsDouble();
        double roomThenC = Math.min(
                foundC - ROOM_BELOW_FOUND_K,
                corner == Corner.LATE && step.duration().isEmpty() ? warmRoomC : roomC);
        double constants = StrictMath.log((startC - roomThenC) / (foundC - roomThenC));
        if (step.duration().isPresent()) {
            double duration = step.duration().getAsDouble();
            return new PowerCut(startC, roomThenC, duration / constants, duration);
        }
        double timeConstant = switch (corner) {
            case NOMINAL -> after.bathCooling().nominal();
            case EARLY -> after.bathCooling().low();
            case LATE -> after.bathCooling().high();
        };
        return new PowerCut(startC, roomThenC, timeConstant, timeConstant * constants);
    }

    /** Temperature of the water at its end [C]. */
    double endC() {
        return roomC + (startC - roomC) * StrictMath.exp(-duration / timeConstant);
    }

    /** How long the water was below a level [s]. */
    double below(double levelC) {
        if (startC <= levelC) {
            return duration;
        }
        if (roomC >= levelC) {
            return 0.0;
        }
        return Math.max(0.0, duration - timeConstant * StrictMath.log((startC - roomC) / (levelC - roomC)));
    }
}
