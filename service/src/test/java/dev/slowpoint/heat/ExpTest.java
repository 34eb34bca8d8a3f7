package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ExpTest {

    @Test
    void it_agrees_with_the_strict_library_to_two_units_in_the_last_place() {
        Random random = new Random(20261125);
        for (int i = 0; i < 200_000; i++) {
            double x = random.nextDouble(-700.0, 700.0);
            double strict = StrictMath.exp(x);
            assertThat(Math.abs(Exp.exp(x) - strict)).as("exp(%s)", x).isLessThanOrEqualTo(2.0 * Math.ulp(strict));
        }
    }

    @Test
    void its_ends_are_those_of_the_strict_library() {
        assertThat(Exp.exp(0.0)).isEqualTo(1.0);
        assertThat(Exp.exp(-1000.0)).isZero();
        assertThat(Exp.exp(Double.NEGATIVE_INFINITY)).isZero();
        assertThat(Exp.exp(1000.0)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(Exp.exp(Double.NaN)).isNaN();
    }

    @Test
    void powers_of_ten_are_powers_of_ten() {
        assertThat(Exp.pow10(3.0)).isBetween(1000.0 - 1e-9, 1000.0 + 1e-9);
        assertThat(Exp.pow10(-2.0)).isBetween(0.01 - 1e-15, 0.01 + 1e-15);
    }
}
