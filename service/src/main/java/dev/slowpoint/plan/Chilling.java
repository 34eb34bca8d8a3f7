package dev.slowpoint.plan;

import dev.slowpoint.plan.CookPlan.Source;
import dev.slowpoint.plan.Outcome.Cooling;
import dev.slowpoint.plan.Outcome.Keeping;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.GrowthScope.Occasion;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Answers a chill task: three corners from hot to cold, judged by a cooling rule. */
final class Chilling {

    private final ChillTask task;
    private final Knowledge knowledge;
    private final CoolingRule rule;
    private final Passages passages;
    private final int last;

    /** Follows a task. */
    Chilling(ChillTask task, Knowledge knowledge, Materials materials, SolverRuns solver) {
        this.task = task;
        this.knowledge = knowledge;
        this.rule = Objects.requireNonNull(knowledge
                .safety()
                .cooling()
                .get(task.rule().orElse(knowledge.after().coolingRule())));
        this.last = task.store().isPresent() ? 1 : 0;
        this.passages = new Passages(
                run(Corner.NOMINAL, materials, solver),
                run(Corner.EARLY, materials, solver),
                run(Corner.LATE, materials, solver));
    }

    private Passage run(Corner corner, Materials materials, SolverRuns solver) {
        Course.Aim aim = new Course.Aim(
                OptionalDouble.empty(),
                knowledge.defaults().withinK(),
                Sequel.coldC(rule),
                knowledge.defaults().horizon());
        Course course = new Course(Setting.of(task, corner, knowledge, materials), corner, knowledge.after(), aim)
                .then(task.chill());
        task.store().ifPresent(course::then);
        return course.run(solver);
    }

    /** Temperature of the medium [C]. */
    double mediumC() {
        return task.chill()
                .mediumC()
                .orElse(Objects.requireNonNull(
                                knowledge.after().media().get(task.chill().medium()))
                        .temperatureC());
    }

    /** Core temperature when the chill ends [C]. */
    Range coreC() {
        return passages.range(p -> p.core().atC(p.ends(0)));
    }

    /** When the chill ends. */
    Span ends() {
        return passages.length(p -> p.ends(0));
    }

    /** Temperatures until the chill ends on the slow side. */
    CookPlan.Curve curve() {
        return CookPlan.Curve.of(
                passages.nominal().history(),
                passages.early().history(),
                passages.late().history(),
                ends().late());
    }

    /** Judged by the rule, the store counted where there is one. */
    Cooling cooling() {
        return new Coolings(
                        passages,
                        p -> 0.0,
                        p -> p.ends(last),
                        false,
                        task.food().group())
                .by(rule, knowledge.safety());
    }

    /** The store, where one was asked about. */
    Optional<Keeping> keeping(Cooling cooling) {
        ColdLife.Fitness fitness =
                new ColdLife.Fitness(cooling.kept() ? Optional.empty() : Optional.of(rule.id()), task.fitToKeep());
        return task.store()
                .map(store -> new ColdLife(knowledge.safety().coldStorage(), task.eater())
                        .store(
                                store,
                                fitness,
                                Growths.in(
                                        passages,
                                        p -> p.begins(1),
                                        p -> p.ends(1),
                                        Occasion.STORE,
                                        task.food().group(),
                                        knowledge.safety())));
    }

    /** What the numbers rest on. */
    List<Source> sources() {
        List<Source> sources = new ArrayList<>();
        task.food().origins().forEach(origin -> sources.add(new Source("composition and freezing point", origin)));
        sources.add(new Source(
                "conductivity factor, nominal",
                knowledge.thermal().bias().origins().get(1)));
        sources.add(new Source(
                "film coefficient",
                Objects.requireNonNull(
                                knowledge.after().media().get(task.chill().medium()))
                        .film()
                        .origin()));
        rule.stages().forEach(stage -> sources.add(new Source("cooling limit " + stage.id(), stage.provenance())));
        sources.addAll(Growths.sources(Occasion.COOLING, task.food().group(), knowledge.safety()));
        if (task.store().isPresent()) {
            sources.addAll(Growths.sources(Occasion.STORE, task.food().group(), knowledge.safety()));
        }
        task.store()
                .map(store -> task.fitToKeep()
                        ? knowledge.safety().coldStorage().limit(store.temperatureC())
                        : knowledge.safety().coldStorage().unproven(store.temperatureC()))
                .ifPresent(limit -> sources.add(new Source("store " + limit.id(), limit.provenance())));
        return sources;
    }
}
