package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SobolPointsTest {

    private static final int AXES = 8;

    /** The first points of the direction numbers of Joe and Kuo as Apache Commons Math publishes them with its own. */
    private static final double[][] PUBLISHED = {
        {0.0, 0.0, 0.0},
        {0.5, 0.5, 0.5},
        {0.75, 0.25, 0.25},
        {0.25, 0.75, 0.75},
        {0.375, 0.375, 0.625},
        {0.875, 0.875, 0.125},
        {0.625, 0.125, 0.875},
        {0.125, 0.625, 0.375},
        {0.1875, 0.3125, 0.9375},
        {0.6875, 0.8125, 0.4375}
    };

    @Test
    void the_first_points_are_the_published_ones() {
        SobolPoints sobol = SobolPoints.unshifted(3);
        for (int i = 0; i < PUBLISHED.length; i++) {
            for (int axis = 0; axis < 3; axis++) {
                assertThat(sobol.at(i, axis)).isCloseTo(PUBLISHED[i][axis], within(1e-9));
            }
        }
    }

    /** What makes a net in base two: each axis alone is cut into equal parts with one point each. */
    @ParameterizedTest
    @ValueSource(longs = {0, 20261, 7})
    void shifted_or_not_each_part_of_every_axis_holds_just_one_point(long seed) {
        SobolPoints sobol = seed == 0
                ? SobolPoints.unshifted(SobolPoints.MOST_AXES)
                : SobolPoints.shifted(SobolPoints.MOST_AXES, seed);
        for (int n : new int[] {16, 128, 256, 1024}) {
            for (int axis = 0; axis < SobolPoints.MOST_AXES; axis++) {
                int a = axis;
                assertThat(IntStream.range(0, n)
                                .map(i -> (int) (n * sobol.at(i, a)))
                                .distinct()
                                .count())
                        .as("axis %s of %s points", axis, n)
                        .isEqualTo(n);
            }
        }
    }

    /**
     * The discrepancy from the uniform distribution in the mean square (formula of Warnock 1972), against what independent
     * points have on average, (2^-d - 3^-d)/n, and against the best of twenty draws of them.
     */
    @ParameterizedTest
    @ValueSource(ints = {128, 256, 512})
    void the_points_fill_the_cube_more_evenly_than_independent_ones(int n) {
        SobolPoints sobol = SobolPoints.shifted(AXES, Uncertainty.SEED);
        double independent = (StrictMath.pow(0.5, AXES) - StrictMath.pow(1.0 / 3.0, AXES)) / n;

        double[] random = IntStream.range(0, 20)
                .mapToDouble(seed -> {
                    Random generator = new Random(seed);
                    double[][] drawn = IntStream.range(0, n)
                            .mapToObj(i -> generator.doubles(AXES).toArray())
                            .toArray(double[][]::new);
                    return squareDiscrepancy(i -> drawn[i], n);
                })
                .toArray();
        double ours = squareDiscrepancy(i -> point(sobol, i), n);

        assertThat(Arrays.stream(random).average().orElseThrow())
                .as("the formula against its expectation")
                .isCloseTo(independent, within(0.25 * independent));
        assertThat(ours)
                .as("%s points, independent ones %s", n, independent)
                .isLessThan(Arrays.stream(random).min().orElseThrow());
    }

    /** The product of Joe and Kuo 2003 (ACM TOMS 29:49): its integral is one on any number of axes. */
    @Test
    void a_known_integral_is_found_and_better_with_more_points() {
        SobolPoints sobol = SobolPoints.shifted(AXES, Uncertainty.SEED);
        double of128 = integral(sobol, 128);
        double of256 = integral(sobol, 256);
        double of4096 = integral(sobol, 4096);

        // Independent points: the standard deviation of one term is 0.71 on eight axes, so 0.044 for the mean of 256.
        assertThat(of128).isCloseTo(1.0, within(0.03));
        assertThat(of256).isCloseTo(1.0, within(0.02));
        assertThat(of4096).isCloseTo(1.0, within(0.002));
    }

    @Test
    void a_seed_gives_the_same_points_again_and_another_one_others() {
        SobolPoints one = SobolPoints.shifted(AXES, 5);
        SobolPoints same = SobolPoints.shifted(AXES, 5);
        SobolPoints other = SobolPoints.shifted(AXES, 6);
        for (int i = 0; i < 64; i++) {
            assertThat(point(one, i)).isEqualTo(point(same, i)).isNotEqualTo(point(other, i));
        }
    }

    @Test
    void no_axis_is_made_up() {
        assertThatThrownBy(() -> SobolPoints.unshifted(10)).hasMessageContaining("10 axes");
        assertThatThrownBy(() -> SobolPoints.unshifted(0)).hasMessageContaining("one to 9");
    }

    private static double[] point(SobolPoints sobol, int i) {
        return IntStream.range(0, AXES).mapToDouble(axis -> sobol.at(i, axis)).toArray();
    }

    private static double integral(SobolPoints sobol, int n) {
        double sum = 0.0;
        for (int i = 0; i < n; i++) {
            double product = 1.0;
            for (int axis = 0; axis < AXES; axis++) {
                double c = Math.cbrt(axis + 1.0);
                product *= (Math.abs(4.0 * sobol.at(i, axis) - 2.0) + c) / (1.0 + c);
            }
            sum += product;
        }
        return sum / n;
    }

    private static double squareDiscrepancy(IntFunction<double[]> points, int n) {
        double[][] x = IntStream.range(0, n).mapToObj(points).toArray(double[][]::new);
        double single = 0.0;
        double pairs = 0.0;
        for (int i = 0; i < n; i++) {
            double product = 1.0;
            for (double coordinate : x[i]) {
                product *= (1.0 - coordinate * coordinate) / 2.0;
            }
            single += product;
            for (int j = 0; j < n; j++) {
                double both = 1.0;
                for (int axis = 0; axis < AXES; axis++) {
                    both *= 1.0 - Math.max(x[i][axis], x[j][axis]);
                }
                pairs += both;
            }
        }
        return StrictMath.pow(1.0 / 3.0, AXES) - 2.0 * single / n + pairs / n / n;
    }
}
