package dev.slowpoint.food;

/**
 * Where a number comes from.
 *
 * @param mark how it is known
 * @param source author, year and table, or what it was fitted to
 */
public record Provenance(Mark mark, String source) {}
