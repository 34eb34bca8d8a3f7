package dev.slowpoint.api;

import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.parameters.ParameterSet;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.CookTask;
import dev.slowpoint.plan.Detail;
import dev.slowpoint.plan.Refusal;
import java.time.Duration;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Answers cook plans with the planner of the parameter set that a request names. */
@Component
final class PlannedCooks implements CookPlanning {

    private final Map<String, CookPlanner> planners = new LinkedHashMap<>();
    private final CookPlanner current;
    private final Sentences sentences;
    private final PlanMetrics metrics;

    PlannedCooks(ParameterSets sets, Sentences sentences, PlanMetrics metrics) {
        for (ParameterSet set : sets.all()) {
            planners.put(set.version(), new CookPlanner(set.knowledge()));
        }
        this.current = Objects.requireNonNull(planners.get(sets.current().version()));
        this.sentences = sentences;
        this.metrics = metrics;
    }

    @Override
    public CookPlanAnswer plan(CookPlanRequest request, Set<Include> include) {
        CookPlanner planner = planner(request.parameterSet());
        CookTask task = TaskTranslation.task(request, planner.knowledge());
        long started = System.nanoTime();
        CookPlan plan = planner.plan(task, details(include));
        metrics.solved(
                Duration.ofNanos(System.nanoTime() - started), plan.effort().steps());
        metrics.planned(Words.of(plan.safety().verdict()), task.food().group(), plan.parameterSet());
        return new PlanTranslation(plan, planner.knowledge().notices(), sentences).answer(include);
    }

    private CookPlanner planner(@Nullable String version) {
        if (version == null) {
            return current;
        }
        CookPlanner planner = planners.get(version);
        if (planner == null) {
            throw new Refusal(Refusal.Fault.of(
                            "#/parameterSet",
                            ProblemCode.UNKNOWN_PARAMETER_SET.name(),
                            "There is no parameter set of this version.")
                    .withValue(version)
                    .withHint("Known are " + String.join(", ", planners.keySet()) + "."));
        }
        return planner;
    }

    private static Set<Detail> details(Set<Include> include) {
        Set<Detail> details = EnumSet.noneOf(Detail.class);
        for (Include part : include) {
            details.add(
                    switch (part) {
                        case CURVE -> Detail.CURVE;
                        case ORGANISMS -> Detail.ORGANISMS;
                        case SOURCES -> Detail.SOURCES;
                    });
        }
        return details;
    }
}
