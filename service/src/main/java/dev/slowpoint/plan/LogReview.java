package dev.slowpoint.plan;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.plan.CookPlan.Source;
import dev.slowpoint.safety.CoolingRule;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.Rule;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The answer to a {@link LogTask}. All times are those of the log.
 *
 * @param parameterSet version of the set used
 * @param digest of that set
 * @param verdict over all limits that decide
 * @param rule judged by, where cooking was judged
 * @param coolingRule judged by, where cooling was judged
 * @param limits each critical limit
 * @param deviations the first of what was not as it should be, in order of time
 * @param deviationCount how many there were in all
 * @param readings what was read
 * @param growth predicted growth of spore formers while the food cooled, for information
 * @param computedCore the core that was computed from the bath, where it was
 * @param notices warnings and cautions, the most severe first
 * @param curve what was read, thinned
 * @param sources what the limits rest on
 * @param effort what the solver spent
 */
public record LogReview(
        String parameterSet,
        String digest,
        LogVerdict verdict,
        Optional<Rule> rule,
        Optional<CoolingRule> coolingRule,
        List<CriticalLimit> limits,
        List<Deviation> deviations,
        int deviationCount,
        Readings readings,
        List<Outcome.Growth> growth,
        Optional<ComputedCore> computedCore,
        List<Notice> notices,
        Curve curve,
        List<Source> sources,
        CookPlan.Effort effort) {

    /** Copies the lists. */
    public LogReview {
        limits = List.copyOf(limits);
        deviations = List.copyOf(deviations);
        growth = List.copyOf(growth);
        notices = List.copyOf(notices);
        sources = List.copyOf(sources);
    }

    /** The answer to "does the log show that the rule was met?". */
    public enum LogVerdict {
        /** Every limit that decides was met, with time over which nothing was read taken on the safe side. */
        MET,
        /** At least one limit was not met, even with time over which nothing was read taken in its favour. */
        NOT_MET,
        /** The log leaves open whether a limit was met. */
        UNDECIDED,
        /** The log shows nothing that the rule asks for, or the rule asks for nothing here. */
        NOT_APPLICABLE
    }

    /** What a limit is of. */
    public enum What {
        /** Decimal reductions of a hazard at the slowest-heating point. */
        LETHALITY,
        /** Time at or above the temperature of the best row of a published table. */
        TABLE_TIME,
        /** Time in the warm-up range. */
        WARM_UP,
        /** Time below the upper limit of growth after it was once passed, before cooling began. */
        FALLEN_BACK,
        /** Lowest temperature while the food waits hot. */
        HOT_HOLDING,
        /** Time of a stage of cooling. */
        COOLING,
        /** Time until reheated. */
        REHEATING
    }

    /**
     * One critical limit.
     *
     * @param id as in the parameter set
     * @param what it is of
     * @param hazard it is about, where it is about one
     * @param fromC lower end or begin of the range it speaks of, the instrument error added [C]
     * @param toC upper end or end of that range, the instrument error added [C]
     * @param required log10, or [s], or for hot holding [C]
     * @param measured in the same unit
     * @param met whether it was
     * @param advisory told, but does not decide
     * @param provenance where the limit was read
     */
    public record CriticalLimit(
            String id,
            What what,
            Optional<Hazard> hazard,
            OptionalDouble fromC,
            OptionalDouble toC,
            double required,
            double measured,
            LogVerdict met,
            boolean advisory,
            Provenance provenance) {}

    /** What was not as it should be. */
    public enum DeviationCode {
        /** Seconds. */
        GAP,
        /** Readings. */
        NO_READING,
        /** Readings. */
        FAULT_VALUE,
        /** Readings. */
        JUMP,
        /** Readings. */
        STUCK,
        /** Log reduction shown, log reduction asked, organism. */
        LETHALITY_NOT_REACHED,
        /** Hours shown, hours allowed. */
        WARM_UP_TOO_SLOW,
        /** Lowest temperature read in C, limit in C. */
        FELL_BACK,
        /** Lowest temperature read in C, limit in C. */
        HOT_HOLDING_DROP,
        /** Begin in C, end in C, hours shown, hours allowed. */
        COOLING_TOO_SLOW,
        /** End in C. */
        COOLING_NOT_FINISHED,
        /** First temperature read in C, begin in C. */
        COOLING_BEGAN_EARLIER,
        /** Temperature in C, hours allowed. */
        REHEATING_TOO_SLOW
    }

    /**
     * One deviation.
     *
     * @param fromS when it began [s]
     * @param untilS when it ended [s]
     * @param code what it was
     * @param values numbers (already rounded) and words that its sentence names, in order
     */
    public record Deviation(double fromS, double untilS, DeviationCode code, List<Object> values) {

        /** Copies the values. */
        public Deviation {
            values = List.copyOf(values);
        }
    }

    /**
     * What was read.
     *
     * @param received number of readings
     * @param used number of readings that are believed
     * @param fromS time of the first [s]
     * @param untilS time of the last [s]
     * @param lowestC lowest that is believed [C]
     * @param highestC highest that is believed [C]
     * @param errorK how far a reading may lie from the truth [K]
     * @param longestGapS the longest time without reading that counted as read [s]
     * @param sha256 of the readings as received: for each one the time and the temperature as IEEE 754 doubles, the high
     *     byte first, and 7ff8000000000000 where there was none; in hexadecimal digits
     */
    public record Readings(
            int received,
            int used,
            double fromS,
            double untilS,
            double lowestC,
            double highestC,
            double errorK,
            double longestGapS,
            String sha256) {}

    /**
     * A core computed from a bath.
     *
     * @param highestC the highest that is certain [C]
     * @param endsC at the end of the log, the least that is certain [C]
     * @param bathWithinK how far apart the least and the most that the bath was taken for lie at most [K], its gaps aside
     */
    public record ComputedCore(double highestC, double endsC, double bathWithinK) {}

    /** Readings over time, thinned so that the lowest and the highest of each part stay. */
    public static final class Curve {

        private final double[] timesS;
        private final double[] temperaturesC;

        Curve(double[] timesS, double[] temperaturesC) {
            this.timesS = timesS;
            this.temperaturesC = temperaturesC;
        }

        /** Times [s]. */
        public double[] timesS() {
            return timesS.clone();
        }

        /** Temperatures at those times [C], of readings that are believed. */
        public double[] temperaturesC() {
            return temperaturesC.clone();
        }
    }
}
