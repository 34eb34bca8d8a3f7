package dev.slowpoint.plan;

import dev.slowpoint.plan.Replan.Decision;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.plan.SoFar.FoodAdded;
import dev.slowpoint.plan.SoFar.HeaterOff;
import dev.slowpoint.plan.SoFar.OutOfBath;
import java.util.ArrayList;
import java.util.List;

/** Decides which warnings follow from what really happened to a cook under way. */
final class ReplanNotices {

    private static final double MM_PER_M = 1000.0;

    /** A difference of sizes that is worth a word [m]: what a ruler tells (our own choice). */
    static final double RULER = 0.001;

    private ReplanNotices() {}

    /** The notices of what happened so far. */
    static List<Notice> of(ReplanTask task, Replanning replanning, Replanning.Verdict verdict) {
        List<Notice> found = new ArrayList<>();
        SoFar soFar = task.soFar();
        double longest =
                replanning.off().stream().mapToDouble(o -> o.length().late()).sum();
        if (longest > 0.0) {
            found.add(Notice.of(NoticeCode.HEATER_WAS_OFF, Figures.hours(longest)));
        }
        if (replanning.offDoubted()) {
            found.add(Notice.of(NoticeCode.OFF_TIME_DOUBTED));
        }
        if (soFar.events().stream()
                .anyMatch(e -> e instanceof HeaterOff off && off.from().isEmpty())) {
            found.add(Notice.of(NoticeCode.OFF_TIME_WORKED_OUT));
        }
        if (replanning.unrecorded() > 0.0) {
            found.add(Notice.of(NoticeCode.LOG_HAS_GAP, Figures.hours(replanning.unrecorded())));
        }
        if (soFar.events().stream().anyMatch(FoodAdded.class::isInstance)) {
            found.add(Notice.of(NoticeCode.COLD_FOOD_ADDED));
        }
        if (CookSoFar.floated(soFar.events())) {
            found.add(Notice.of(NoticeCode.FLOATED));
        }
        double out = soFar.events().stream()
                .filter(OutOfBath.class::isInstance)
                .mapToDouble(ReplanNotices::length)
                .sum();
        if (out > 0.0) {
            found.add(Notice.of(NoticeCode.WAS_OUT_OF_BATH, Figures.hours(out)));
        }
        sizes(task, replanning, found);
        if (replanning.growsInThisBath()) {
            found.add(Notice.of(NoticeCode.BATH_IN_GROWTH_RANGE));
        }
        if (verdict.fallen() > 0.0) {
            found.add(Notice.of(NoticeCode.FELL_BACK, Figures.hours(verdict.fallen())));
        }
        if (verdict.decision() == Decision.DISCARD || verdict.decision() == Decision.GET_DECISION) {
            found.add(Notice.of(NoticeCode.TOXIN_NOT_UNDONE));
        }
        return found;
    }

    private static void sizes(ReplanTask task, Replanning replanning, List<Notice> found) {
        double told = task.cook().body().across();
        task.soFar().across().ifPresent(measured -> {
            if (measured > told + RULER) {
                found.add(Notice.of(
                        NoticeCode.MEASURED_THICKER,
                        Figures.log10(MM_PER_M * told),
                        Figures.log10(MM_PER_M * measured)));
            }
        });
        replanning.fit().ifPresent(fit -> {
            if (fit.missK() > replanning.statedErrorK()) {
                found.add(Notice.of(NoticeCode.READINGS_DISAGREE, Figures.log10(fit.missK())));
            } else if (fit.across().nominal() > task.soFar().across().orElse(told) + RULER) {
                found.add(Notice.of(
                        NoticeCode.READINGS_MEAN_THICKER,
                        Figures.log10(MM_PER_M * told),
                        Figures.log10(MM_PER_M * fit.across().nominal())));
            } else if (fit.across().nominal() < replanning.clearlyThinner()) {
                found.add(Notice.of(
                        NoticeCode.READINGS_MEAN_THINNER,
                        Figures.log10(MM_PER_M * task.soFar().across().orElse(told)),
                        Figures.log10(MM_PER_M * fit.across().nominal())));
            }
        });
    }

    private static double length(Event event) {
        return event.over() - event.at();
    }
}
