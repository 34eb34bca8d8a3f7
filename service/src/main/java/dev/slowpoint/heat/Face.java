package dev.slowpoint.heat;

/** One face of a body and what it sees; flows are per reach of the body [W/m3]. */
final class Face {

    /** Film coefficient [W/m2K] that stands for an infinite one: the surface follows the medium within 1e-6 of the step. */
    private static final double HOLDING_FILM = 1e9;

    /**
     * How strongly steam carries heat away from a wet surface above its limit [W/m2K]: so strongly that the surface of a
     * sear (some 60 kW/m2) stays within a kelvin of it. A means of computing, not a measured value.
     */
    private static final double STEAM_FILM = 1e5;

    private final double film;
    private final double flux;
    private final double wetLimitC;
    private final double steam;

    Face(Surroundings surroundings, double reach) {
        film = Math.min(surroundings.filmCoefficient(), HOLDING_FILM) / reach;
        flux = surroundings.heatFlux() / reach;
        wetLimitC = surroundings.wetLimitC();
        steam = STEAM_FILM / reach;
    }

    /** Film coefficient over reach [W/m3K]. */
    double film() {
        return film;
    }

    /** Flow into the body with its surface and the medium at these temperatures [W/m3]. */
    double flow(double surfaceC, double mediumC) {
        double flow = film * (mediumC - surfaceC) + flux;
        return surfaceC > wetLimitC ? flow - steam * (surfaceC - wetLimitC) : flow;
    }

    /** How much the flow falls per kelvin of the surface [W/m3K]. */
    double fall(double surfaceC) {
        return surfaceC > wetLimitC ? film + steam : film;
    }
}
