package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** An egg in its shell. */
class EggTest {

    /**
     * Shape exponents with which a stand-in reaches a twentieth of the step when a prolate spheroid does, from an
     * axisymmetric finite-element solution (linear triangles, 24 by 24, all modes): length over width, Biot number,
     * exponent. Its sphere comes out at 1.998 to 2.000 instead of two, which is its accuracy.
     */
    private static final double[][] FINITE_ELEMENTS = {
        {1.15, 1, 1.8492},
        {1.15, 3, 1.8247},
        {1.15, 6, 1.8101},
        {1.15, 12, 1.7998},
        {1.15, 50, 1.7901},
        {1.15, 1e6, 1.7867},
        {1.3, 1, 1.7360},
        {1.3, 3, 1.6949},
        {1.3, 6, 1.6722},
        {1.3, 12, 1.6569},
        {1.3, 50, 1.6432},
        {1.3, 1e6, 1.6385},
        {1.45, 1, 1.6478},
        {1.45, 3, 1.5948},
        {1.45, 6, 1.5676},
        {1.45, 12, 1.5501},
        {1.45, 50, 1.5349},
        {1.45, 1e6, 1.5298}
    };

    /** What is left of the temperature step in the columns of the next table. */
    private static final double[] LEFT = {0.5, 0.3, 0.1, 0.05, 0.02, 0.008};

    /**
     * Times of the middle of a prolate spheroid as Fourier numbers of half its width: length over width, Biot number, then a
     * time for each of {@link #LEFT}. From a Ritz solution with 66 even polynomials (own; its sphere agrees with the exact
     * series within 1e-7, and nine terms instead of eleven within 1e-5).
     */
    private static final double[][] SPECTRAL = {
        {1.15, 1, 0.40289, 0.62114, 1.09015, 1.38605, 1.77721, 2.16838},
        {1.15, 6, 0.19727, 0.27708, 0.44537, 0.55128, 0.69126, 0.83124},
        {1.15, 50, 0.15687, 0.21711, 0.34364, 0.42319, 0.52834, 0.63347},
        {1.3, 0.5, 0.67273, 1.08191, 1.96177, 2.51689, 3.25073, 3.98456},
        {1.3, 3, 0.25385, 0.36502, 0.60060, 0.74893, 0.94497, 1.14101},
        {1.3, 12, 0.18541, 0.25816, 0.41063, 0.50639, 0.63291, 0.75942},
        {1.45, 1, 0.44058, 0.67603, 1.18031, 1.49833, 1.91874, 2.33914},
        {1.45, 6, 0.21842, 0.30760, 0.49437, 0.61155, 0.76632, 0.92106},
        {1.45, 50, 0.17436, 0.24245, 0.38446, 0.47343, 0.59090, 0.70834}
    };

    @Test
    void its_times_lie_within_its_stated_bounds_of_a_spectral_solution() {
        for (double[] row : SPECTRAL) {
            StandIn standIn = new Egg(0.04, 0.04 * row[0]).standIn(row[1]);
            RadialSeries series = new RadialSeries(standIn.shapeExponent(), row[1]);
            for (int i = 0; i < LEFT.length; i++) {
                double error = StandIn.fourierAt(series, LEFT[i]) / row[2 + i] - 1.0;
                assertThat(error)
                        .isGreaterThan(StandIn.VARYING_PROPERTIES - standIn.earlyBy())
                        .isLessThan(standIn.lateBy() - StandIn.VARYING_PROPERTIES);
            }
        }
    }

    @Test
    void its_shape_exponent_is_that_of_the_finite_element_solution() {
        for (double[] row : FINITE_ELEMENTS) {
            double exponent = new Egg(0.04, 0.04 * row[0]).standIn(row[1]).shapeExponent();
            assertThat(exponent).isCloseTo(row[2], within(0.004));
        }
    }

    @Test
    void an_egg_as_long_as_wide_is_a_ball() {
        assertThat(new Egg(0.04, 0.04).standIn(7.0).shapeExponent()).isEqualTo(2.0);
    }

    @Test
    void it_takes_longer_than_a_ball_and_less_than_a_long_cylinder_of_its_width() {
        Material egg = Material.constant(0.52, 0.52 / 1.38e-7);
        Programme bath = Programme.of(new Stage(new Surroundings(63.0, 200.0), 7200.0));
        double ball = time(new Sphere(0.043), egg, bath);
        double own = time(Egg.ofWidth(0.043), egg, bath);
        double roll = time(new LongCylinder(0.043), egg, bath);
        assertThat(own).isBetween(ball, roll);
    }

    /** A medium hen's egg of 60 g is about 43 mm wide and 57 mm long (common practice, no source). */
    @Test
    void size_follows_from_mass() {
        Egg egg = Egg.ofMass(0.060);
        assertThat(egg.width()).isCloseTo(0.043, within(0.001));
        assertThat(egg.length()).isCloseTo(0.057, within(0.001));
        assertThat(egg.volume().orElseThrow() * 1085.0).isCloseTo(0.060, within(1e-9));
    }

    @Test
    void the_shell_takes_a_little_of_the_film() {
        assertThat(Egg.ofMass(0.06).filmThroughShell(200.0)).isBetween(160.0, 190.0);
        assertThat(Egg.ofMass(0.06).filmThroughShell(Double.POSITIVE_INFINITY)).isFinite();
        assertThat(new Sphere(0.04).filmThroughShell(200.0)).isEqualTo(200.0);
    }

    @Test
    void an_egg_wider_than_long_is_refused() {
        assertThatThrownBy(() -> new Egg(0.05, 0.04)).hasMessageContaining("swapped");
    }

    private static double time(Body body, Material material, Programme programme) {
        return Conduction.run(body, material, StartField.uniform(8.0), programme, Resolution.SERVICE)
                .core()
                .firstAtOrAbove(62.0);
    }
}
