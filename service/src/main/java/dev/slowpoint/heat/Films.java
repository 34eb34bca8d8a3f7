package dev.slowpoint.heat;

/**
 * The film coefficients that a stand-in is given so that it keeps the times of its body.
 *
 * @param body the real one
 * @param standIn that is run
 * @param conductivity of the material [W/mK]
 * @param warmestC the higher of the first medium and the piece at its start [C]; a piece in a colder medium cools
 */
record Films(Body body, StandIn standIn, double conductivity, double warmestC) {

    /** A stage with the films of the stand-in. A sear is too short to feel the ends, and is left as it is. */
    Stage of(Stage stage) {
        Surroundings surroundings = stage.surroundings();
        double film = surroundings.filmCoefficient();
        if (film == 0.0 || Conduction.sears(surroundings)) {
            return stage;
        }
        double inner = body.filmThroughShell(film);
        double biot = inner * body.reach() / conductivity;
        double own = standIn.ownBiot(biot);
        double equalBiot = biot == standIn.biot() ? own : body.equalTimeBiot(standIn, biot, sameAt(stage, biot));
        double equal = equalBiot == own
                ? inner * (body.reach() * standIn.stretch() / standIn.reach())
                : equalBiot * conductivity / standIn.reach();
        return equal == film
                ? stage
                : new Stage(
                        surroundings.withFilm(equal),
                        stage.farSurroundings(),
                        stage.bath(),
                        stage.rampsToC(),
                        stage.until(),
                        stage.duration());
    }

    /**
     * What is left of a step where the times of another film are to be the same. In a weaker one the stand-in is early before
     * that and late after it, in a stronger one the other way round. A piece that cools must be late wherever a rule looks,
     * so that it is exact at the first limit in a weaker film and near the last in a stronger one.
     */
    private double sameAt(Stage stage, double biot) {
        // A recorded bath wobbles around its setpoint; that is no cooling.
        boolean cools = stage.rampsToC().isEmpty() && stage.surroundings().temperatureC() < warmestC;
        return cools && biot < standIn.biot() ? StandIn.COOLING_EXACT_AT : StandIn.EXACT_AT;
    }
}
