package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.BathCourse;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.ops.PlanClock;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.CookPlan;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.LoadPlan;
import dev.slowpoint.plan.LoadPlan.Schedule;
import dev.slowpoint.plan.LoadTask;
import dev.slowpoint.plan.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Answers load plans with the planner of the parameter set that a request names. */
@Component
final class PlannedLoads {

    private static final double L_PER_M3 = 1000.0;

    private final Planners planners;
    private final PlanMetrics metrics;

    PlannedLoads(Planners planners, PlanMetrics metrics) {
        this.planners = planners;
        this.metrics = metrics;
    }

    /**
     * Plans several foods in one bath.
     *
     * @param request read and found to keep the contract
     * @param include what to answer beyond the plan itself
     * @param sentences in the language asked for
     * @throws Refusal if the question cannot be answered
     */
    LoadPlanAnswer plan(LoadPlanRequest request, Set<Include> include, Sentences sentences) {
        CookPlanner planner = planners.of(request.parameterSet());
        LoadTask task = task(request, planner);
        LoadPlan plan;
        try (PlanClock clock = metrics.clock()) {
            plan = planner.watchedBy(clock).load(task, Include.details(include));
            clock.solved(plan.effort());
        }
        metrics.loaded(Words.of(plan.schedule()));
        for (int i = 0; i < plan.items().size(); i++) {
            metrics.planned(
                    Words.of(plan.items().get(i).plan().safety().verdict()),
                    task.items().get(i).task().food().group(),
                    plan.parameterSet());
        }
        boolean apart = plan.schedule() == Schedule.APART;
        NoticeTranslation notices =
                new NoticeTranslation(plan.notices(), planner.knowledge().notices(), sentences);
        return new LoadPlanAnswer(
                plan.parameterSet(),
                PlanTranslation.shown(plan.digest()),
                Words.of(plan.schedule()),
                new Reason(plan.reason().name(), sentences.of(plan.reason())),
                apart
                        ? plan.conflicts().stream()
                                .map(c -> conflict(c, sentences))
                                .toList()
                        : null,
                plan.readyAt().isPresent() ? PlanTranslation.up(plan.readyAt().getAsDouble()) : null,
                apart ? null : plan.phases().stream().map(PlannedLoads::phase).toList(),
                plan.lowering().map(PlannedLoads::lowering).orElse(null),
                plan.atLimit().isPresent() ? PlanTranslation.up(plan.atLimit().getAsDouble()) : null,
                plan.items().stream()
                        .map(item -> item(item, apart, planner, include, sentences))
                        .toList(),
                notices.warnings(),
                notices.cautions(),
                plan.water().map(PlannedLoads::curve).orElse(null),
                include.contains(Include.SOURCES) ? sources(plan) : null);
    }

    /** Everything that is wrong with any of the items, at its place. */
    private static LoadTask task(LoadPlanRequest request, CookPlanner planner) {
        List<LoadTask.Item> items = new ArrayList<>();
        List<Refusal.Fault> faults = new ArrayList<>();
        for (int i = 0; i < request.items().size(); i++) {
            LoadPlanRequest.Item item = request.items().get(i);
            try {
                items.add(LoadTask.Item.of(
                        item.id(), item.count(), TaskTranslation.task(request.asCookPlan(item), planner.knowledge())));
            } catch (Refusal refusal) {
                for (Refusal.Fault fault : refusal.faults()) {
                    faults.add(LoadTask.placed(fault, i));
                }
            }
        }
        if (!faults.isEmpty()) {
            throw new Refusal(faults);
        }
        return new LoadTask(
                items,
                request.serveAfterS() == null ? OptionalDouble.empty() : OptionalDouble.of(request.serveAfterS()));
    }

    private static LoadPlanAnswer.Conflict conflict(LoadPlan.Conflict conflict, Sentences sentences) {
        return new LoadPlanAnswer.Conflict(
                conflict.obstacle().name(),
                sentences.of(conflict),
                conflict.item(),
                conflict.other().orElse(null),
                boxed(conflict.needsC()),
                boxed(conflict.otherAllowsC()),
                conflict.because()
                        .map(b -> new Reason(b.name(), sentences.of(b)))
                        .orElse(null));
    }

    private static LoadPlanAnswer.Phase phase(LoadPlan.Phase phase) {
        return new LoadPlanAnswer.Phase(
                PlanTranslation.up(phase.from()),
                phase.setpointC(),
                phase.course()
                        .map(c -> new BathCourse(
                                c.lowestC(),
                                PlanTranslation.up(c.lowestAt()),
                                PlanTranslation.whole(Math.ceil(c.backAt()))))
                        .orElse(null));
    }

    private static LoadPlanAnswer.Lowering lowering(LoadPlan.Lowering lowering) {
        boolean told = lowering.volume().isPresent();
        double litres = L_PER_M3 * lowering.volume().orElse(0.0);
        return new LoadPlanAnswer.Lowering(
                PlanTranslation.up(lowering.at()),
                lowering.fromC(),
                lowering.toC(),
                lowering.tapC(),
                lowering.pouredShare(),
                told ? litres * lowering.pouredShare() : null,
                told ? litres * lowering.exchangedShare() : null);
    }

    private static LoadPlanAnswer.Item item(
            LoadPlan.Item item, boolean apart, CookPlanner planner, Set<Include> include, Sentences sentences) {
        CookPlanAnswer plan =
                new PlanTranslation(item.plan(), planner.knowledge().notices(), sentences).answer(include);
        int entersAt = PlanTranslation.up(item.entersAt());
        TakeOut own = plan.takeOut();
        return new LoadPlanAnswer.Item(
                item.id(),
                item.setpointC(),
                entersAt,
                own == null ? null : takeOut(own, entersAt, item),
                plan.noTakeOutReason(),
                item.staysThrough() ? true : null,
                apart
                        ? null
                        : item.plan().atServe().map(CookPlan.AtServe::coreC).orElse(null),
                plan.times(),
                plan.safety(),
                plan.texture(),
                new NoticeTranslation(item.notices(), planner.knowledge().notices(), sentences).warnings(),
                plan.curve());
    }

    /** On the clock of the load; the best moment is the planned one. */
    private static TakeOut takeOut(TakeOut own, int entersAt, LoadPlan.Item item) {
        int earliest = entersAt + own.earliestS();
        int leavesAt = Math.max(earliest, PlanTranslation.up(item.leavesAt()));
        Integer latest = PlanTranslation.whole(Math.floor(item.latestAt()));
        return new TakeOut(earliest, leavesAt, latest == null ? null : Math.max(latest, leavesAt));
    }

    private static LoadPlanAnswer.WaterCurve curve(LoadPlan.Water water) {
        return new LoadPlanAnswer.WaterCurve(
                Arrays.stream(water.times()).mapToObj(t -> (int) Math.rint(t)).toList(),
                Arrays.stream(water.temperaturesC()).boxed().toList());
    }

    private static List<CookPlanAnswer.Source> sources(LoadPlan plan) {
        Set<CookPlan.Source> all = new LinkedHashSet<>();
        plan.items().forEach(item -> all.addAll(item.plan().sources()));
        return PlanTranslation.sources(List.copyOf(all));
    }

    private static @Nullable Double boxed(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }
}
