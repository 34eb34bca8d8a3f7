package dev.slowpoint.plan;

import dev.slowpoint.plan.ProcessWindow.Bar;
import dev.slowpoint.plan.ProcessWindow.Line;
import dev.slowpoint.plan.ProcessWindow.Refused;
import dev.slowpoint.plan.ProcessWindow.TooLong;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One task tried at any setpoint, size and start; each is run once. */
final class Tries {

    private final CookTask task;
    private final Terms terms;
    private final SolverRuns solver;
    private final Map<Change, Trial> trials = new HashMap<>();

    Tries(CookTask task, Terms terms, SolverRuns solver) {
        this.task = task;
        this.terms = terms;
        this.solver = solver;
    }

    /** What was changed of the task: setpoint [C], size across [m], start [K]. */
    private record Change(double setpointC, double across, double warmerK) {}

    CookTask task() {
        return task;
    }

    Terms terms() {
        return terms;
    }

    /** At a setpoint [C], all else as told. */
    Trial at(double setpointC) {
        return at(setpointC, task.body().across(), 0.0);
    }

    /** At a setpoint [C] with a piece of another size [m] that starts warmer [K]. */
    Trial at(double setpointC, double across, double warmerK) {
        return trials.computeIfAbsent(new Change(setpointC, across, warmerK), change -> {
            // Food that starts as warm as the bath has nothing more to gain.
            double hottestK =
                    setpointC - Math.max(task.start().coreC(), task.start().surfaceC());
            CookTask changed = task.with(change.across(), Math.min(change.warmerK(), hottestK));
            return Trial.of(changed, change.setpointC(), terms, solver);
        });
    }

    /** Why a cook plan at a setpoint would be refused, if it would. */
    Optional<Bar> refused(double setpointC) {
        List<Refusal.Fault> faults = Admission.bath(task, setpointC);
        return faults.stream()
                .findFirst()
                .or(() -> CookPlanner.coolNonIntact(task, setpointC))
                .map(Refused::new);
    }

    /** Why there is no moment to take the piece out at a setpoint within a time [s], if there is none. */
    Optional<Bar> bar(double setpointC, double available) {
        return refused(setpointC).or(() -> bar(at(setpointC).takeOut(), available));
    }

    private static Optional<Bar> bar(CookPlan.TakeOut takeOut, double available) {
        if (takeOut.obstacle().isPresent()) {
            return Optional.of(new Line(takeOut.obstacle().get()));
        }
        return takeOut.earliest() > available ? Optional.of(new TooLong(takeOut.earliest())) : Optional.empty();
    }
}
