package dev.slowpoint.plan;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.Outcome.Growth;
import dev.slowpoint.safety.GrowthLaw;
import dev.slowpoint.safety.GrowthScope;
import dev.slowpoint.safety.GrowthScope.Occasion;
import dev.slowpoint.safety.GrowthSubject;
import dev.slowpoint.safety.SafetyKnowledge;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Predicts growth by every model of the set that is told for a food on an occasion. It informs; rules decide. */
final class Growths {

    private Growths() {}

    /** Growth between two moments of a piece, the most of all its points in all corners. */
    static List<Growth> in(
            Passages passages,
            ToDoubleFunction<Passage> from,
            ToDoubleFunction<Passage> until,
            Occasion occasion,
            FoodGroup food,
            SafetyKnowledge safety) {
        List<Stretch> nominal = stretches(passages.nominal(), from, until);
        List<Stretch> all = Stream.of(
                        nominal, stretches(passages.early(), from, until), stretches(passages.late(), from, until))
                .flatMap(List::stream)
                .toList();
        return told(nominal, all, occasion, food, safety);
    }

    /** Growth at the slowest-heating point of a trial until the time judged. */
    static List<Growth> warmingUp(Trial trial, FoodGroup food, SafetyKnowledge safety) {
        Stretch nominal = new Stretch(trial.nominal().slowest(), 0.0, trial.judgedAt());
        Stretch late = new Stretch(trial.late().slowest(), 0.0, trial.judgedAt());
        return told(List.of(nominal), List.of(nominal, late), Occasion.WARM_UP, food, safety);
    }

    /** What the models rest on that are told for a food on an occasion. */
    static List<CookPlan.Source> sources(Occasion occasion, FoodGroup food, SafetyKnowledge safety) {
        return safety.growth().values().stream()
                .map(GrowthLaw::subject)
                .filter(subject -> subject.scope().toldOf(occasion, food))
                .map(subject -> new CookPlan.Source(
                        "growth model " + subject.id() + ", " + subject.matrix() + ", tested from "
                                + subject.scope().testedFromC() + " to "
                                + subject.scope().testedToC() + " C",
                        subject.provenance()))
                .toList();
    }

    private static List<Growth> told(
            List<Stretch> nominal, List<Stretch> all, Occasion occasion, FoodGroup food, SafetyKnowledge safety) {
        List<Growth> found = new ArrayList<>();
        for (GrowthLaw law : safety.growth().values()) {
            GrowthSubject subject = law.subject();
            GrowthScope scope = subject.scope();
            if (!scope.toldOf(occasion, food)) {
                continue;
            }
            double untested = most(all, s -> scope.untestedS(s.point(), s.from(), s.until()));
            double tested = most(
                    all,
                    s -> scope.growingS(s.point(), s.from(), s.until())
                            - scope.untestedS(s.point(), s.from(), s.until()));
            ToDoubleFunction<Stretch> grown = s -> law.grownLog10(s.point(), s.from(), s.until(), subject.lagH0());
            found.add(new Growth(
                    subject.hazard(),
                    subject.id(),
                    most(all, grown),
                    subject.lagH0() > 0.0,
                    most(nominal, grown),
                    untested == 0.0 || tested > 0.0,
                    untested,
                    scope.testedFromC(),
                    scope.testedToC()));
        }
        return found;
    }

    private static double most(List<Stretch> stretches, ToDoubleFunction<Stretch> number) {
        return stretches.stream().mapToDouble(number).max().orElse(0.0);
    }

    private static List<Stretch> stretches(Passage p, ToDoubleFunction<Passage> from, ToDoubleFunction<Passage> until) {
        double begins = from.applyAsDouble(p);
        double ends = until.applyAsDouble(p);
        return IntStream.range(0, p.history().nodes())
                .mapToObj(node -> new Stretch(p.history().node(node), begins, ends))
                .toList();
    }

    /** Part of the history of a point. */
    private record Stretch(PointHistory point, double from, double until) {}
}
