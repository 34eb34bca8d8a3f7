package dev.slowpoint.api;

import org.jspecify.annotations.Nullable;

/** A field that was sent, and which others must then not be sent. */
record Exclusion(String field, String at, Faults faults) {

    /** Starts with the field that was sent. */
    static Exclusion of(String field, String at, Faults faults) {
        return new Exclusion(field, at, faults);
    }

    /** Adds a fault if the other was sent too. */
    Exclusion excludes(String other, @Nullable Object value) {
        if (value != null) {
            faults.add(Fault.of(
                    Pointer.child(at, other), ProblemCode.FIELDS_EXCLUDE_EACH_OTHER, "FAULT_EXCLUDES", other, field));
        }
        return this;
    }
}
