package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConstantPropertyReferenceTest {

    /**
     * One-term coefficients at Bi = 1 from the table of every textbook of heat transfer (Incropera and DeWitt,
     * Fundamentals of Heat and Mass Transfer, Table 5.1): first root and coefficient at the centre.
     */
    @ParameterizedTest
    @CsvSource({"slab, 0.8603, 1.1191", "cylinder, 1.2558, 1.2071", "sphere, 1.5708, 1.2732"})
    void late_core_follows_the_tabulated_first_term(String shape, double root, double coefficient) {
        Body body = switch (shape) {
            case "slab" -> new Slab(0.02);
            case "cylinder" -> new LongCylinder(0.02);
            default -> new Sphere(0.02);
        };
        // reach 0.01 m, a = 1e-7 m2/s: Fo = t / 1000 s; h L / k = 50 * 0.01 / 0.5 = 1.
        TemperatureHistory history = new ConstantPropertyReference(body, 1e-7, 0.5, 50.0).bath(0.0, 100.0, 3000.0);
        for (double fourier : new double[] {0.6, 1.0, 2.0}) {
            double expected = 100.0 * (1.0 - coefficient * Math.exp(-root * root * fourier));
            assertThat(history.core().atC(1000.0 * fourier)).isCloseTo(expected, within(0.05));
        }
    }

    @ParameterizedTest
    @CsvSource({"0", "1", "2"})
    void energy_taken_up_is_what_the_surface_let_in(int power) {
        Body body = power == 0 ? new Slab(0.03) : power == 1 ? new LongCylinder(0.03) : new Sphere(0.03);
        TemperatureHistory history = new ConstantPropertyReference(body, 1.4e-7, 0.48, 400.0)
                .baths(5.0, new double[] {0.0, 1500.0}, new double[] {60.0, 2.0}, 4000.0);
        PointHistory surface = history.surface();
        // d(mean)/dt = (power + 1)/L * h/(rho c) * (bath - surface), rho c = k / a.
        double factor = (power + 1.0) / 0.015 * 400.0 * 1.4e-7 / 0.48;
        double in = 0.0;
        int steps = 400_000;
        for (int i = 0; i < steps; i++) {
            double t = (i + 0.5) * 4000.0 / steps;
            in += factor * ((t < 1500.0 ? 60.0 : 2.0) - surface.atC(t)) * 4000.0 / steps;
        }
        assertThat(history.mean().atC(4000.0) - 5.0).isCloseTo(in, within(0.05));
    }
}
