package dev.slowpoint.api;

import dev.slowpoint.ops.PlanClock;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.ProcessWindow;
import dev.slowpoint.plan.ProcessWindowTask;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Answers process windows with the planner of the parameter set that a request names. */
@Component
final class ProcessWindows {

    private final Planners planners;
    private final PlanMetrics metrics;

    ProcessWindows(Planners planners, PlanMetrics metrics) {
        this.planners = planners;
        this.metrics = metrics;
    }

    /**
     * Looks a range of setpoints over.
     *
     * @param request read and found to keep the contract
     * @param sentences in the language asked for
     * @throws dev.slowpoint.plan.Refusal if the question cannot be answered at any setpoint
     */
    ProcessWindowAnswer answer(ProcessWindowRequest request, Sentences sentences) {
        CookPlanner planner = planners.of(request.parameterSet());
        ProcessWindowTask task = ProcessWindowTask.of(
                TaskTranslation.task(request.asCookPlan(), planner.knowledge()),
                optional(request.lowestSetpointC()),
                optional(request.highestSetpointC()),
                optional(request.stepK()),
                optional(request.availableS()),
                optional(request.momentToleranceS()));
        ProcessWindow window;
        try (PlanClock clock = metrics.clock()) {
            window = planner.watchedBy(clock).window(task);
            clock.solved(window.effort());
        }
        metrics.windowed(!window.region().isEmpty(), task.cook().food().group(), window.parameterSet());
        return new ProcessWindowTranslation(window, planner.knowledge().notices(), sentences).answer();
    }

    private static OptionalDouble optional(@Nullable Number value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.doubleValue());
    }
}
