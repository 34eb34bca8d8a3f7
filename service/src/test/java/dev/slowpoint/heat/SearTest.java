package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Heat that strikes a face hard and short. */
class SearTest {

    /** Thick enough that its middle knows nothing of ten minutes. */
    private static final double THICKNESS = 0.1;

    /** Goal for the inside; the struck surface itself changes by up to 10 K a second, and is held to one kelvin. */
    private static final double GOAL_K = 0.1;

    /** Exact: constant flux or convection on a half space, for 60 s and then insulated (Carslaw and Jaeger's kernels). */
    @Test
    void a_sear_and_the_rest_after_it_follow_the_exact_half_space() {
        Map<String, TemperatureHistory> runs = new HashMap<>();
        Map<String, Double> worst = new TreeMap<>();
        int checked = 0;
        for (String kind : List.of(
                "sear_constant_flux",
                "sear_convection",
                "sear_flux_60s_then_adiabatic",
                "sear_convection_60s_then_adiabatic")) {
            boolean flux = kind.contains("flux");
            for (AnalyticVectors.Vector v : AnalyticVectors.ofKind(kind)) {
                TemperatureHistory history = runs.computeIfAbsent(flux + "", k -> run(flux, v));
                double depth = v.parameter("x_m");
                double computedC = atDepthC(history, depth, v.parameter("t_s"));
                worst.merge(depth == 0.0 ? "surface" : "inside", Math.abs(computedC - v.value()), Math::max);
                checked++;
            }
        }
        worst.forEach((where, error) -> System.out.printf("accuracy: sear %s within %.3f K%n", where, error));
        assertThat(checked).isEqualTo(70);
        assertThat(worst.get("inside")).isLessThan(GOAL_K);
        assertThat(worst.get("surface")).isLessThan(1.0);
    }

    @Test
    void a_wet_surface_hardly_rises_above_its_limit_and_the_heat_account_still_closes() {
        Surroundings pan = new Surroundings(230.0, 1200.0).wetUpTo(103.0);
        TemperatureHistory history = Conduction.run(
                new Slab(0.03),
                Material.constant(0.48, 3.5e6),
                StartField.uniform(54.0),
                Programme.of(new Stage(pan, 60.0), new Stage(new Surroundings(22.0, 25.0), 600.0)),
                Resolution.SERVICE);
        assertThat(history.surface().highestC()).isBetween(103.0, 105.0);
        assertThat(history.heatBalance().relativeError()).isLessThan(1e-9);
    }

    @Test
    void depth_ever_above_a_level_is_where_the_peak_falls_below_it() {
        TemperatureHistory history = Conduction.run(
                new Slab(0.04),
                Material.constant(0.48, 3.5e6),
                StartField.uniform(54.0),
                Programme.of(
                        new Stage(new Surroundings(103.0, Double.POSITIVE_INFINITY), 60.0),
                        new Stage(new Surroundings(22.0, 25.0), 600.0)),
                Resolution.SERVICE);
        double depth = history.depthEverAtOrAbove(70.0);
        assertThat(depth).isBetween(0.003, 0.006);
        assertThat(history.depthEverAtOrAbove(110.0)).isZero();
        assertThat(history.depthEverAtOrAbove(50.0)).isEqualTo(0.02);
    }

    private static TemperatureHistory run(boolean flux, AnalyticVectors.Vector v) {
        Surroundings hot = flux
                ? Surroundings.insulated().radiating(v.parameter("q_W_m2"))
                : new Surroundings(v.parameter("Tf"), v.parameter("h"));
        Material material = Material.constant(0.48, 0.48 / 1.3e-7);
        return Conduction.run(
                new Slab(THICKNESS),
                material,
                StartField.uniform(55.0),
                Programme.of(new Stage(hot, 60.0), new Stage(Surroundings.insulated(), 600.0)),
                Resolution.SERVICE);
    }

    /** By the cubic through the four nodes next to a depth. */
    private static double atDepthC(TemperatureHistory history, double depth, double time) {
        double position = 1.0 - depth / (0.5 * THICKNESS);
        int to = history.nodes() - 1;
        while (to > 3 && history.position(to - 2) > position) {
            to--;
        }
        double sum = 0.0;
        for (int i = to - 3; i <= to; i++) {
            double weight = 1.0;
            for (int j = to - 3; j <= to; j++) {
                if (j != i) {
                    weight *= (position - history.position(j)) / (history.position(i) - history.position(j));
                }
            }
            sum += weight * history.node(i).atC(time);
        }
        return sum;
    }

    @Test
    void the_same_sear_on_both_faces_together_is_the_symmetric_one() {
        Surroundings pan = new Surroundings(200.0, 600.0).wetUpTo(103.0);
        Surroundings room = new Surroundings(22.0, 25.0);
        Material meat = Material.constant(0.48, 3.5e6);
        PointHistory symmetric = Conduction.run(
                        new Slab(0.025),
                        meat,
                        StartField.uniform(54.0),
                        Programme.of(new Stage(pan, 45.0), new Stage(room, 600.0)),
                        Resolution.SERVICE)
                .core();
        PointHistory faces = Conduction.run(
                        new Slab(0.025),
                        meat,
                        StartField.uniform(54.0),
                        Programme.of(new Stage(pan, 45.0).farFace(pan), new Stage(room, 600.0).farFace(room)),
                        Resolution.SERVICE)
                .core();
        for (double time = 0.0; time <= 645.0; time += 15.0) {
            assertThat(faces.atC(time)).isCloseTo(symmetric.atC(time), within(0.05));
        }
    }
}
