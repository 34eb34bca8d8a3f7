package dev.slowpoint.texture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.heat.ConstantPropertyReference;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Exp;
import org.junit.jupiter.api.Test;

class ArrheniusLawTest {

    private static final double NEVER = Double.POSITIVE_INFINITY;

    @Test
    void the_rate_at_the_reference_is_the_given_one() {
        assertThat(new ArrheniusLaw(0.001, 63.0, 470_000.0, 56.0, NEVER).perSecond(63.0))
                .isCloseTo(0.001, within(1e-15));
    }

    /** Geileskey et al. 1998: k0 = 7.98e43/min and 290 kJ/mol give 0.027/min at 60 C and half of it at 57.9 C. */
    @Test
    void the_rate_follows_the_pre_exponential_form() {
        ArrheniusLaw law = new ArrheniusLaw(0.027 / 60.0, 60.0, 290_000.0, 0.0, NEVER);
        for (double temperatureC : new double[] {45.0, 57.9, 80.0}) {
            double expected = 7.98e43 / 60.0 * Math.exp(-290_000.0 / (8.314 * (temperatureC + 273.15)));
            assertThat(law.perSecond(temperatureC) / expected).isCloseTo(1.0, within(0.002));
        }
    }

    /** The steepest law of the table, z = 4.2 K: its tabulated rate against the formula. */
    @Test
    void the_tabulated_rate_is_the_formula_within_a_millionth() {
        ArrheniusLaw law = new ArrheniusLaw(0.063 / 60.0, 58.0, 488_800.0, 48.0, NEVER);
        for (double temperatureC = 48.0; temperatureC < 115.0; temperatureC += 0.0371) {
            double expected = 0.063
                    / 60.0
                    * Math.exp(488_800.0 / 8.314 * (1.0 / (58.0 + 273.15) - 1.0 / (temperatureC + 273.15)));
            assertThat(law.perSecond(temperatureC) / expected).isCloseTo(1.0, within(1e-6));
        }
    }

    /** Skipnes et al. 2008: D62 = 130.1 min and z = 5.74 C of cod actin; a z further up the rate is tenfold. */
    @Test
    void a_z_value_makes_the_rate_tenfold() {
        double ea = Exp.LN_10 * ArrheniusLaw.GAS_CONSTANT * (62.0 + 273.15) * (67.74 + 273.15) / 5.74;
        ArrheniusLaw law = new ArrheniusLaw(Exp.LN_10 / (130.1 * 60.0), 62.0, ea, 0.0, NEVER);
        assertThat(law.perSecond(67.74) / law.perSecond(62.0)).isCloseTo(10.0, within(1e-9));
        assertThat(Dose.of(
                                law,
                                ConstantPropertyReference.hold(62.0, 130.1 * 60.0)
                                        .core())
                        .total())
                .isCloseTo(Exp.LN_10, within(1e-9));
    }

    @Test
    void nothing_happens_below_the_floor_and_above_the_stop() {
        ArrheniusLaw law = new ArrheniusLaw(0.001, 50.0, 60_000.0, 38.0, 58.0);
        assertThat(law.perSecond(37.999)).isZero();
        assertThat(law.perSecond(38.0)).isPositive();
        assertThat(law.perSecond(58.0)).isPositive();
        assertThat(law.perSecond(58.001)).isZero();
        assertThat(law.stops()).isTrue();
        assertThat(law.breaksC()).containsExactly(38.0, 58.0);
    }

    @Test
    void a_law_without_a_stop_goes_on() {
        ArrheniusLaw law = new ArrheniusLaw(0.001, 50.0, 60_000.0, 38.0, NEVER);
        assertThat(law.perSecond(100.0)).isGreaterThan(law.perSecond(58.0));
        assertThat(law.stops()).isFalse();
        assertThat(law.breaksC()).containsExactly(38.0);
    }

    @Test
    void laws_are_equal_by_their_constants() {
        ArrheniusLaw law = new ArrheniusLaw(0.001, 50.0, 60_000.0, 38.0, NEVER);
        assertThat(law)
                .isEqualTo(new ArrheniusLaw(0.001, 50.0, 60_000.0, 38.0, NEVER))
                .hasSameHashCodeAs(new ArrheniusLaw(0.001, 50.0, 60_000.0, 38.0, NEVER))
                .isNotEqualTo(new ArrheniusLaw(0.001, 50.0, 60_000.0, 38.0, 58.0))
                .isNotEqualTo(new ArrheniusLaw(0.001, 50.0, 61_000.0, 38.0, NEVER));
        assertThat(law.toString()).contains("60000.0");
    }

    @Test
    void impossible_constants_are_refused_by_name() {
        assertThatThrownBy(() -> new ArrheniusLaw(0.0, 50.0, 60_000.0, 38.0, NEVER))
                .hasMessageContaining("perSecondAtReference = 0.0");
        assertThatThrownBy(() -> new ArrheniusLaw(NEVER, 50.0, 60_000.0, 38.0, NEVER))
                .hasMessageContaining("perSecondAtReference");
        assertThatThrownBy(() -> new ArrheniusLaw(0.001, -274.0, 60_000.0, 38.0, NEVER))
                .hasMessageContaining("referenceC = -274.0");
        assertThatThrownBy(() -> new ArrheniusLaw(0.001, 50.0, -1.0, 38.0, NEVER))
                .hasMessageContaining("activationEnergy = -1.0");
        assertThatThrownBy(() -> new ArrheniusLaw(0.001, 50.0, Double.NaN, 38.0, NEVER))
                .hasMessageContaining("activationEnergy = NaN");
        assertThatThrownBy(() -> new ArrheniusLaw(0.001, 50.0, 60_000.0, 58.0, 38.0))
                .hasMessageContaining("floorC = 58.0");
    }
}
