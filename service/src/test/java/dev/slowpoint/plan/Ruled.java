package dev.slowpoint.plan;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;

/** A question judged by a rule of its own choice. */
record Ruled(CookTask task, String rule) implements Asked {

    static Ruled by(String rule, CookTask task) {
        return new Ruled(
                new CookTask(
                        task.food(),
                        task.form(),
                        task.condition(),
                        task.fatPercent(),
                        task.previouslyFrozen(),
                        task.body(),
                        task.arrangement(),
                        task.start(),
                        task.earlierCook(),
                        task.bath(),
                        task.altitude(),
                        task.target(),
                        task.eater(),
                        Optional.of(rule),
                        task.tolerances(),
                        task.pack(),
                        task.then()),
                rule);
    }

    CookPlan plan(Detail... details) {
        EnumSet<Detail> asked = EnumSet.noneOf(Detail.class);
        asked.addAll(List.of(details));
        return Kitchen.PLANNER.plan(task, asked);
    }

    @Override
    public List<NoticeCode> notices() {
        return plan().notices().stream().map(Notice::code).toList();
    }
}
