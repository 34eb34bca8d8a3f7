package dev.slowpoint.plan;

import dev.slowpoint.plan.Step.ChillMedium;
import dev.slowpoint.plan.Step.SearMethod;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A question of the {@link Kitchen} with steps after the bath, and with what else only few questions say. */
record Afterwards(
        Kitchen kitchen,
        Arrangement arrangement,
        Optional<CookTask.Vessel> vessel,
        OptionalDouble coreC,
        List<Step> then)
        implements Asked {

    static Afterwards of(Kitchen kitchen, Step... then) {
        return new Afterwards(kitchen, Arrangement.FREE, Optional.empty(), OptionalDouble.empty(), List.of(then));
    }

    static Step pan(double perSide) {
        return new Step.Sear(SearMethod.PAN, perSide, false, OptionalDouble.empty());
    }

    static Step ice() {
        return new Step.Chill(ChillMedium.ICE_WATER, OptionalDouble.empty(), OptionalDouble.empty());
    }

    static Step fridgeChill() {
        return new Step.Chill(ChillMedium.FRIDGE, OptionalDouble.empty(), OptionalDouble.empty());
    }

    static Step.Store days(double temperatureC, double days) {
        return new Step.Store(temperatureC, days * 86400.0);
    }

    static Step reheat(double setpointC, double minutes) {
        return new Step.Reheat(setpointC, OptionalDouble.of(60.0 * minutes));
    }

    Afterwards lying(Arrangement changed) {
        return new Afterwards(kitchen, changed, vessel, coreC, then);
    }

    Afterwards in(CookTask.Vessel changed) {
        return new Afterwards(kitchen, arrangement, Optional.of(changed), coreC, then);
    }

    Afterwards wanting(double changedC) {
        return new Afterwards(kitchen, arrangement, vessel, OptionalDouble.of(changedC), then);
    }

    CookTask task() {
        CookTask task = kitchen.task();
        return new CookTask(
                task.food(),
                task.form(),
                task.condition(),
                task.fatPercent(),
                task.previouslyFrozen(),
                task.body(),
                arrangement,
                task.start(),
                task.earlierCook(),
                new CookTask.Bath(task.bath().setpointC(), task.bath().stirring(), vessel),
                task.altitude(),
                new CookTask.Target(
                        task.target().purpose(),
                        coreC,
                        task.target().withinK(),
                        task.target().serveAfter()),
                task.eater(),
                task.rule(),
                task.tolerances(),
                task.pack(),
                then);
    }

    CookPlan plan() {
        return Kitchen.PLANNER.plan(task(), EnumSet.noneOf(Detail.class));
    }

    Outcome last() {
        List<Outcome> outcomes = plan().outcomes();
        return outcomes.get(outcomes.size() - 1);
    }

    @Override
    public List<NoticeCode> notices() {
        return plan().notices().stream().map(Notice::code).toList();
    }
}
