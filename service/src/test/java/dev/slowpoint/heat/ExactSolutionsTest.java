package dev.slowpoint.heat;

import static dev.slowpoint.heat.AnalyticVectors.MEDIUM_C;
import static dev.slowpoint.heat.AnalyticVectors.START_C;
import static dev.slowpoint.heat.AnalyticVectors.STEP_K;
import static dev.slowpoint.heat.AnalyticVectors.film;
import static dev.slowpoint.heat.AnalyticVectors.seconds;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The solver at the resolution of the service against exact solutions; the goals are those of the quality table. */
class ExactSolutionsTest {

    /** Goal: the core within 0.02 K of the exact series on a step of 55 K, Bi 0.1 to 100 and infinite, Fo from 0.02. */
    private static final double GOAL_K = 0.02;

    @Test
    void core_surface_and_mean_follow_the_exact_series_for_three_bodies() {
        Map<String, TemperatureHistory> runs = new HashMap<>();
        Map<String, Double> worst = new TreeMap<>();
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("step");
        for (AnalyticVectors.Vector v : vectors) {
            TemperatureHistory history = runs.computeIfAbsent(
                    v.geometry() + v.biot(),
                    key -> Conduction.run(
                            AnalyticVectors.body(v.geometry()),
                            AnalyticVectors.material(),
                            StartField.uniform(START_C),
                            Programme.of(new Stage(new Surroundings(MEDIUM_C, film(v.biot())), seconds(3.0))),
                            Resolution.SERVICE));
            double computedC = AnalyticVectors.point(history, v.quantity()).atC(seconds(v.fourier()));
            double error = Math.abs(computedC - (MEDIUM_C - STEP_K * v.value()));
            worst.merge(v.geometry() + " " + v.quantity(), error, Math::max);
        }
        worst.forEach((name, error) -> System.out.printf("accuracy: %s within %.4f K of the series%n", name, error));
        assertThat(vectors).hasSize(990);
        assertThat(worst.values()).allSatisfy(error -> assertThat(error).isLessThan(GOAL_K));
    }

    @Test
    void milestones_of_the_core_are_within_a_thousandth_of_the_exact_times() {
        Map<String, PointHistory> runs = new HashMap<>();
        double worst = 0.0;
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("fo_at_centre_Y").stream()
                .filter(v -> Set.of("slab", "cylinder", "sphere").contains(v.geometry()))
                .toList();
        for (AnalyticVectors.Vector v : vectors) {
            PointHistory core = runs.computeIfAbsent(
                    v.geometry() + v.biot(),
                    key -> Conduction.run(
                                    AnalyticVectors.body(v.geometry()),
                                    AnalyticVectors.material(),
                                    StartField.uniform(START_C),
                                    Programme.of(new Stage(new Surroundings(MEDIUM_C, film(v.biot())), seconds(80.0))),
                                    Resolution.SERVICE)
                            .core());
            double target = MEDIUM_C - STEP_K * v.parameter("Y_centre");
            worst = Math.max(worst, Math.abs(core.firstAtOrAbove(target) / seconds(v.value()) - 1.0));
        }
        System.out.printf("accuracy: times to core temperature within %.4f %% of the series%n", 100.0 * worst);
        assertThat(vectors).hasSize(180);
        assertThat(worst).isLessThan(1e-3);
    }

    @Test
    void resting_after_heating_follows_the_exact_two_stage_solution() {
        double worst = 0.0;
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("heat_then_adiabatic_rest");
        for (AnalyticVectors.Vector v : vectors) {
            double heated = seconds(v.parameter("Fo_heat"));
            TemperatureHistory history = Conduction.run(
                    AnalyticVectors.body(v.geometry()),
                    AnalyticVectors.material(),
                    StartField.uniform(START_C),
                    Programme.of(
                            new Stage(new Surroundings(MEDIUM_C, film(v.biot())), heated),
                            new Stage(new Surroundings(20.0, 0.0), seconds(0.6))),
                    Resolution.SERVICE);
            double computedC = AnalyticVectors.point(history, v.quantity()).atC(heated + seconds(v.fourier()));
            worst = Math.max(worst, Math.abs(computedC - (MEDIUM_C - STEP_K * v.value())));
        }
        System.out.printf("accuracy: heating then resting within %.4f K of the exact solution%n", worst);
        assertThat(vectors).isNotEmpty();
        assertThat(worst).isLessThan(GOAL_K);
    }

