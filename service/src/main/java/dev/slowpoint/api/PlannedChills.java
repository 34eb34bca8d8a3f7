package dev.slowpoint.api;

import dev.slowpoint.ops.PlanClock;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.ChillPlan;
import dev.slowpoint.plan.ChillTask;
import dev.slowpoint.plan.CookPlanner;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;

/** Answers chill plans with the planner of the parameter set that a request names. */
@Component
final class PlannedChills {

    private final Planners planners;
    private final PlanMetrics metrics;

    PlannedChills(Planners planners, PlanMetrics metrics) {
        this.planners = planners;
        this.metrics = metrics;
    }

    /**
     * Plans a chill.
     *
     * @param request read and found to keep the contract
     * @param include what to answer beyond the plan itself
     * @param sentences in the language asked for
     * @throws dev.slowpoint.plan.Refusal if the question cannot be answered
     */
    ChillPlanAnswer plan(ChillPlanRequest request, Set<Include> include, Sentences sentences) {
        CookPlanner planner = planners.of(request.parameterSet());
        ChillTask task = TaskTranslation.task(request, planner.knowledge());
        ChillPlan plan;
        try (PlanClock clock = metrics.clock()) {
            plan = planner.watchedBy(clock).chill(task, Include.details(include));
            clock.solved(plan.effort());
        }
        metrics.chilled(plan.cooling().kept(), task.food().group(), plan.parameterSet());
        NoticeTranslation notices =
                new NoticeTranslation(plan.notices(), planner.knowledge().notices(), sentences);
        return new ChillPlanAnswer(
                plan.parameterSet(),
                PlanTranslation.shown(plan.digest()),
                plan.mediumC(),
                PlanTranslation.awaited(Optional.of(plan.ends())),
                plan.coreC().nominal(),
                plan.coreC().low(),
                plan.coreC().high(),
                StepTranslation.cooling(plan.cooling()),
                plan.keeping().map(StepTranslation::keeping).orElse(null),
                notices.warnings(),
                notices.cautions(),
                plan.curve().map(PlanTranslation::curve).orElse(null),
                include.contains(Include.SOURCES) ? PlanTranslation.sources(plan.sources()) : null);
    }
}
