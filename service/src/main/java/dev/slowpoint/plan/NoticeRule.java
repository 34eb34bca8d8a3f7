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

    /** How serious a notice is; a device shows the strongest first. */
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
