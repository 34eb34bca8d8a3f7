package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A medium that runs from one temperature to another in a straight line, as between two readings of a log. */
class RampTest {

    private static final double DIFFUSIVITY = AnalyticVectors.CONDUCTIVITY / AnalyticVectors.VOLUMETRIC_HEAT;

    /** Exact: Duhamel's integral of the series of Carslaw and Jaeger, bath = T0 + r t. */
    @Test
    void a_body_in_a_medium_that_warms_steadily_follows_the_exact_ramp() {
        double perSecond = 0.01;
        double scale = perSecond * AnalyticVectors.REACH * AnalyticVectors.REACH / DIFFUSIVITY;
        double duration = AnalyticVectors.seconds(2.0);
        Map<String, Double> worst = new TreeMap<>();
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("bath_ramp");
        for (AnalyticVectors.Vector v : vectors) {
            Stage ramp = new Stage(medium(v, 5.0), duration).rampingTo(5.0 + perSecond * duration);
            worst.merge(
                    v.geometry() + " " + v.quantity(),
                    Math.abs(computedC(v, ramp) - 5.0 - scale * v.value()),
                    Math::max);
        }
        worst.forEach((name, error) -> System.out.printf("accuracy: ramped medium, %s within %.4f K%n", name, error));
        assertThat(vectors).hasSize(180);
        assertThat(worst.values()).allSatisfy(error -> assertThat(error).isLessThan(0.02));
    }

    /** Exact: two such ramps, one against the other, make a ramp that ends and a medium that then stays. */
    @Test
    void a_ramp_that_ends_leaves_the_exact_field_behind() {
        double rampedFor = AnalyticVectors.seconds(0.4);
        double worst = 0.0;
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("bath_ramp_then_hold").stream()
                .filter(v -> v.fourier() > 0.4)
                .toList();
        for (AnalyticVectors.Vector v : vectors) {
            assertThat(v.parameter("Fo_ramp")).isEqualTo(0.4);
            double computedC = computedC(
                    v,
                    new Stage(medium(v, 5.0), rampedFor).rampingTo(60.0),
                    new Stage(medium(v, 60.0), AnalyticVectors.seconds(2.0)));
            double error = Math.abs(computedC - 5.0 - AnalyticVectors.STEP_K * v.value());
            worst = Math.max(worst, error);
        }
        System.out.printf("accuracy: ramp then hold within %.4f K%n", worst);
        assertThat(vectors).hasSizeGreaterThan(60);
        assertThat(worst).isLessThan(0.02);
    }

    @Test
    void a_ramp_cut_into_pieces_changes_nothing_and_costs_a_step_a_piece() {
        Surroundings start = new Surroundings(10.0, 200.0);
        TemperatureHistory whole = run(new Slab(0.04), 4.0, new Stage(start, 3600.0).rampingTo(60.0));
        List<Stage> pieces = new ArrayList<>();
        for (int i = 0; i < 180; i++) {
            pieces.add(new Stage(start.at(10.0 + 50.0 * i / 180.0), 20.0).rampingTo(10.0 + 50.0 * (i + 1) / 180.0));
        }
        TemperatureHistory cut = run(new Slab(0.04), 4.0, pieces.toArray(Stage[]::new));
        for (double time = 20.0; time <= 3600.0; time += 20.0) {
            assertThat(cut.core().atC(time)).isCloseTo(whole.core().atC(time), within(0.01));
            assertThat(cut.surface().atC(time)).isCloseTo(whole.surface().atC(time), within(0.02));
        }
        assertThat(cut.samples()).isLessThan(2 * 180 + 40);
    }

    @Test
    void the_medium_runs_in_a_straight_line_and_is_told() {
        TemperatureHistory history = run(
                new Slab(0.04),
                4.0,
                new Stage(new Surroundings(20.0, 200.0), 1000.0).rampingTo(60.0),
                new Stage(new Surroundings(60.0, 200.0), 1000.0).rampingTo(50.0));
        PointHistory medium = history.bath().orElseThrow();
        assertThat(medium.atC(250.0)).isCloseTo(30.0, within(1e-6));
        assertThat(medium.atC(1000.0)).isCloseTo(60.0, within(1e-6));
        assertThat(medium.atC(1500.0)).isCloseTo(55.0, within(1e-6));
    }

