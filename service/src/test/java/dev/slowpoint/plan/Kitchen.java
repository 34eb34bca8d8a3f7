package dev.slowpoint.plan;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Asks the planner of the current parameter set. A question is changed by its {@code with} methods and then planned. */
record Kitchen(
        String food,
        Form form,
        Condition condition,
        Body body,
        double startC,
        OptionalDouble bathC,
        Purpose purpose,
        Eater eater,
        OptionalDouble serveAfter,
        CookTask.Pack pack,
        boolean previouslyFrozen)
        implements Asked {

    static final CookPlanner PLANNER =
            new CookPlanner(ParameterSets.released().current().knowledge());

    /** A bag with the food alone. */
    static final CookTask.Pack NOTHING_ELSE =
            new CookTask.Pack(false, false, OptionalDouble.empty(), OptionalDouble.empty(), false, false);

    static Kitchen of(String food, Body body, double startC, double bathC) {
        return new Kitchen(
                food,
                Form.INTACT,
                Condition.RAW,
                body,
                startC,
                OptionalDouble.of(bathC),
                Purpose.SERVE,
                Eater.GENERAL,
                OptionalDouble.empty(),
                NOTHING_ELSE,
                false);
    }

    Kitchen with(Form changed) {
        return new Kitchen(
                food, changed, condition, body, startC, bathC, purpose, eater, serveAfter, pack, previouslyFrozen);
    }

    Kitchen with(Purpose changed) {
        return new Kitchen(
                food, form, condition, body, startC, bathC, changed, eater, serveAfter, pack, previouslyFrozen);
    }

    Kitchen with(Eater changed) {
        return new Kitchen(
                food, form, condition, body, startC, bathC, purpose, changed, serveAfter, pack, previouslyFrozen);
    }

    Kitchen with(CookTask.Pack changed) {
        return new Kitchen(
                food, form, condition, body, startC, bathC, purpose, eater, serveAfter, changed, previouslyFrozen);
    }

    Kitchen with(Condition changed) {
        return new Kitchen(
                food, form, changed, body, startC, bathC, purpose, eater, serveAfter, pack, previouslyFrozen);
    }

    Kitchen with(Body changed) {
        return new Kitchen(
                food, form, condition, changed, startC, bathC, purpose, eater, serveAfter, pack, previouslyFrozen);
    }

    Kitchen frozenBefore() {
        return new Kitchen(food, form, condition, body, startC, bathC, purpose, eater, serveAfter, pack, true);
    }

    Kitchen from(double changedC) {
        return new Kitchen(
                food, form, condition, body, changedC, bathC, purpose, eater, serveAfter, pack, previouslyFrozen);
    }

    Kitchen at(double changedC) {
        return new Kitchen(
                food,
                form,
                condition,
                body,
                startC,
                OptionalDouble.of(changedC),
                purpose,
                eater,
                serveAfter,
                pack,
                previouslyFrozen);
    }

    Kitchen advised() {
        return new Kitchen(
                food,
                form,
                condition,
                body,
                startC,
                OptionalDouble.empty(),
                purpose,
                eater,
                serveAfter,
                pack,
                previouslyFrozen);
    }

    Kitchen servedAfter(double seconds) {
        return new Kitchen(
                food,
                form,
                condition,
                body,
                startC,
                bathC,
                purpose,
                eater,
                OptionalDouble.of(seconds),
                pack,
                previouslyFrozen);
    }

    CookPlan plan() {
        return PLANNER.plan(task(), EnumSet.noneOf(Detail.class));
    }

    CookTask task() {
        Food found = PLANNER.knowledge().catalogue().find(food).orElseThrow();
        return new CookTask(
                found,
                form,
                condition,
                OptionalDouble.empty(),
                previouslyFrozen,
                body,
                Arrangement.FREE,
                StartField.uniform(startC),
                Optional.empty(),
                new CookTask.Bath(bathC, Stirring.PUMPED, Optional.empty()),
                0.0,
                new CookTask.Target(purpose, OptionalDouble.empty(), OptionalDouble.empty(), serveAfter),
                eater,
                Optional.empty(),
                new CookTask.Tolerances(
                        OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
                pack,
                List.of());
    }

    @Override
    public List<NoticeCode> notices() {
        return plan().notices().stream().map(Notice::code).toList();
    }
}
