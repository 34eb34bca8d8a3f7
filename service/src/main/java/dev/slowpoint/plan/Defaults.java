package dev.slowpoint.plan;

/**
 * What holds where a question says nothing.
 *
 * @param acrossShare tolerance of the size across the slowest-heating point, as a share of it [-]
 * @param acrossAtLeast the least such tolerance [m]
 * @param startK tolerance of the start temperature [K]
 * @param bathK tolerance of the bath [K]
 * @param readingK error of the core model and a probe [K]
 * @param withinK how near to the target counts as hot through [K]
 * @param horizon how far a plan looks ahead [s]
 * @param pumpedFilm id of the film of a pumped bath
 * @param stillFilm id of the film of a still bath
 * @param fridgeC temperature of a refrigerator [C]
 */
public record Defaults(
        double acrossShare,
        double acrossAtLeast,
        double startK,
        double bathK,
        double readingK,
        double withinK,
        double horizon,
        String pumpedFilm,
        String stillFilm,
        double fridgeC) {}
