package dev.slowpoint.plan;

import dev.slowpoint.safety.Plausibility;

/**
 * What holds for a recorded log where a question says nothing.
 *
 * @param errorK accuracy of the sensor [K]
 * @param plausible what a sensor in food may say and still be believed
 */
public record LogDefaults(double errorK, Plausibility plausible) {}
