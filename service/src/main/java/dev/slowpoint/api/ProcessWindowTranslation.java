package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.ProcessWindowAnswer.AtSetpoint;
import dev.slowpoint.api.ProcessWindowAnswer.Closed;
import dev.slowpoint.api.ProcessWindowAnswer.Distance;
import dev.slowpoint.api.ProcessWindowAnswer.Interval;
import dev.slowpoint.api.ProcessWindowAnswer.Opening;
import dev.slowpoint.api.ProcessWindowAnswer.ProcessPoint;
import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.NoticeRule;
import dev.slowpoint.plan.ProcessWindow;
import dev.slowpoint.plan.ProcessWindow.Bar;
import dev.slowpoint.plan.ProcessWindow.Line;
import dev.slowpoint.plan.ProcessWindow.Lines;
import dev.slowpoint.plan.ProcessWindow.Refused;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Turns a process window into an answer, rounding as {@link PlanTranslation} does. */
final class ProcessWindowTranslation {

    private static final double MM_PER_M = 1000.0;

    private final ProcessWindow window;
    private final double edgeWithinK;
    private final Sentences sentences;
    private final NoticeTranslation notices;

    ProcessWindowTranslation(ProcessWindow window, Map<NoticeCode, NoticeRule> rules, Sentences sentences) {
        this.window = window;
        this.edgeWithinK = ProcessWindow.EDGE_WITHIN_K;
        this.sentences = sentences;
        this.notices = new NoticeTranslation(window.notices(), rules, sentences);
    }

    ProcessWindowAnswer answer() {
        return new ProcessWindowAnswer(
                window.parameterSet(),
                PlanTranslation.shown(window.digest()),
                window.rule().id(),
                window.stepK(),
                edgeWithinK,
                new ProcessWindowAnswer.Once(
                        window.tolerances().bathK(),
                        PlanTranslation.up(window.tolerances().moment()),
                        MM_PER_M * window.tolerances().across(),
                        window.tolerances().startK()),
                window.setpoints().stream().map(ProcessWindowTranslation::at).toList(),
                window.region().stream().map(ProcessWindowTranslation::interval).toList(),
                window.closed()
                        .map(c -> new Closed(
                                c.bar().code(),
                                c.openings().stream().map(this::opening).toList()))
                        .orElse(null),
                window.recommended().map(ProcessWindowTranslation::point).orElse(null),
                window.own().map(ProcessWindowTranslation::point).orElse(null),
                reasons(),
                notices.warnings(),
                notices.cautions());
    }

    private static AtSetpoint at(ProcessWindow.AtSetpoint setpoint) {
        Optional<Lines> lines = setpoint.lines();
        return new AtSetpoint(
                setpoint.setpointC(),
                lines.map(l -> PlanTranslation.awaited(Optional.of(l.times().hotThrough())))
                        .orElse(null),
                lines.map(l -> PlanTranslation.awaited(l.times().safe())).orElse(null),
                lines.map(l -> PlanTranslation.awaited(l.times().tender())).orElse(null),
                lines.map(l -> PlanTranslation.until(l.times().goodUntil())).orElse(null),
                lines.map(l -> PlanTranslation.until(l.times().softFrom())).orElse(null),
                lines.map(l -> PlanTranslation.whole(Math.floor(l.warmUpUsedUp())))
                        .orElse(null),
                lines.map(Lines::takeOut)
                        .filter(t -> t.obstacle().isEmpty())
                        .map(PlanTranslation::takeOut)
                        .orElse(null),
                setpoint.bar().map(Bar::code).orElse(null),
                lines.map(l -> Words.of(l.verdict())).orElse(null));
    }

    private static Interval interval(ProcessWindow.Interval interval) {
        return new Interval(
                interval.from().setpointC(),
                interval.to().setpointC(),
                Words.of(interval.verdict()),
                PlanTranslation.takeOut(interval.from().lines().orElseThrow().takeOut()),
                PlanTranslation.takeOut(interval.to().lines().orElseThrow().takeOut()),
                interval.cooler().map(Bar::code).orElse(null),
                interval.hotter().map(Bar::code).orElse(null));
    }

    private Opening opening(ProcessWindow.Opening opening) {
        Double thicknessMm = scaled(opening.across(), MM_PER_M);
        Integer availableS = opening.available().isPresent()
                ? PlanTranslation.up(opening.available().getAsDouble())
                : null;
        String purpose = opening.purpose().map(Words::of).orElse(null);
        List<Object> values = new ArrayList<>();
        values.add(Figures.temperatureC(opening.setpointC()));
        if (thicknessMm != null) {
            values.add(Figures.marginMm(thicknessMm));
        }
        if (availableS != null) {
            values.add((availableS + 59) / 60);
        }
        if (purpose != null) {
            values.add(sentences.say("WINDOW_PURPOSE_" + purpose, List.of()));
        }
        String text = sentences.say("WINDOW_" + opening.change().name(), values);
        return new Opening(
                Words.of(opening.change()),
                opening.setpointC(),
                Words.of(opening.verdict()),
                thicknessMm,
                availableS,
                purpose,
                opening.verdict() == Verdict.SURFACE_ONLY ? sentences.say("WINDOW_OUTSIDE_ONLY", List.of(text)) : text);
    }

    private static ProcessPoint point(ProcessWindow.ProcessPoint point) {
        return new ProcessPoint(
                point.setpointC(),
                PlanTranslation.up(point.at()),
                point.inside(),
                scaled(point.spare(), 1.0),
                point.nearest().map(Words::of).orElse(null),
                Words.of(point.verdict()),
                point.distances().stream()
                        .map(d -> new Distance(
                                Words.of(d.edge()),
                                d.seconds().isPresent()
                                        ? (Integer) (int) Math.floor(d.seconds().getAsDouble())
                                        : null,
                                scaled(d.kelvin(), 1.0),
                                scaled(d.metres(), MM_PER_M)))
                        .toList());
    }

    /** What is in the way anywhere, in the order of the setpoints. */
    private List<Reason> reasons() {
        Map<String, Reason> reasons = new LinkedHashMap<>();
        window.setpoints().forEach(s -> s.bar().ifPresent(bar -> reasons.putIfAbsent(bar.code(), reason(bar))));
        window.region().forEach(interval -> {
            interval.cooler().ifPresent(bar -> reasons.putIfAbsent(bar.code(), reason(bar)));
            interval.hotter().ifPresent(bar -> reasons.putIfAbsent(bar.code(), reason(bar)));
        });
        return List.copyOf(reasons.values());
    }

    private Reason reason(Bar bar) {
        return new Reason(
                bar.code(),
                bar instanceof Line line
                        ? sentences.of(line.obstacle())
                        : bar instanceof Refused refused
                                ? sentences.of(refused.fault().detail())
                                : sentences.say("WINDOW_" + bar.code(), List.of()));
    }

    private static @Nullable Double scaled(OptionalDouble value, double factor) {
        return value.isPresent() ? value.getAsDouble() * factor : null;
    }
}
