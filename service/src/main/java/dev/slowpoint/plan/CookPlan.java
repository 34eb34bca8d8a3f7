package dev.slowpoint.plan;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.safety.CentralKinetics;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.MarginBand;
import dev.slowpoint.safety.Provision;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.TableView;
import dev.slowpoint.safety.Verdict;
import dev.slowpoint.texture.CloseLimit;
import dev.slowpoint.texture.Confidence;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * The answer to a {@link CookTask}. All times in seconds from the moment the food goes in; infinity stands for never.
 *
 * @param parameterSet version of the set used
 * @param digest of that set
 * @param setpointC temperature of the bath [C]
 * @param advice why that setpoint, when the service chose it
 * @param times the milestones
 * @param takeOut when to take it out, or why there is no such time
 * @param atServe state at the time fixed by the caller
 * @param safety is it safe, and by what margin
 * @param texture what has become of it
 * @param outcomes what each step after the bath does, in the order of the task; empty when there are none
 * @param textureAtEnd what has become of it after the last step, all cooking counted; empty when there are no steps
 * @param bath what the food does to the water, where its volume and heater are told
 * @param notices warnings and cautions, the most severe first
 * @param curve temperatures over time, if asked for
 * @param sources what the numbers rest on, if asked for
 * @param shapeError the largest share of time by which the one-dimensional body that was run may be sooner than the real
 *     one, taken to the late side by the late corner; if sources are asked for, and empty for a body without ends
 * @param otherRules how every other rule would judge, if asked for
 * @param uncertainty what a sample of possible cooks says, if asked for
 * @param effort what the solver spent
 */
