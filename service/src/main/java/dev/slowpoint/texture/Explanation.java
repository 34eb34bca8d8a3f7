package dev.slowpoint.texture;

/**
 * How far a process went that is no edge of the window but helps to understand it.
 *
 * @param at the level and when it is reached
 * @param dose at the end of the history [-]
 * @param extent share of the change that has taken place by then, from 0 to 1
 */
public record Explanation(LevelTime at, double dose, double extent) {}
