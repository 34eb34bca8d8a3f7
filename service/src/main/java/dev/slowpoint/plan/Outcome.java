package dev.slowpoint.plan;

import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one step after the first bath did to the piece. Exactly those parts are there that the kind of step can have.
 *
 * @param step as asked
 * @param begins when it begins [s from food in]
 * @param ends when it ends [s from food in]; differs between corners where a step ends at a temperature or its length is
 *     inferred
 * @param coreC core temperature at its end [C]
 * @param surfaceC nominal surface temperature at its end [C]; of a slab whose faces differ the near one
 * @param holding of a {@link Step.Bath}
 * @param swap of a {@link Step.Bath} cooler than the bath before, in a vessel of known volume
 * @param interruption of a {@link Step.Unheated}
 * @param sear of a {@link Step.Sear}
 * @param cooling of a {@link Step.Chill}, and of a {@link Step.Store} into which the food went warm
 * @param keeping of a {@link Step.Store}
 * @param reheating of a {@link Step.Reheat}
 */
public record Outcome(
        Step step,
        Span begins,
        Span ends,
        Range coreC,
        double surfaceC,
        Optional<Holding> holding,
        Optional<SwapWater> swap,
        Optional<Interruption> interruption,
        Optional<SearEffect> sear,
        Optional<Cooling> cooling,
        Optional<Keeping> keeping,
        Optional<Reheating> reheating) {

    /**
     * A further bath.
     *
     * @param verdict by the rule of the plan at its end, all kill since food in counted, worst case
     * @param deliveredLog10 decimal reductions of the governing hazard by then, worst case; empty when the rule asks for
     *     nothing
     * @param belowGrowthLimit time [s] the coldest point spent below the upper growth limit of C. perfringens, most of
     *     the corners
     * @param belowHotHolding whether its setpoint lies below the hot-holding limit for food businesses
     * @param hotHoldingC that limit [C]
     * @param growth predicted growth of spore formers meanwhile, worst case; empty for a bath too hot for any
     */
    public record Holding(
            Verdict verdict,
            OptionalDouble deliveredLog10,
            double belowGrowthLimit,
            boolean belowHotHolding,
            double hotHoldingC,
            List<Growth> growth) {

        /** Copies the list. */
        public Holding {
            growth = List.copyOf(growth);
        }
    }

    /**
     * Water to exchange so that the bath drops to its new setpoint at once.
     *
     * @param volume to take out and replace by tap water [m3]
     * @param tapC temperature of the tap water [C]
     */
    public record SwapWater(double volume, double tapC) {}

    /**
     * A time without heater.
     *
     * @param off how long [s]
     * @param inferred whether that was worked out from the temperature found
     * @param waterC temperature of the water at the end [C]
     * @param growthLimitC upper growth limit of C. perfringens [C]
     * @param waterBelow time [s] of the water below it
     * @param coldestBelow the same of the coldest point of the piece
     * @param warmestBelow the same of its warmest point
     * @param rule the cooling rule that an interruption is held against
     * @param withinRule whether no part of the piece exceeded a limit of that rule in any corner; true as well where
     *     it stayed above them
     * @param growth predicted growth of spore formers while the heater was off, worst case
     * @param verdict what follows
     */
    public record Interruption(
            Span off,
            boolean inferred,
            Range waterC,
            double growthLimitC,
            Span waterBelow,
            Span coldestBelow,
            Span warmestBelow,
            String rule,
            boolean withinRule,
            List<Growth> growth,
            Resumption verdict) {

        /** Copies the list. */
        public Interruption {
            growth = List.copyOf(growth);
        }
    }

    /** What follows from an interruption. */
    public enum Resumption {
        /**
         * No part of the piece fell below the growth limit in any corner, and what was below it, as on the way up, was not so
         * for longer than the rule allows.
         */
        MAY_GO_ON,
        /** Some of it fell, or was below for longer: discard it or get a food-safety decision; resuming the clock is no answer. */
        DISCARD_OR_DECIDE
    }

    /**
     * A hot finish.
     *
     * @param riseK rise of the core from the start of the sear to its peak [K]
     * @param peaksAfter when the core peaks [s after the sear ends], nominal
     * @param peakC core at its peak [C]
     * @param wantedC core that was wanted [C]
     * @param depth below the (near) surface that was ever at or above {@code doneC} [m]
     * @param doneC level that depth is told for [C]
     * @param chillFirst a chill before the sear that keeps the core at what was wanted; empty when nothing overshoots, or no
     *     chill does it
     * @param lowerSetpointC bath [C] with which the core peaks at what was wanted, this sear included; empty when nothing
     *     overshoots, or no bath does it
     */
    public record SearEffect(
            Range riseK,
            double peaksAfter,
            Range peakC,
            double wantedC,
            Range depth,
            double doneC,
            Optional<PreChill> chillFirst,
            OptionalDouble lowerSetpointC) {}

    /**
     * A chill before a sear.
     *
     * @param seconds in ice water
     * @param mediumC of the ice water [C]
     * @param coreC core when the sear begins [C]
     * @param peakC core at its peak after the sear [C]
     */
    public record PreChill(double seconds, double mediumC, double coreC, double peakC) {}

    /**
     * Cooling after a cook, from the end of the last heating to the next one.
     *
     * @param rule id of the rule judged by
     * @param limits of the rule
     * @param levels times to temperatures of interest
     * @param growth predicted growth of spore formers meanwhile, worst case; for information, it never mends a broken limit
     * @param kept whether all limits were kept at the warmest point in all corners
     */
    public record Cooling(
            String rule, List<CoolingLimit> limits, List<LevelTime> levels, List<Growth> growth, boolean kept) {

        /** Copies the lists. */
        public Cooling {
            limits = List.copyOf(limits);
            levels = List.copyOf(levels);
            growth = List.copyOf(growth);
        }
    }

    /**
     * One limit of a cooling rule.
     *
     * @param stage the limit
     * @param seconds on its clock at the warmest point; infinity where its end was not reached
     * @param kept in all corners
     */
    public record CoolingLimit(CoolingRule.Stage stage, Span seconds, boolean kept) {}

    /**
     * When the warmest point falls to a temperature.
     *
     * @param levelC [C]
     * @param after [s from the begin of cooling]; infinity where it was not reached
     */
    public record LevelTime(double levelC, Span after) {}

    /**
     * Predicted growth by one published model.
     *
     * @param hazard what grows
     * @param model id in the parameter set
     * @param log10 decimal orders, the most of all points in all corners
     * @param lagCounted whether the lag of spores after a cook was taken off; without it this is an upper bound
     * @param nominalLog10 the most of all points, everything as stated
     * @param predicted whether any of the time lies in temperatures the model was tested at; else its numbers are an
     *     extrapolation and not to be told
     * @param untestedS longest time [s] of a point where the hazard is known to grow and the model was not tested: counted
     *     by the model's own curve up to its fitted limits, or at the rate held from its last tested temperature
     * @param testedFromC coldest temperature the model was fitted at [C]
     * @param testedToC warmest [C]
     */
    public record Growth(
            Hazard hazard,
            String model,
            double log10,
            boolean lagCounted,
            double nominalLog10,
            boolean predicted,
            double untestedS,
            double testedFromC,
            double testedToC) {}

    /**
     * How long food may be at the temperature of a store before a hazard grows or forms toxin, by rule and not by model: the
     * only statement there is where no rate was published.
     *
     * @param hazard what grows
     * @param limit id of the row
     * @param longest longest time [s]
     * @param kept whether the time asked for is no longer
     */
    public record Exposure(Hazard hazard, String limit, double longest, boolean kept) {}

    /**
     * Time in a cold store.
     *
     * @param longest time [s] that may be spent in it, earlier stores of the chain counted; zero: eat at once; infinity
     *     while frozen
     * @param asked time in it [s]
     * @param limit id of the row that sets it
     * @param hazard it is about, where it names one
     * @param basis why that row
     * @param kept whether the time asked for is no longer
     * @param growth predicted growth meanwhile of what a store does not stop, worst case; for information
     * @param exposures limits of exposure at its temperature, each held against the time asked for alone
     */
    public record Keeping(
            double longest,
            double asked,
            String limit,
            Optional<Hazard> hazard,
            KeepingBasis basis,
            boolean kept,
            List<Growth> growth,
            List<Exposure> exposures) {

        /** Copies the lists. */
        public Keeping {
            growth = List.copyOf(growth);
            exposures = List.copyOf(exposures);
        }
    }

    /** Why a store is limited as it is; a frozen one has no limit where the food is fit to keep at all. */
    public enum KeepingBasis {
        /** The cook killed the cells, and the cold holds back the spores. */
        COLD_HOLDS_SPORES,
        /** The cook was fit to serve and not to keep. */
        LISTERIA_NOT_KILLED,
        /** The cook did not make the food safe, or it was interrupted, or cooled too slowly. */
        NOT_FIT_TO_KEEP
    }

    /**
     * Warming up again.
     *
     * @param hotThroughAfter when the core is as near to the bath, or the wanted core, as asked [s from the begin of the
     *     step]
     * @param warmUp time [s] the coldest point spends in the warm-up range
     * @param growth predicted growth of spore formers meanwhile, worst case; empty for a bath too hot for any
     * @param checks what the rules ask, and whether this did it
     * @param killLog10 decimal reductions of Listeria by this step alone, worst case
     * @param killStep whether that is what a kill step needs
     */
    public record Reheating(
            Span hotThroughAfter,
            Span warmUp,
            List<Growth> growth,
            List<ReheatCheck> checks,
            double killLog10,
            boolean killStep) {

        /** Copies the lists. */
        public Reheating {
            growth = List.copyOf(growth);
            checks = List.copyOf(checks);
        }
    }

    /**
     * A rule for reheating.
     *
     * @param rule what it asks
     * @param met whether this step does it at the coldest point in all corners
     */
    public record ReheatCheck(ReheatRule rule, boolean met) {}
}
