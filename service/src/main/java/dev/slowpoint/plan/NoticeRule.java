package dev.slowpoint.plan;

import dev.slowpoint.food.Provenance;

/**
 * What a parameter set says of a notice.
 *
 * @param code the notice
 * @param severity how serious it is
 * @param kind warning of this plan, or a caution that stands always
 * @param trigger when it is given, in words
 * @param origin what it rests on
 */
public record NoticeRule(NoticeCode code, Severity severity, Kind kind, String trigger, Provenance origin) {

    /**
     * How serious a notice is; a device shows the strongest first. What published rules forbid, or what takes the claim of
     * a safe cook away, is a danger; what has to be known before cooking is a caution; what to do next, and what the plan
     * has counted already, is information. Nothing is told more mildly than that but where the plan itself counts it.
     */
    public enum Severity {
        /** Good to know. */
        INFO,
        /** Read before cooking. */
        CAUTION,
        /** Can make people ill. */
        DANGER
    }

    /** Whether a notice belongs to one plan or to all. */
    public enum Kind {
        /** Given when its trigger is true. */
        WARNING,
        /** Always given. */
        CAUTION
    }
}
