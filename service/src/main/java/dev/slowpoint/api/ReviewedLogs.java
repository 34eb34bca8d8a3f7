package dev.slowpoint.api;

import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.LogReview;
import dev.slowpoint.plan.LogReview.CriticalLimit;
import dev.slowpoint.plan.LogReview.What;
import dev.slowpoint.plan.LogTask;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Rule;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Reviews logs with the planner of the parameter set that a request names. What was shown is rounded against the food: a
 * kill and a time that has to be long down, a time that has to be short up.
 */
@Component
final class ReviewedLogs {

    /** All that a page shows. */
    static final Set<Include> PAGE = Set.of(Include.CURVE, Include.SOURCES);

    private final Planners planners;
    private final PlanMetrics metrics;

    ReviewedLogs(Planners planners, PlanMetrics metrics) {
        this.planners = planners;
        this.metrics = metrics;
    }

    /**
     * Reviews a log.
     *
     * @param request read and found to keep the contract
     * @param include what to answer beyond the review itself
     * @param sentences in the language asked for
     * @throws dev.slowpoint.plan.Refusal if the question cannot be answered
     */
    LogReviewAnswer review(LogReviewRequest request, Set<Include> include, Sentences sentences) {
        CookPlanner planner = planners.of(request.parameterSet());
        LogTask task = TaskTranslation.task(request, planner.knowledge());
        LogReview review = planner.review(task);
        metrics.reviewed(Words.of(review.verdict()), task.food().group(), review.parameterSet());
        NoticeTranslation notices =
                new NoticeTranslation(review.notices(), planner.knowledge().notices(), sentences);
        notices.warnings().forEach(warning -> metrics.warned(warning.code()));
        return new LogReviewAnswer(
                review.parameterSet(),
                PlanTranslation.shown(review.digest()),
                Words.of(review.verdict()),
                request.label(),
                request.batch(),
                new LogReviewAnswer.Subject(
                        request.food().id(),
                        Words.of(task.form()),
                        Words.of(task.condition()),
                        Words.of(task.purpose()),
                        Words.of(task.eater()),
                        Words.of(task.sensor().place())),
                review.rule().map(ReviewedLogs::rule).orElse(null),
                review.coolingRule().map(r -> rule(r, sentences)).orElse(null),
                review.limits().stream().map(ReviewedLogs::limit).toList(),
                review.deviations().stream().map(d -> deviation(d, sentences)).toList(),
                review.deviationCount(),
                readings(review.readings()),
                review.growth().isEmpty()
                        ? null
                        : review.growth().stream()
                                .map(g -> new LogReviewAnswer.Growth(
                                        Words.of(g.hazard()),
                                        g.model(),
                                        Figures.growthLog10(g.log10()),
                                        g.lagCounted()))
                                .toList(),
                review.computedCore()
                        .map(c -> new LogReviewAnswer.ComputedCore(
                                Figures.marginK(c.highestC()),
                                Figures.marginK(c.endsC()),
                                Figures.errorK(c.bathWithinK())))
                        .orElse(null),
                notices.warnings(),
                notices.cautions(),
                include.contains(Include.CURVE) ? curve(review.curve()) : null,
                include.contains(Include.SOURCES) ? PlanTranslation.sources(review.sources()) : null);
    }

    private static LogReviewAnswer.NamedRule rule(Rule rule) {
        return new LogReviewAnswer.NamedRule(
                rule.id(), rule.name(), rule.edition(), rule.provenance().source());
    }

    private LogReviewAnswer.NamedRule rule(CoolingRule rule, Sentences sentences) {
        return new LogReviewAnswer.NamedRule(
                rule.id(),
                sentences.of(rule),
                null,
                rule.stages().stream()
                        .map(stage -> stage.provenance().source())
                        .distinct()
                        .collect(Collectors.joining("; ")));
    }

    private static LogReviewAnswer.CriticalLimit limit(CriticalLimit limit) {
        boolean log10 = limit.what() == What.LETHALITY;
        boolean celsius = limit.what() == What.HOT_HOLDING;
        boolean seconds = !log10 && !celsius;
        boolean atLeast = limit.what() == What.TABLE_TIME;
        return new LogReviewAnswer.CriticalLimit(
                limit.id(),
                Words.of(limit.what()),
                limit.hazard().map(Words::of).orElse(null),
                celsius(limit.fromC()),
                celsius(limit.toC()),
                log10 ? Figures.growthLog10(limit.required()) : null,
                log10 ? Figures.achievedLog10(limit.measured()) : null,
                seconds ? whole(limit.required(), atLeast) : null,
                seconds ? whole(limit.measured(), !atLeast) : null,
                celsius ? Figures.temperatureC(limit.required()) : null,
                celsius ? Figures.marginK(limit.measured()) : null,
                Words.of(limit.met()),
                limit.advisory());
    }

    private static int whole(double seconds, boolean up) {
        return (int) (up ? Math.ceil(seconds) : Math.floor(seconds));
    }

    private static @Nullable Double celsius(OptionalDouble value) {
        return value.isPresent() ? Figures.temperatureC(value.getAsDouble()) : null;
    }

    private LogReviewAnswer.Deviation deviation(LogReview.Deviation deviation, Sentences sentences) {
        return new LogReviewAnswer.Deviation(
                (int) Math.floor(deviation.fromS()),
                (int) Math.ceil(deviation.untilS()),
                deviation.code().name(),
                sentences.of(deviation));
    }

    private static LogReviewAnswer.Readings readings(LogReview.Readings r) {
        return new LogReviewAnswer.Readings(
                r.received(),
                r.used(),
                r.received() - r.used(),
                (int) Math.floor(r.fromS()),
                (int) Math.ceil(r.untilS()),
                Figures.temperatureC(r.lowestC()),
                Figures.temperatureC(r.highestC()),
                Figures.errorK(r.errorK()),
                Figures.gapS(r.longestGapS()),
                r.sha256());
    }

    private static LogReviewAnswer.LogCurve curve(LogReview.Curve curve) {
        return new LogReviewAnswer.LogCurve(
                Arrays.stream(curve.timesS()).mapToObj(t -> (int) Math.rint(t)).toList(),
                Arrays.stream(curve.temperaturesC())
                        .mapToObj(Figures::temperatureC)
                        .toList());
    }
}
