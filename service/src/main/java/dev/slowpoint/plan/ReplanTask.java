package dev.slowpoint.plan;

/**
 * A question about a cook under way.
 *
 * @param cook as it was meant, with a setpoint
 * @param soFar what really happened
 */
public record ReplanTask(CookTask cook, SoFar soFar) {}