public record CookPlan(
        String parameterSet,
        String digest,
        double setpointC,
        Optional<SetpointAdvice> advice,
        Times times,
        TakeOut takeOut,
        Optional<AtServe> atServe,
        Safety safety,
        Texture texture,
        List<Outcome> outcomes,
        Optional<Texture> textureAtEnd,
        Optional<BathCourse> bath,
        List<Notice> notices,
        Optional<Curve> curve,
        List<Source> sources,
        OptionalDouble shapeError,
        List<OtherRule> otherRules,
        Optional<Uncertainty> uncertainty,
        Effort effort) {

    /** Copies the lists. */
    public CookPlan {
        outcomes = List.copyOf(outcomes);
        notices = List.copyOf(notices);
        sources = List.copyOf(sources);
        otherRules = List.copyOf(otherRules);
    }

    /**
     * Milestones. The three questions are never merged.
     *
     * @param hotThrough the core is as near to its target as asked
     * @param safe the rule is met at the slowest-heating point; empty when the rule asks for nothing
     * @param tender the texture window opens; empty when texture is not modelled
     * @param goodUntil the texture window closes; empty when nothing known closes it
     * @param softFrom too soft for most; empty when not modelled
     */
    public record Times(
            Span hotThrough,
            Optional<Span> safe,
            Optional<Span> tender,
            Optional<Span> goodUntil,
            Optional<Span> softFrom) {}

    /**
     * The one answer a display shows.
     *
     * @param earliest hot through and tender by the nominal plan, and safe on the late side
     * @param best hot through and tender on the late side as well, if the window is long enough
     * @param latest the texture window closes on the early side; infinity when nothing known closes it
     * @param obstacle why no time satisfies all; the times are then meaningless
     */
    public record TakeOut(double earliest, double best, double latest, Optional<Obstacle> obstacle) {

        static TakeOut none(Obstacle obstacle) {
            double never = Double.POSITIVE_INFINITY;
            return new TakeOut(never, never, never, Optional.of(obstacle));
        }
    }

    /** Why there is no time to take it out. */
    public enum Obstacle {
        /** The rule is never met in this bath. */
        RULE_NEVER_MET,
        /** The warm-up takes longer than the rule allows. */
        WARM_UP_TOO_SLOW,
        /** The core never gets near its target. */
        NEVER_HOT_THROUGH,
        /** It never becomes tender in this bath. */
        NEVER_TENDER,
        /** It is safe only after its texture has gone. */
        SAFE_AFTER_TEXTURE,
        /** Its texture closes before it is hot through and tender. */
        TEXTURE_CLOSES_FIRST,
        /** It fell, or falls, back to where spores grow, for too long before it is safe and as wanted. */
        SPORES_GROW_FIRST
    }

    /**
     * State at the time fixed by the caller.
     *
     * @param at that time [s]
     * @param coreC nominal core temperature [C]
     * @param coreEarlyC on the fast side [C]
     * @param coreLateC on the slow side [C]
     * @param surfaceC nominal surface temperature [C]
     */
    public record AtServe(double at, double coreC, double coreEarlyC, double coreLateC, double surfaceC) {}

    /**
     * Safety at the time judged.
     *
     * @param verdict by the rule, worst case; never met where spore formers may grow in a later step, as in a
     *     time without heater
     * @param rule judged by
     * @param governing the hazard with the least margin; empty when nothing is asked
     * @param band the margin in words; empty when nothing is asked
     * @param margins how far things may change before the rule is just met
     * @param growthRange nominal time [s] at the slowest-heating point in the range where bacteria grow
     * @param warmUp worst-case time [s] in the warm-up range
     * @param warmUpLeft what is left of its limit [s]; below zero when it is exceeded
     * @param judgedAt the time judged [s]
     * @param organisms each hazard, in the order of the rule
     * @param missing how likely the governing target is missed, if margins are asked for
     * @param warmUpGrowth predicted growth of toxin formers while warming up, if margins are asked for; the limit of the
     *     warm-up decides
     */
    public record Safety(
            Verdict verdict,
            Rule rule,
            Optional<Organism> governing,
            Optional<MarginBand> band,
            Margins margins,
            double growthRange,
            double warmUp,
            double warmUpLeft,
            double judgedAt,
            List<Organism> organisms,
            Optional<Missing> missing,
            List<Outcome.Growth> warmUpGrowth) {

        /** Copies the lists. */
        public Safety {
            organisms = List.copyOf(organisms);
            warmUpGrowth = List.copyOf(warmUpGrowth);
        }
    }

    /**
     * How likely the governing target is missed because cells differ: by measured kill with its spread, in the worst case
     * of size, bath and heating that the margin is told for. Never read from the line of a rule, which holds an allowance of
     * unknown size.
     *
     * @param probability never below {@link dev.slowpoint.safety.ProbabilityMargin#LEAST_MISSING}; empty when not known
     * @param by the kinetics used
     * @param unknown why there is no probability
     */
    public record Missing(OptionalDouble probability, Optional<CentralKinetics> by, Optional<Unknown> unknown) {

        static Missing unknown(Unknown why) {
            return new Missing(OptionalDouble.empty(), Optional.empty(), Optional.of(why));
        }
    }

    /** Why there is no probability. */
    public enum Unknown {
        /** The rule asks for no kill. */
        NOTHING_ASKED,
        /** The rule names a treatment and no number of reductions. */
        WHOLE_TREATMENT,
        /** No measured kill with a spread is known for this organism in this food. */
        NO_CENTRAL_KINETICS
    }

    /**
     * One hazard.
     *
     * @param hazard which
     * @param requirement id of the requirement
     * @param requiredLog10 decimal reductions asked
     * @param achievedLog10 worst case at the time judged
     * @param nominalLog10 the same by the nominal plan, for information
     * @param marginLog10 achieved less required less growth
     * @param advisory told, but does not decide
     * @param wholeTreatment the numbers count whole treatments, not decimal reductions
     * @param growthLog10 predicted growth before the floor was reached, added to what is required
     * @param adaptedMarginLog10 the margin if slow heating made the cells tougher; empty where it was not slow, the food
     *     lets none adapt, or the margin is the same
     * @param nominalMarginLog10 the margin by the nominal plan, for information
     * @param marginRatio achieved without limit, less growth, over required
     * @param table the view of the published table, where the rule is one
     */
    public record Organism(
            Hazard hazard,
            String requirement,
            double requiredLog10,
            double achievedLog10,
            double nominalLog10,
            double marginLog10,
            boolean advisory,
            boolean wholeTreatment,
            double growthLog10,
            OptionalDouble adaptedMarginLog10,
            double nominalMarginLog10,
            double marginRatio,
            Optional<TableView> table) {

        static Organism of(Finding worst, Finding central) {
            double adapted = worst.marginIfHeatAdaptedLog10();
            return new Organism(
                    worst.requirement().hazard(),
                    worst.requirement().id(),
                    worst.requirement().target(),
                    worst.deliveredLog10(),
                    central.deliveredLog10(),
                    worst.marginLog10(),
                    worst.requirement().advisory(),
                    worst.requirement().wholeTreatment(),
                    worst.growthLog10(),
                    adapted < worst.marginLog10() ? OptionalDouble.of(adapted) : OptionalDouble.empty(),
                    central.marginLog10(),
                    worst.marginRatio(),
                    worst.table());
        }
    }

    /**
     * How another rule would judge the same cook at the same time, worst case.
     *
     * @param rule judged by
     * @param verdict by it, with the warm-up limit that counts for it
     * @param governing the hazard with the least margin; empty when nothing is asked
     * @param safeLate from when on it would be met; infinity when never, also where the warm-up has used up its limit by
     *     then, or where spore formers may grow in a later step; empty when nothing is asked
     */
    public record OtherRule(Rule rule, Verdict verdict, Optional<Governing> governing, OptionalDouble safeLate) {}

    /**
     * What decides by another rule.
     *
     * @param hazard which
     * @param basis whether the rule itself asks it
     * @param requiredLog10 decimal reductions asked
     * @param achievedLog10 worst case at the time judged
     * @param marginLog10 achieved less required less growth
     */
    public record Governing(
            Hazard hazard, Provision.Basis basis, double requiredLog10, double achievedLog10, double marginLog10) {}

    /**
     * How far things may change before the rule is just met; below zero when they must change the other way. Empty where
     * no change within reach does it.
     *
     * @param seconds time in hand
     * @param kelvin how much colder the bath may be
     * @param metres how much thicker the piece may be
     */
    public record Margins(OptionalDouble seconds, OptionalDouble kelvin, OptionalDouble metres) {

        static final Margins NONE = new Margins(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

    /**
     * Texture at the time judged.
     *
     * @param modelled whether there is a model for this food
     * @param verdict where the time lies
     * @param opens the window opens, nominal
     * @param closes the window closes, nominal; infinity when nothing known closes it
     * @param lossPercent loss of juice at the time judged [% of raw mass]
     * @param limit what closes the window
     * @param confidence in the window
     */
    public record Texture(
            boolean modelled,
            dev.slowpoint.texture.Verdict verdict,
            double opens,
            double closes,
            OptionalDouble lossPercent,
            CloseLimit limit,
            Optional<Confidence> confidence) {}

    /**
     * What the food does to the water, nominal.
     *
     * @param lowestC its lowest temperature [C]
     * @param lowestAt when that is
     * @param backAt from when on it is as near to its setpoint as the core must be to its target; infinity when it does not
     *     come back
     */
    public record BathCourse(double lowestC, double lowestAt, double backAt) {

        /** Reads a bath of {@code setpointC}, which is back within {@code withinK}. */
        static BathCourse of(PointHistory water, double setpointC, double withinK) {
            int lowest = 0;
            for (int i = 1; i < water.samples(); i++) {
                if (water.temperatureC(i) < water.temperatureC(lowest)) {
                    lowest = i;
                }
            }
            return new BathCourse(
                    water.temperatureC(lowest), water.time(lowest), water.firstAtOrAbove(setpointC - withinK, lowest));
        }
    }

    /**
     * Temperatures over time, closer together where a step begins.
     *
     * @param times [s]
     * @param coreC nominal [C]
     * @param coreEarlyC on the fast side [C]
     * @param coreLateC on the slow side [C]
     * @param surfaceC nominal [C]
     * @param meanC volume mean, nominal [C]
     * @param waterC water, nominal [C]; empty where nothing but its setpoint is known of it
     */
    public record Curve(
            double[] times,
            double[] coreC,
            double[] coreEarlyC,
            double[] coreLateC,
            double[] surfaceC,
            double[] meanC,
            Optional<double[]> waterC) {

        /** Moments of the first step, and of each further one. */
        private static final int FIRST = 61;

        private static final int FURTHER = 21;

        /**
         * Reads histories.
         *
         * @param nominal as stated
         * @param early on the fast side
         * @param late on the slow side
         * @param ends of the steps [s], rising
         */
        static Curve of(TemperatureHistory nominal, TemperatureHistory early, TemperatureHistory late, double... ends) {
            double[] times = times(ends);
            return new Curve(
                    times,
                    at(times, nominal.core()),
                    at(times, early.core()),
                    at(times, late.core()),
                    at(times, nominal.surface()),
                    at(times, nominal.mean()),
                    Optional.empty());
        }

        /** The same with the water as it is at each moment [C at s]. */
        Curve in(DoubleUnaryOperator water) {
            return new Curve(
                    times,
                    coreC,
                    coreEarlyC,
                    coreLateC,
                    surfaceC,
                    meanC,
                    Optional.of(Arrays.stream(times).map(water).toArray()));
        }

        private static double[] times(double... ends) {
            double[] times = new double[FIRST + (ends.length - 1) * FURTHER];
            int n = 0;
            double from = 0.0;
            for (int step = 0; step < ends.length; step++) {
                int parts = step == 0 ? FIRST - 1 : FURTHER;
                for (int i = step == 0 ? 0 : 1; i <= parts; i++) {
                    double share = (double) i / parts;
                    times[n++] = Math.rint(from + (ends[step] - from) * share * share);
                }
                from = ends[step];
            }
            return times;
        }

        private static double[] at(double[] times, PointHistory point) {
            return Arrays.stream(times).map(point::atC).toArray();
        }
    }

    /**
     * What a number rests on.
     *
     * @param what the number
     * @param origin where it comes from
     */
    public record Source(String what, Provenance origin) {}

    /**
     * What the solver spent.
     *
     * @param runs solver runs
     * @param steps time steps of all runs together
     */
    public record Effort(int runs, long steps) {}
}
