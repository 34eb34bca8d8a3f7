package dev.slowpoint.plan;

/**
 * Is told when the phases of one question begin and end, all in the thread that asks. It sees no clock and no figure of the
 * question, so it cannot change an answer.
 */
public interface PhaseWatch {

    /** Looks away. */
    PhaseWatch NONE = new PhaseWatch() {
        @Override
        public void begins(PlanPhase phase) {}

        @Override
        public void ends(PlanPhase phase) {}
    };

    /** A phase begins. */
    void begins(PlanPhase phase);

    /** The phase that began last is over. A phase that fails does not end. */
    void ends(PlanPhase phase);
}
