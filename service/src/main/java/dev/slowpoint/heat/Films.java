package dev.slowpoint.heat;

/**
 * The film coefficients that a stand-in is given so that it keeps the times of its body.
 *
 * @param body the real one
 * @param standIn that is run
 * @param conductivity of the material [W/mK]
 * @param firstC temperature of the first medium [C]; a piece in a colder one cools
 */
record Films(Body body, StandIn standIn, double conductivity, double firstC) {

    /** A stage with the films of the stand-in. A sear is too short to feel the ends, and is left as it is. */
    Stage of(Stage stage) {
        Surroundings surroundings = stage.surroundings();
        double film = surroundings.filmCoefficient();
        if (film == 0.0 || Conduction.sears(surroundings)) {
            return stage;
        }
        // A recorded bath wobbles around its setpoint; that is no cooling.
        double left = stage.rampsToC().isEmpty() && surroundings.temperatureC() < firstC
                ? StandIn.COOLING_EXACT_AT
                : StandIn.EXACT_AT;
        double inner = body.filmThroughShell(film);
        double biot = inner * body.reach() / conductivity;
        double equalBiot = biot == standIn.biot() ? biot : body.equalTimeBiot(standIn, biot, left);
        double equal = equalBiot == biot && standIn.reach() == body.reach()
                ? inner
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
}
