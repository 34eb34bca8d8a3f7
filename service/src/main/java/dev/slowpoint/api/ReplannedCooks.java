package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.ops.PlanClock;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.Replan;
import dev.slowpoint.plan.Replan.Decision;
import dev.slowpoint.plan.ReplanTask;
import dev.slowpoint.plan.Span;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Answers replans with the planner of the parameter set that a request names. */
@Component
final class ReplannedCooks {

    private static final double MM_PER_M = 1000.0;

    private final Planners planners;
    private final PlanMetrics metrics;

    ReplannedCooks(Planners planners, PlanMetrics metrics) {
        this.planners = planners;
        this.metrics = metrics;
    }

    /**
     * Plans a cook under way anew.
     *
     * @param request read and found to keep the contract
     * @param include what to answer beyond the plan itself
     * @param sentences in the language asked for
     * @throws dev.slowpoint.plan.Refusal if the question cannot be answered, or contradicts itself
     */
    ReplanAnswer plan(ReplanRequest request, Set<Include> include, Sentences sentences) {
        CookPlanner planner = planners.of(request.parameterSet());
        ReplanTask task = SoFarTranslation.task(request, planner.knowledge());
        Replan replan;
        try (PlanClock clock = metrics.clock()) {
            replan = planner.watchedBy(clock).replan(task, Include.details(include));
            clock.solved(replan.plan().effort());
        }
        metrics.replanned(Words.of(replan.decision()));
        metrics.planned(
                Words.of(replan.plan().safety().verdict()),
                task.cook().food().group(),
                replan.plan().parameterSet());
        CookPlanAnswer plan =
                new PlanTranslation(replan.plan(), planner.knowledge().notices(), sentences).answer(include);
        boolean lost = replan.decision() == Decision.DISCARD || replan.decision() == Decision.GET_DECISION;
        TakeOut takeOut = lost ? null : plan.takeOut();
        return new ReplanAnswer(
                plan.parameterSet(),
                plan.digest(),
                plan.setpointC(),
                Words.of(replan.decision()),
                replan.reason().map(r -> new Reason(r.name(), sentences.of(r))).orElse(null),
                new ReplanAnswer.State(
                        (int) replan.now().at(),
                        replan.now().coreC().nominal(),
                        replan.now().coreC().low(),
                        replan.now().coreC().high(),
                        replan.now().surfaceC(),
                        replan.now().waterC()),
                takeOut == null ? null : left(takeOut, request.soFar().elapsedS()),
                plan.times(),
                takeOut,
                lost ? null : plan.noTakeOutReason(),
                plan.safety(),
                plan.texture(),
                inferred(replan),
                plan.warnings(),
                plan.cautions(),
                plan.curve(),
                plan.organisms(),
                plan.sources());
    }

    private static ReplanAnswer.Left left(TakeOut takeOut, int now) {
        Integer latest = takeOut.latestS();
        return new ReplanAnswer.Left(
                Math.max(0, takeOut.earliestS() - now),
                Math.max(0, takeOut.bestS() - now),
                latest == null ? null : Math.max(0, latest - now));
    }

    private static ReplanAnswer.@Nullable Inferred inferred(Replan replan) {
        if (replan.fit().isEmpty() && replan.off().isEmpty()) {
            return null;
        }
        Span off = new Span(
                replan.off().stream().mapToDouble(o -> o.length().nominal()).sum(),
                replan.off().stream().mapToDouble(o -> o.length().early()).sum(),
                replan.off().stream().mapToDouble(o -> o.length().late()).sum());
        boolean wasOff = !replan.off().isEmpty();
        return new ReplanAnswer.Inferred(
                replan.fit().map(f -> MM_PER_M * f.across().nominal()).orElse(null),
                replan.fit().map(f -> MM_PER_M * f.across().low()).orElse(null),
                replan.fit().map(f -> MM_PER_M * f.across().high()).orElse(null),
                replan.fit().flatMap(Replan.Fit::film).orElse(null),
                replan.fit().map(f -> Words.of(f.pinned())).orElse(null),
                wasOff ? StepTranslation.taken(off) : null,
                wasOff ? replan.off().stream().anyMatch(Replan.Off::inferred) : null);
    }
}
