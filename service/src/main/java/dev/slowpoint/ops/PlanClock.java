package dev.slowpoint.ops;

import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.PhaseWatch;
import dev.slowpoint.plan.PlanPhase;
import java.util.EnumMap;
import java.util.Map;

/**
 * Takes the time of the phases of one question, all of the same kind together: a question may go through a phase hundreds of
 * times, and is told by a handful of figures. Used by one thread.
 */
public final class PlanClock implements PhaseWatch, AutoCloseable {

    private final PlanMetrics metrics;
    private final long began = System.nanoTime();
    private final Map<PlanPhase, Stint> stints = new EnumMap<>(PlanPhase.class);
    private long since;

    PlanClock(PlanMetrics metrics) {
        this.metrics = metrics;
    }

    @Override
    public void begins(PlanPhase phase) {
        since = System.nanoTime();
    }

    @Override
    public void ends(PlanPhase phase) {
        stints.computeIfAbsent(phase, first -> new Stint(since)).add(since, System.nanoTime());
    }

    /** The question was answered, with so much work of the solver. */
    public void solved(CookPlan.Effort effort) {
        metrics.solved(System.nanoTime() - began, effort.steps());
    }

    /** Records the phases, also of a question that was refused. */
    @Override
    public void close() {
        metrics.record(this);
    }

    /** The phases that were gone through, in the order they are told of. */
    Map<PlanPhase, Stint> stints() {
        return stints;
    }

    /** All times that a question went through one phase; times on the clock that only counts up [ns]. */
    static final class Stint {

        private final long firstBegan;
        private long lastEnded;
        private long busy;
        private int times;

        private Stint(long firstBegan) {
            this.firstBegan = firstBegan;
        }

        private void add(long from, long to) {
            lastEnded = to;
            busy += to - from;
            times++;
        }

        /** When the first began. */
        long firstBegan() {
            return firstBegan;
        }

        /** When the last ended. */
        long lastEnded() {
            return lastEnded;
        }

        /** How long all of them took. */
        long busy() {
            return busy;
        }

        /** How many there were. */
        int times() {
            return times;
        }
    }
}
