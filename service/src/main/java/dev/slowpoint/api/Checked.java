package dev.slowpoint.api;

/** A part of a request whose members depend on each other. */
interface Checked {

    /**
     * Adds what is wrong between the members; each of them alone has been found right.
     *
     * @param at pointer of this part
     * @param faults where to add
     */
    void check(String at, Faults faults);
}
