package dev.slowpoint.safety;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * All that a parameter set says about safety.
 *
 * @param rules that can be chosen
 * @param lines of kill, by id
 * @param tables of times, by id
 * @param growth models, by id
 * @param warmUpGrowth growth on the way up that a kill has to make good
 * @param heatAdaptation to slow heating
 * @param warmUp limits
 * @param cooling rules, by id
 * @param freezing rules, by id
 * @param exposure limits by hazard
 * @param coldStorage of a sealed bag
 * @param hotHolding limits, by id
 */
public record SafetyKnowledge(
        RuleBook rules,
        Map<String, InactivationLine> lines,
        Map<String, TimeTable> tables,
        Map<String, GrowthLaw> growth,
        WarmUpGrowth warmUpGrowth,
        HeatAdaptation heatAdaptation,
        WarmUpLimits warmUp,
        Map<String, CoolingRule> cooling,
        Map<String, FreezingRule> freezing,
        ExposureLimits exposure,
        ColdStorage coldStorage,
        Map<String, HotHoldingLimit> hotHolding) {

    /** Copies the maps, in their order. */
    public SafetyKnowledge {
        lines = ordered(lines);
        tables = ordered(tables);
        growth = ordered(growth);
        cooling = ordered(cooling);
        freezing = ordered(freezing);
        hotHolding = ordered(hotHolding);
    }

    /** A judge with the growth and the adaptation of this set. */
    public SafetyJudge judge() {
        return new SafetyJudge(warmUpGrowth, heatAdaptation);
    }

    private static <T> Map<String, T> ordered(Map<String, T> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
