package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Film;
import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.plan.Uncertainty.Missed;
import dev.slowpoint.plan.Uncertainty.Percentiles;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpreadsTest {

    private static final Spreads SPREADS = Kitchen.PLANNER.knowledge().spreads();
    private static final Provenance NOBODY = new Provenance(Mark.JUDGEMENT, "for the test");

    /** Quantiles of the normal distribution as printed in every table. */
    @ParameterizedTest
    @CsvSource({
        "0.5,0",
        "0.8413447,1",
        "0.9,1.281552",
        "0.95,1.644854",
        "0.975,1.959964",
        "0.995,2.575829",
        "0.001,-3.090232"
    })
    void normal_quantiles_are_those_of_the_tables(double share, double quantile) {
        assertThat(Spreads.normal(share)).isCloseTo(quantile, within(4.5e-4));
    }

    @Test
    void a_tolerance_is_a_bound_and_all_within_is_as_likely() {
        assertThat(Spreads.within(2.0, 0.0)).isEqualTo(-2.0);
        assertThat(Spreads.within(2.0, 0.25)).isEqualTo(-1.0);
        assertThat(Spreads.within(2.0, 1.0)).isEqualTo(2.0);
    }

    /** Of a triangle the share below its mode is its part of the width, and the mean is the mean of its three corners. */
    @Test
    void the_logarithm_of_a_film_is_spread_in_a_triangle() {
        Film film = new Film("test", "test", 95, 200, 400, NOBODY);
        double below = Math.log(200.0 / 95.0) / Math.log(400.0 / 95.0);
        int n = 20_000;
        double mean = IntStream.range(0, n)
                .mapToDouble(i -> Math.log(Spreads.film(film, (i + 0.5) / n)))
                .average()
                .orElseThrow();

        assertThat(Spreads.film(film, 0.0)).isCloseTo(95.0, within(1e-9));
        assertThat(Spreads.film(film, below)).isCloseTo(200.0, within(1e-6));
        assertThat(Spreads.film(film, 1.0)).isCloseTo(400.0, within(1e-9));
        assertThat(mean).isCloseTo((Math.log(95) + Math.log(200) + Math.log(400)) / 3.0, within(1e-5));
        assertThat(Spreads.film(new Film("test", "test", 9, 9, 9, NOBODY), 0.3)).isEqualTo(9.0);
    }

    @Test
    void plants_conduct_less_predictably_than_flesh() {
        assertThat(SPREADS.conductivity(false, 0.5)).isCloseTo(1.0, within(1e-6));
        // One in seventeen below the pessimistic factor, as the parameter set says.
        assertThat(0.93 * SPREADS.conductivity(false, 1.0 / 17.0)).isCloseTo(0.85, within(0.005));
        assertThat(SPREADS.conductivity(true, 0.05)).isLessThan(SPREADS.conductivity(false, 0.05));
    }

    @Test
    void spreads_that_are_none_are_refused() {
        assertThatThrownBy(() -> new Spreads(0.0, 0.1, List.of())).hasMessageContaining("between zero and one");
        assertThatThrownBy(() -> new Spreads(0.1, 1.0, List.of())).hasMessageContaining("between zero and one");
        assertThatThrownBy(() -> new Spreads(0.1, 0.2, List.of())).hasMessageContaining("four origins");
    }

    /**
     * Upper limits at 95 percent: the rule of three (Hanley and Lippman-Hand 1983) without a miss, and limits of Clopper and
     * Pearson 1934: one in ten 0.394, five in ten 0.778, from 1 - 0.05^(1/n) for none.
     */
    @ParameterizedTest
    @CsvSource({"0,256,0.01163", "0,10,0.2589", "1,10,0.3942", "5,10,0.7776", "10,10,1", "0,1000,0.00299"})
    void the_bound_of_a_rare_miss_is_the_published_one(int missed, int points, double bound) {
        Missed found = Missed.of(missed, points);
        assertThat(found.shareAtMost()).isCloseTo(bound, within(6e-5));
        assertThat(found.share().isPresent()).isEqualTo(missed > 0);
    }

    @Test
    void without_a_miss_the_bound_is_three_over_the_number_and_never_zero() {
        for (int n : new int[] {64, 256, 1024}) {
            assertThat(Missed.of(0, n).shareAtMost()).isBetween(2.9 / n, 3.0 / n);
        }
    }

    @Test
    void percentiles_are_values_of_the_sample_taken_outwards() {
        double[] hundred = IntStream.rangeClosed(1, 100).asDoubleStream().toArray();
        assertThat(Percentiles.of(hundred)).isEqualTo(new Percentiles(5, 50, 96, 0.0));
        Arrays.fill(hundred, 90, 100, Double.POSITIVE_INFINITY);
        assertThat(Percentiles.of(hundred)).isEqualTo(new Percentiles(5, 50, Double.POSITIVE_INFINITY, 0.1));
        assertThatThrownBy(() -> Percentiles.of(new double[19])).hasMessageContaining("19");
    }
}
