package dev.slowpoint.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a sample of possible cooks says where the corners only bound: how likely, under stated spreads of the inputs. An
 * estimate, never a guarantee: what is not sampled is listed.
 *
 * @param points cooks computed
 * @param hotThrough the core is as near to its target as asked
 * @param safe the rule is met as written; empty when the rule asks for nothing
 * @param tender the texture window opens; empty when texture is not modelled
 * @param goodUntil the texture window closes; empty when nothing known closes it
 * @param softFrom too soft for most; empty when not modelled
 * @param coreC core temperature at the time judged [C]
 * @param achievedLog10 decimal reductions of the governing hazard at the time judged; empty when nothing is asked
 * @param missed how often the rule was not met at the time judged; empty when nothing is asked
 * @param sampled inputs that were varied
 * @param notSampled what is uncertain besides, and was not
 */
public record Uncertainty(
        int points,
        Percentiles hotThrough,
        Optional<Percentiles> safe,
        Optional<Percentiles> tender,
        Optional<Percentiles> goodUntil,
        Optional<Percentiles> softFrom,
        Percentiles coreC,
        Optional<Percentiles> achievedLog10,
        Optional<Missed> missed,
        List<UncertainInput> sampled,
        List<UncertainInput> notSampled) {

    /** Name of the sequence of points. */
    public static final String SEQUENCE = "sobol-joe-kuo-2008";

    /** Seed of its digital shift. */
    public static final int SEED = 20261;

    /** Copies the lists. */
    public Uncertainty {
        sampled = List.copyOf(sampled);
        notSampled = List.copyOf(notSampled);
    }

    /**
     * Percentiles of one quantity, each an order statistic of the sample: the outer ones taken outwards.
     *
     * @param p5 at most a twentieth lies at or below; infinity stands for never
     * @param p50 half lies at or below
     * @param p95 at most a twentieth lies at or above
     * @param neverShare share of the sample in which it is never reached [-]
     */
    public record Percentiles(double p5, double p50, double p95, double neverShare) {

        /** Of values in rising order, at least twenty. */
        static Percentiles of(double[] sorted) {
            int n = sorted.length;
            if (n < 20) {
                throw new IllegalArgumentException(n + " values are too few for a twentieth of them");
            }
            int tail = n / 20;
            int never = 0;
            while (never < n && Double.isInfinite(sorted[n - 1 - never])) {
                never++;
            }
            return new Percentiles(sorted[tail - 1], sorted[(n - 1) / 2], sorted[n - tail], (double) never / n);
        }
    }

    /**
     * How often the rule is not met.
     *
     * @param points of the sample in which it was not
     * @param share that is of all; empty when there is none, because no sample proves that there never is
     * @param shareAtMost upper bound of the probability, see {@link #upperBound}
     */
    public record Missed(int points, OptionalDouble share, double shareAtMost) {

        static Missed of(int missed, int points) {
            return new Missed(
                    missed,
                    missed == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) missed / points),
                    upperBound(missed, points));
        }

        /**
         * The probability that would show so few misses only once in twenty times (Clopper and Pearson 1934, one-sided);
         * with none it is the rule of three, three over the number of points (Hanley and Lippman-Hand 1983). It is made for
         * independent points; even ones err less.
         */
        static double upperBound(int missed, int points) {
            if (missed >= points) {
                return 1.0;
            }
            double low = 0.0;
            double high = 1.0;
            for (int i = 0; i < 50; i++) {
                double middle = 0.5 * (low + high);
                if (atMost(missed, points, middle) > 0.05) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return high;
        }

        /** Probability of at most so many misses, each point missing with probability {@code p}. */
        private static double atMost(int missed, int points, double p) {
            double logOdds = StrictMath.log(p) - StrictMath.log1p(-p);
            double term = points * StrictMath.log1p(-p);
            double sum = StrictMath.exp(term);
            for (int k = 1; k <= missed; k++) {
                term += logOdds + StrictMath.log((double) (points - k + 1) / k);
                sum += StrictMath.exp(term);
            }
            return sum;
        }
    }
}
