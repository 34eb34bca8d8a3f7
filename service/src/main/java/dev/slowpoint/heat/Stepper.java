package dev.slowpoint.heat;

/** A way to take one step in time from a state of {@link Cells}; looks at nothing before it. */
interface Stepper {

    /**
     * Tries a step.
     *
     * @param dt length [s]
     * @param state at its start
     * @param rates of gain of the cells at that state
     * @param toleranceK error of temperature allowed [K]
     * @param result the state at its end
     * @return error over tolerance; infinity when the equations could not be solved
     */
    double attempt(double dt, double[] state, double[] rates, double toleranceK, double[] result);

    /** Order of the error that {@link #attempt} returns, as a power of the step. */
    double errorOrder();

    /** What passed during the step last tried, by the very flows that changed the state. */
    Heat passed();
}
