package dev.slowpoint.plan;

/**
 * One way the real cook may be, drawn from the spreads.
 *
 * @param acrossBy how much thicker the piece is [m]
 * @param startBy how much warmer it starts [K]
 * @param bathBy how much warmer the bath is [K]
 * @param film coefficient of the bath [W/m2K]
 * @param airFilm coefficient of a face in air [W/m2K]
 * @param conductivity what the nominal conductivity is multiplied with [-]
 * @param shape how far the error of a stand-in body is turned, from -1 (all of it early) to 1 (all of it late)
 * @param readingBy how much warmer the core is than computed [K], as far as safety is judged
 */
record Draw(
        double acrossBy,
        double startBy,
        double bathBy,
        double film,
        double airFilm,
        double conductivity,
        double shape,
        double readingBy) {}
