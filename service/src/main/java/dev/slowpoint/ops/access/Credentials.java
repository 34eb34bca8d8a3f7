package dev.slowpoint.ops.access;

/** Finds out who shows a key or a token. */
@FunctionalInterface
interface Credentials {

    /** Who shows this, with about the same work whatever it is. */
    Identity of(String shown);
}
