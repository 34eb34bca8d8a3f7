package dev.slowpoint.api;

import dev.slowpoint.ops.PlanClock;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.CookTask;
import java.util.Set;
import org.springframework.stereotype.Component;

/** Answers cook plans with the planner of the parameter set that a request names. */
@Component
final class PlannedCooks implements CookPlanning {

    private final Planners planners;
    private final PlanMetrics metrics;

    PlannedCooks(Planners planners, PlanMetrics metrics) {
        this.planners = planners;
        this.metrics = metrics;
    }

    @Override
    public CookPlanAnswer plan(CookPlanRequest request, Set<Include> include, Sentences sentences) {
        CookPlanner planner = planners.of(request.parameterSet());
        CookTask task = TaskTranslation.task(request, planner.knowledge());
        CookPlan plan;
        try (PlanClock clock = metrics.clock()) {
            plan = planner.watchedBy(clock).plan(task, Include.details(include));
            clock.solved(plan.effort());
        }
        metrics.planned(Words.of(plan.safety().verdict()), task.food().group(), plan.parameterSet());
        return new PlanTranslation(plan, planner.knowledge().notices(), sentences).answer(include);
    }
}
