package dev.slowpoint.ops;

/** Work of the kind that requests will bring, done before the first of them comes. */
@FunctionalInterface
public interface Rehearsal {

    /** Runs it once. A failure stops the start: better no service than one that cannot answer. */
    void rehearse();
}
