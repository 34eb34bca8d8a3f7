package dev.slowpoint.plan;

import dev.slowpoint.food.DonenessRange;
import dev.slowpoint.plan.SetpointAdvice.Reason;
import dev.slowpoint.safety.Verdict;
import java.util.Optional;

/** Recommends a setpoint where none was given. */
final class SetpointChooser {

    /** What appliances can be set to (common practice, no source). */
    private static final double STEP_K = 0.5;

    /** Safe time over the time to be hot through beyond which a bath is not recommended (our own choice). */
    private static final double EDGE = 2.0;

    /** How far above the usual temperatures a safe bath is looked for, and the hottest one (our own limits). */
    private static final double BEYOND_K = 12.0;

    private static final double HOTTEST_C = 95.0;

    private final CookTask task;
    private final Terms terms;
    private final SolverRuns solver;

    SetpointChooser(CookTask task, Terms terms, SolverRuns solver) {
        this.task = task;
        this.terms = terms;
        this.solver = solver;
    }

    /**
     * A recommended bath and why.
     *
     * @param trial the task tried in it
     * @param advice the reason
     */
    record Choice(Trial trial, SetpointAdvice advice) {}

    /**
     * The core temperature asked for; or else the lowest of the usual temperatures, in half kelvins, at which the rule is met
     * in the worst case without a long wait at the edge, and there is a time to take the food out. Where none of them does, up to twelve kelvin above.
     */
    Choice choose() {
        if (task.target().coreC().isPresent()) {
            double coreC = task.target().coreC().getAsDouble();
            return new Choice(
                    Trial.of(task, coreC, terms, solver), new SetpointAdvice(Reason.CORE_ASKED_FOR, coreC, coreC));
        }
        DonenessRange range = task.food()
                .doneness()
                .orElseThrow(() -> new Refusal(
                        Refusal.Fault.of("#/surroundings/bath/setpointC", "SETPOINT_NEEDED", "FAULT_SETPOINT_NEEDED")
                                .withHint("HINT_GIVE_SETPOINT")));
        double highC = Math.min(Math.min(range.highC() + BEYOND_K, HOTTEST_C), BoilingPoint.atC(task.altitude()) - 1.0);
        for (double setpointC = range.lowC(); setpointC <= highC; setpointC += STEP_K) {
            Optional<Trial> trial = fitting(setpointC);
            if (trial.isPresent()) {
                return new Choice(
                        trial.get(), new SetpointAdvice(Reason.LOWEST_THAT_IS_SAFE, range.lowC(), range.highC()));
            }
        }
        throw new Refusal(Refusal.Fault.of(
                        "#/surroundings/bath/setpointC",
                        "NO_SETPOINT_FITS",
                        "FAULT_NO_SETPOINT_FITS",
                        Figures.temperature(range.lowC()),
                        Figures.temperature(highC))
                .withHint("HINT_TAKE_THINNER"));
    }

    /** A bath so close to the floor of a rule that the wait for it is longer than the heating itself. */
    private static boolean onTheEdge(Trial trial) {
        return trial.times()
                .safe()
                .filter(safe -> safe.late() > EDGE * trial.times().hotThrough().late())
                .isPresent();
    }

    private Optional<Trial> fitting(double setpointC) {
        if (Math.max(task.start().coreC(), task.start().surfaceC()) >= setpointC) {
            return Optional.empty();
        }
        Trial trial = Trial.of(task, setpointC, terms, solver);
        boolean safe = trial.verdict() == Verdict.MET || trial.verdict() == Verdict.NOT_APPLICABLE;
        return safe && trial.takeOut().obstacle().isEmpty() && !onTheEdge(trial)
                ? Optional.of(trial)
                : Optional.empty();
    }
}
