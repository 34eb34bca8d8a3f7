package dev.slowpoint.plan;

import java.util.List;

/**
 * One warning or caution of a plan.
 *
 * @param code what it is about
 * @param values numbers (already rounded) and words that its sentence names, in order
 */
public record Notice(NoticeCode code, List<Object> values) {

    /** Copies the values. */
    public Notice {
        values = List.copyOf(values);
    }

    static Notice of(NoticeCode code, Object... values) {
        return new Notice(code, List.of(values));
    }
}