    @Test
    void chilling_after_heating_follows_the_exact_two_stage_solution() {
        double worst = 0.0;
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("heat_then_chill");
        for (AnalyticVectors.Vector v : vectors) {
            assertThat(v.parameter("rho")).isEqualTo(-1.0); // the second medium is as cold as the start
            double heated = seconds(v.parameter("Fo_heat"));
            TemperatureHistory history = Conduction.run(
                    AnalyticVectors.body(v.geometry()),
                    AnalyticVectors.material(),
                    StartField.uniform(START_C),
                    Programme.of(
                            new Stage(new Surroundings(MEDIUM_C, film(v.biot())), heated),
                            new Stage(new Surroundings(START_C, film(v.parameter("Bi_chill"))), seconds(1.1))),
                    Resolution.SERVICE);
            double computedC = AnalyticVectors.point(history, v.quantity()).atC(heated + seconds(v.fourier()));
            worst = Math.max(worst, Math.abs(computedC - (START_C + STEP_K * v.value())));
        }
        System.out.printf("accuracy: heating then chilling within %.4f K of the exact solution%n", worst);
        assertThat(vectors).isNotEmpty();
        assertThat(worst).isLessThan(GOAL_K);
    }

    /**
     * Neumann's problem: a half space whose surface is suddenly held at another temperature, with a sharp melting point.
     * The body here is 0.3 m thick, so that its middle knows nothing yet. A front on a mesh is known to about half a
     * cell; the tolerance is half the cell at the front over its depth, plus 0.3 % for the time steps.
     */
    @Test
    void a_thawing_or_freezing_front_runs_as_neumann_found() {
        Map<String, TemperatureHistory> runs = new HashMap<>();
        List<String> misses = new ArrayList<>();
        int fronts = 0;
        double worst = 0.0;
        for (AnalyticVectors.Vector v : AnalyticVectors.ofKind("neumann")) {
            if (!v.quantity().equals("front_m") || v.parameter("t_s") < 600.0) {
                continue;
            }
            fronts++;
            String key = v.parameters().get("k_new")
                    + v.parameters().get("Ts")
                    + v.parameters().get("Ti");
            TemperatureHistory history = runs.computeIfAbsent(
                    key,
                    k -> Conduction.run(
                            new Slab(0.3),
                            sharp(v),
                            StartField.uniform(v.parameter("Ti")),
                            Programme.of(
                                    new Stage(new Surroundings(v.parameter("Ts"), Double.POSITIVE_INFINITY), 7200.0)),
                            new Resolution(60, 300, 300, 1e-3, 1e-3)));
            double front = front(history, v.parameter("t_s"), v.parameter("Tm"), v.parameter("Ts"));
            double cell = (history.position(300) - history.position(299)) * 0.15;
            double tolerance = 0.5 * cell / v.value() + 3e-3;
            double error = Math.abs(front / v.value() - 1.0);
            worst = Math.max(worst, error);
            if (error > tolerance) {
                misses.add(key + " at " + v.parameter("t_s") + " s: " + front + " m, exact " + v.value() + " m");
            }
        }
        System.out.printf("accuracy: melting fronts within %.2f %% of Neumann's solution%n", 100.0 * worst);
        assertThat(fronts).isEqualTo(18);
        assertThat(misses).isEmpty();
    }

    private static Material sharp(AnalyticVectors.Vector v) {
        boolean thawing = "thawing".equals(v.parameters().get("direction"));
        String solid = thawing ? "old" : "new";
        String liquid = thawing ? "new" : "old";
        double melting = v.parameter("Tm");
        double rho = v.parameter("rho");
        double below = melting + 60.0;
        double above = 100.0 - melting;
        double solidHeat = rho * v.parameter("c_" + solid);
        double liquidHeat = rho * v.parameter("c_" + liquid);
        double latent = rho * v.parameter("latent");
        return Material.fromKnots(
                new double[] {-solidHeat * below, 0.0, latent, latent + liquidHeat * above},
                new double[] {-60.0, melting, melting, 100.0},
                new double[] {-v.parameter("k_" + solid) * below, 0.0, 0.0, v.parameter("k_" + liquid) * above},
                melting);
    }

    /** Depth below the surface [m] at which the temperature passes the melting point. */
    private static double front(TemperatureHistory history, double time, double meltingC, double surfaceC) {
        int nodes = history.nodes();
        double[] field = new double[nodes];
        Arrays.setAll(field, node -> history.node(node).atC(time));
        double sign = Math.signum(surfaceC - meltingC);
        for (int node = nodes - 1; node > 0; node--) {
            double outer = sign * (field[node] - meltingC);
            double inner = sign * (field[node - 1] - meltingC);
            if (outer > 1e-6 && inner <= 1e-6) {
                // The melting node holds the point itself: continue the line of the two nodes outside it.
                double slope = (field[Math.min(node + 1, nodes - 1)] - field[node])
                        / (history.position(Math.min(node + 1, nodes - 1)) - history.position(node));
                double position = history.position(node) - (field[node] - meltingC) / slope;
                return (1.0 - position) * 0.15;
            }
        }
        return Double.NaN;
    }
}
