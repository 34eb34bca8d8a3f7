package dev.slowpoint.plan;

/**
 * Why the service chose a setpoint.
 *
 * @param reason the kind of reason
 * @param lowC lower end of the range looked at [C]
 * @param highC upper end [C]
 */
public record SetpointAdvice(Reason reason, double lowC, double highC) {

    /** Kinds of reasons. */
    public enum Reason {
        /** The caller named the core temperature wanted. */
        CORE_ASKED_FOR,
        /** The lowest of the usual temperatures for this food at which the plan is safe and has a time to take it out. */
        LOWEST_THAT_IS_SAFE
    }
}
