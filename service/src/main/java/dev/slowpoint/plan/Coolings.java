package dev.slowpoint.plan;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.plan.Outcome.Cooling;
import dev.slowpoint.plan.Outcome.CoolingLimit;
import dev.slowpoint.plan.Outcome.Growth;
import dev.slowpoint.plan.Outcome.LevelTime;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.GrowthScope.Occasion;
import dev.slowpoint.safety.SafetyKnowledge;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Reads a cooling from the end of the last heating to the begin of the next, or to the end of all.
 *
 * @param passages the three corners
 * @param from when cooling began [s]
 * @param until when it ended [s]
 * @param heatedAfter whether it ended by heating again: then a level that was not reached breaks no limit by itself
 * @param food what cools
 */
record Coolings(
        Passages passages,
        ToDoubleFunction<Passage> from,
        ToDoubleFunction<Passage> until,
        boolean heatedAfter,
        FoodGroup food) {

    /** Judged by a rule at the warmest point. */
    Cooling by(CoolingRule rule, SafetyKnowledge safety) {
        List<CoolingLimit> limits = new ArrayList<>();
        List<LevelTime> levels = new ArrayList<>();
        for (int i = 0; i < rule.stages().size(); i++) {
            int stage = i;
            double toC = rule.stages().get(i).toC();
            limits.add(new CoolingLimit(
                    rule.stages().get(i),
                    passages.length(p -> {
                        CoolingRule.StageCheck check = check(rule, stage, p);
                        return check.reached() ? check.seconds() : Double.POSITIVE_INFINITY;
                    }),
                    passages.all(p -> kept(check(rule, stage, p)))));
            levels.add(new LevelTime(toC, passages.length(p -> {
                double at = CoolingRule.fallenTo(p.warmest(), from.applyAsDouble(p), toC);
                return at <= until.applyAsDouble(p) ? at - from.applyAsDouble(p) : Double.POSITIVE_INFINITY;
            })));
        }
        return new Cooling(
                rule.id(), limits, levels, growth(safety), limits.stream().allMatch(CoolingLimit::kept));
    }

    /**
     * Whether none of the limits of a rule was exceeded, even where its end was not reached; at the warmest point, which
     * leaves the range last, and at the coldest, which enters it first.
     */
    boolean withinLimitsOf(CoolingRule rule) {
        return passages.all(p -> within(rule, p.warmest(), p) && within(rule, p.coldest(), p));
    }

    private boolean within(CoolingRule rule, PointHistory point, Passage p) {
        return rule.check(point, from.applyAsDouble(p), until.applyAsDouble(p)).stream()
                .allMatch(check -> check.leftS() >= 0.0);
    }

    private CoolingRule.StageCheck check(CoolingRule rule, int stage, Passage p) {
        return rule.check(p.warmest(), from.applyAsDouble(p), until.applyAsDouble(p))
                .get(stage);
    }

    private boolean kept(CoolingRule.StageCheck check) {
        return heatedAfter ? check.leftS() >= 0.0 : check.kept();
    }

    /** Growth by every model of the set that is told for cooling, the most of all points of all corners. */
    List<Growth> growth(SafetyKnowledge safety) {
        return Growths.in(passages, from, until, Occasion.COOLING, food, safety);
    }
}
