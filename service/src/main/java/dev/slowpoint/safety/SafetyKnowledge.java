package dev.slowpoint.safety;

import dev.slowpoint.food.FoodGroup;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that a parameter set says about safety.
 *
 * @param rules that can be chosen
 * @param lines of kill, by id
 * @param central measured kill with its spread
 * @param tables of times, by id
 * @param growth models, by id
 * @param warmUpGrowth growth on the way up that a kill has to make good
 * @param heatAdaptation to slow heating
 * @param warmUp limits of the default rule
 * @param cooling rules, by id
 * @param freezing rules, by id
 * @param exposure limits by hazard
 * @param coldStorage of a sealed bag by the default rule
 * @param hotHolding limits, by id
 * @param limits that count for a plan, by id of its rule
 */
public record SafetyKnowledge(
        RuleBook rules,
        Map<String, InactivationLine> lines,
        List<CentralKinetics> central,
        Map<String, TimeTable> tables,
        Map<String, GrowthLaw> growth,
        WarmUpGrowth warmUpGrowth,
        HeatAdaptation heatAdaptation,
        WarmUpLimits warmUp,
        Map<String, CoolingRule> cooling,
        Map<String, FreezingRule> freezing,
        ExposureLimits exposure,
        ColdStorage coldStorage,
        Map<String, HotHoldingLimit> hotHolding,
        Map<String, RuleLimits> limits) {

    /** Copies the maps, in their order; refuses a rule without limits. */
    public SafetyKnowledge {
        lines = ordered(lines);
        central = List.copyOf(central);
        tables = ordered(tables);
        growth = ordered(growth);
        cooling = ordered(cooling);
        freezing = ordered(freezing);
        hotHolding = ordered(hotHolding);
        limits = ordered(limits);
        for (Rule rule : rules.rules()) {
            if (!limits.containsKey(rule.id())) {
                throw new IllegalArgumentException("rule " + rule.id() + " has no limits");
            }
        }
    }

    /** The limits that count for a plan judged by a rule. */
    public RuleLimits limits(String rule) {
        RuleLimits found = limits.get(rule);
        if (found == null) {
            throw new IllegalArgumentException("no rule '" + rule + "'. Maybe one of " + limits.keySet() + "?");
        }
        return found;
    }

    /** The warm-up limits that count for a plan judged by a rule. */
    public WarmUpLimits warmUp(String rule) {
        return limits(rule).warmUp();
    }

    /** The cooling rule that counts for a plan judged by a rule. */
    public CoolingRule cooling(String rule) {
        return limits(rule).cooling();
    }

    /** The cold storage that counts for a plan judged by a rule. */
    public ColdStorage coldStorage(String rule) {
        return limits(rule).coldStorage();
    }

    /** The hot-holding limit that counts for a plan judged by a rule. */
    public HotHoldingLimit hotHolding(String rule) {
        return limits(rule).hotHolding();
    }

    /** A judge with the growth and the adaptation of this set. */
    public SafetyJudge judge() {
        return new SafetyJudge(warmUpGrowth, heatAdaptation);
    }

    /** Measured kill of a hazard in a food, with its spread, where any is known. */
    public Optional<CentralKinetics> central(Hazard hazard, FoodGroup food) {
        return central.stream().filter(k -> k.speaksOf(hazard, food)).findFirst();
    }

    private static <T> Map<String, T> ordered(Map<String, T> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
