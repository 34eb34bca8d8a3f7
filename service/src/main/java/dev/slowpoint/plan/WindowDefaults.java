package dev.slowpoint.plan;

/**
 * What holds for a process window where a question says nothing.
 *
 * @param belowK how far below the usual temperatures, or the floor of the rule, is looked [K]
 * @param aboveK how far above the higher of the two is looked [K]
 * @param stepK between setpoints [K]
 * @param momentTolerance how far the moment at which food leaves the bath may lie from the planned one [s]
 * @param spare how many further times all tolerances may go wrong at once at a point that is recommended [-]
 */
public record WindowDefaults(double belowK, double aboveK, double stepK, double momentTolerance, double spare) {}