    /** Frozen food goes through the other way of stepping; many small steps of the medium are an independent answer. */
    @Test
    void a_frozen_body_in_a_ramp_follows_many_small_steps_of_the_medium() {
        Material meat = Material.tabulated(-40.0, 100.0, t -> t < -1.0 ? 1.4 : 0.48, RampTest::thawing, -2.0, -1.0);
        TemperatureHistory ramped = run(meat, -18.0, new Stage(new Surroundings(10.0, 200.0), 7200.0).rampingTo(60.0));
        List<Stage> steps = new ArrayList<>();
        for (int i = 0; i < 240; i++) {
            steps.add(new Stage(new Surroundings(10.0 + 50.0 * (i + 0.5) / 240.0, 200.0), 30.0));
        }
        TemperatureHistory stepped = run(meat, -18.0, steps.toArray(Stage[]::new));
        WaterBath warming = new WaterBath(OptionalDouble.of(10.0), 1000.0, 7200.0, 50.0, 0.0, 0.0, 10.0, 0.0);
        TemperatureHistory bathed = run(meat, -18.0, new Stage(new Surroundings(10.0, 200.0), 7200.0).inBath(warming));
        for (double time = 600.0; time <= 7200.0; time += 600.0) {
            assertThat(ramped.core().atC(time)).isCloseTo(bathed.core().atC(time), within(1e-9));
            // In the minutes in which the front closes, cubic pieces between few steps overshoot.
            if (time != 4800.0) {
                assertThat(ramped.core().atC(time)).isCloseTo(stepped.core().atC(time), within(0.05));
            }
        }
    }

    private static double thawing(double temperatureC) {
        double latent = Math.min(Math.max((temperatureC + 2.0) / 1.0, 0.0), 1.0) * 2.3e8;
        return latent + (temperatureC < -2.0 ? 1.9e6 : 3.5e6) * (temperatureC + 2.0);
    }

    @Test
    void a_bath_of_its_own_does_not_ramp() {
        WaterBath bath = new WaterBath(OptionalDouble.of(20.0), 60.0, 1000.0, 100.0, 1.0, 0.0, 20.0, 0.0);
        Stage ramp = new Stage(new Surroundings(20.0, 100.0), 60.0).rampingTo(30.0);
        assertThatThrownBy(() -> ramp.inBath(bath)).hasMessageContaining("no bath of its own");
        assertThatThrownBy(() -> new Stage(new Surroundings(20.0, 100.0), 60.0).rampingTo(Double.NaN))
                .hasMessageContaining("ramps to");
    }

    private static Surroundings medium(AnalyticVectors.Vector v, double mediumC) {
        return new Surroundings(mediumC, AnalyticVectors.film(v.biot()));
    }

    private static double computedC(AnalyticVectors.Vector v, Stage... stages) {
        TemperatureHistory history = Conduction.run(
                AnalyticVectors.body(v.geometry()),
                AnalyticVectors.material(),
                StartField.uniform(5.0),
                new Programme(List.of(stages)),
                Resolution.SERVICE);
        return AnalyticVectors.point(history, v.quantity()).atC(AnalyticVectors.seconds(v.fourier()));
    }

    private static TemperatureHistory run(Body body, double startC, Stage... stages) {
        return Conduction.run(
                body,
                AnalyticVectors.material(),
                StartField.uniform(startC),
                new Programme(List.of(stages)),
                Resolution.SERVICE);
    }

    private static TemperatureHistory run(Material material, double startC, Stage... stages) {
        return Conduction.run(
                new Slab(0.04),
                material,
                StartField.uniform(startC),
                new Programme(List.of(stages)),
                Resolution.SERVICE);
    }
}
