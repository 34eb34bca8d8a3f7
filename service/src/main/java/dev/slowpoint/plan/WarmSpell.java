package dev.slowpoint.plan;

import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.GrowthLaw;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.SafetyKnowledge;
import java.util.Arrays;

/**
 * What became of spores that the heat had woken, in one corner: how long parts of the piece that were too hot for
 * C. perfringens were colder again, and how much may have grown. The worst point of the piece counts.
 *
 * <p>The clock of a cooling limit runs below the growth limit only: between it and the upper end of the first limit nothing
 * grows. All times that a point was colder again count together.
 *
 * @param fallen longest time [s] below the growth limit after having been above it
 * @param withinRule whether the limits of the cooling rule were kept
 * @param growthLog10 predicted growth of C. perfringens with the lag of woken spores
 * @param mostLog10 the most by any model, without lag where it has none: an upper bound
 */
record WarmSpell(double fallen, boolean withinRule, double growthLog10, double mostLog10) {

    /** Growth of C. perfringens that is still accepted (9 CFR 318.17(a)(2)). */
    private static final double ACCEPTED_LOG10 = 1.0;

    /**
     * Looks at a history until a time.
     *
     * @param levelC growth limit, the reading error added [C]
     * @param cooked whether the piece was cooked before, so that spores are awake from the start
     */
    static WarmSpell of(
            TemperatureHistory history,
            double until,
            double levelC,
            boolean cooked,
            CoolingRule rule,
            SafetyKnowledge safety) {
        double fallen = 0.0;
        boolean within = true;
        double withLag = 0.0;
        double most = 0.0;
        for (int node = 0; node < history.nodes(); node++) {
            PointHistory point = history.node(node);
            double hot = point.firstAtOrAbove(levelC);
            double from = cooked ? point.start() : hot;
            if (from >= until) {
                continue;
            }
            double colder = hot < until ? point.secondsBelow(levelC, hot, until) : 0.0;
            if (colder <= 0.0 && !cooked) {
                continue;
            }
            if (hot < until) {
                fallen = Math.max(fallen, colder);
                for (CoolingRule.Stage stage : rule.stages()) {
                    double seconds = point.secondsBelow(Math.min(stage.fromC(), levelC), hot, until)
                            - point.secondsBelow(stage.toC(), hot, until);
                    within &= seconds <= stage.longestS();
                }
            }
            for (GrowthLaw law : safety.growth().values()) {
                if (law.subject().hazard() == Hazard.C_PERFRINGENS) {
                    Dose dose = Dose.of(new Below(law, levelC), point);
                    double lag = law.subject().lagH0() / Exp.LN_10;
                    double grown = Math.max(0.0, dose.at(until) - dose.at(from) - lag);
                    most = Math.max(most, grown);
                    if (law.subject().lagH0() > 0.0) {
                        withLag = Math.max(withLag, grown);
                    }
                }
            }
        }
        return new WarmSpell(fallen, within, withLag, most);
    }

    /** Growth below the limit only; what a model without measurements says above it is no growth. */
    private record Below(RateLaw law, double levelC) implements RateLaw {

        @Override
        public double perSecond(double temperatureC) {
            return temperatureC < levelC ? law.perSecond(temperatureC) : 0.0;
        }

        @Override
        public double[] breaksC() {
            double[] breaks = Arrays.copyOf(law.breaksC(), law.breaksC().length + 1);
            breaks[breaks.length - 1] = levelC;
            Arrays.sort(breaks);
            return breaks;
        }
    }

    /** Whether a published limit is broken. */
    boolean broken() {
        return !withinRule || growthLog10 > ACCEPTED_LOG10;
    }

    /** Whether not even an upper bound of growth is beyond what is accepted. */
    boolean harmless() {
        return !broken() && (fallen <= 0.0 || mostLog10 <= ACCEPTED_LOG10);
    }
}
