package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FiguresTest {

    private static final List<DoubleUnaryOperator> ALL = List.of(
            Figures::temperatureC,
            Figures::marginK,
            Figures::marginMm,
            Figures::requiredLog10,
            Figures::achievedLog10,
            Figures::percent);

    @Test
    void temperatures_have_two_decimals() {
        assertThat(Figures.temperatureC(58.91499)).isEqualTo(58.91);
        assertThat(Figures.temperatureC(-18.006)).isEqualTo(-18.01);
        assertThat(Figures.temperatureC(60.0)).isEqualTo(60.0);
    }

    @Test
    void a_reduction_that_falls_short_never_looks_as_if_it_did_not() {
        assertThat(Figures.achievedLog10(6.499999)).isEqualTo(6.49);
        assertThat(Figures.achievedLog10(-0.0001)).isEqualTo(-0.01);
        assertThat(Figures.marginK(-0.001)).isEqualTo(-0.01);
        assertThat(Figures.marginMm(1.99)).isEqualTo(1.9);
    }

    @Test
    void what_has_been_rounded_stays_as_it_is() {
        for (double value : new double[] {6.51, 3.3, 0.29, 1.1, 57.45, 0.000047}) {
            for (DoubleUnaryOperator figure : ALL) {
                double once = figure.applyAsDouble(value);
                assertThat(figure.applyAsDouble(once)).isEqualTo(once);
            }
        }
        assertThat(Figures.achievedLog10(6.51)).isEqualTo(6.51);
    }

    @Test
    void six_digits_are_the_most() {
        assertThat(Figures.achievedLog10(123456.789)).isEqualTo(123456.0);
        assertThat(Figures.achievedLog10(1234567.0)).isEqualTo(1234560.0);
    }

    @Test
    void zero_has_no_sign() {
        assertThat(1.0 / Figures.temperatureC(-0.0)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(1.0 / Figures.temperatureC(-0.001)).isEqualTo(Double.POSITIVE_INFINITY);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void what_is_not_finite_never_leaves_the_service(double value) {
        for (DoubleUnaryOperator figure : ALL) {
            assertThatIllegalArgumentException().isThrownBy(() -> figure.applyAsDouble(value));
        }
    }
}
