package dev.slowpoint.plan;

/**
 * What holds for a cook under way where a question says nothing.
 *
 * @param logGap the longest time between two readings of the water over which it is taken as known [s]
 * @param logTolerance how far the water counted with may lie from a reading [K]
 * @param heatingRate how fast a heater of unknown power warms its water [K/s]
 * @param probeK how far a probe put into a core by hand may be off [K]
 */
public record ReplanDefaults(double logGap, double logTolerance, Range heatingRate, double probeK) {}
