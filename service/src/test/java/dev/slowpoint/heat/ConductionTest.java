package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class ConductionTest {

    /**
     * A material like lean meat: 64 % of freezable water that begins to freeze at -0.9 C, ice share 1 - Tf/T (Raoult's
     * law as Miles uses it), latent heat 333.6 kJ/kg. Invented round numbers of the right size; only convergence and
     * balances are tested with it.
     */
    static Material meatLike() {
        double freezing = -0.9;
        double latent = 1057.0 * 333.6e3 * 0.64;
        DoubleUnaryOperator ice = t -> t < freezing ? 1.0 - freezing / t : 0.0;
        return Material.tabulated(
                -40.0,
                150.0,
                t -> 0.45 + 0.0008 * t + 1.1 * ice.applyAsDouble(t),
                t -> (t >= freezing ? 3.7e6 : 2.3e6) * (t - freezing) - latent * ice.applyAsDouble(t),
                freezing);
    }

    private static final Material MEAT = meatLike();

    @Test
    void times_converge_to_those_of_a_far_finer_run_thawed_and_frozen() {
        Programme bath = Programme.of(new Stage(new Surroundings(60.0, 200.0), 9000.0));
        double worstThawed = 0.0;
        double worstFrozen = 0.0;
        for (Body body : List.of(new Slab(0.03), new LongCylinder(0.04), new Sphere(0.05))) {
            for (double start : new double[] {5.0, -18.0}) {
                PointHistory coarse = run(body, start, bath, Resolution.SERVICE).core();
                PointHistory fine = run(body, start, bath, new Resolution(40, 200, 200, 1e-5, 1e-4))
                        .core();
                for (double level : new double[] {50.0, 55.0, 59.0, 59.5}) {
                    double error = Math.abs(coarse.firstAtOrAbove(level) / fine.firstAtOrAbove(level) - 1.0);
                    if (start > 0.0) {
                        worstThawed = Math.max(worstThawed, error);
                    } else {
                        worstFrozen = Math.max(worstFrozen, error);
                    }
                }
            }
        }
        System.out.printf(
                "accuracy: milestone times within %.4f %% thawed and %.4f %% frozen of the converged ones%n",
                100.0 * worstThawed, 100.0 * worstFrozen);
        assertThat(worstThawed).isLessThan(1e-3);
        assertThat(worstFrozen).isLessThan(3e-3);
    }

    @Test
    void the_heat_that_entered_is_the_heat_that_is_there_through_any_programme() {
        Random random = new Random(7);
        double worst = 0.0;
        for (int run = 0; run < 60; run++) {
            List<Stage> stages = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(4); i++) {
                stages.add(new Stage(
                        new Surroundings(random.nextDouble(-25.0, 90.0), random.nextDouble(0.0, 600.0)),
                        random.nextDouble(60.0, 20_000.0)));
            }
            Body body = body(random, random.nextDouble(0.01, 0.12));
            HeatBalance balance = run(body, random.nextDouble(-25.0, 30.0), new Programme(stages), Resolution.SERVICE)
                    .heatBalance();
            worst = Math.max(worst, balance.relativeError());
        }
        System.out.printf("accuracy: heat balance within %.1e%n", worst);
        assertThat(worst).isLessThan(1e-9);
    }

    @Test
    void a_thicker_piece_is_never_sooner_and_a_warmer_bath_or_start_never_later() {
        Random random = new Random(11);
        for (int i = 0; i < 40; i++) {
            double across = random.nextDouble(0.008, 0.12);
            double start = random.nextDouble(-20.0, 20.0);
            double bath = random.nextDouble(52.0, 85.0);
            double film = random.nextDouble(50.0, 800.0);
            double level = random.nextDouble(20.0, bath - 2.0);
            Body body = body(random, across);
            double base = timeTo(level, body, start, bath, film);
            // The reserve is what the accuracy tests grant.
            double reserve = 1.004;
            assertThat(timeTo(level, body.scaled(1.05), start, bath, film)).isGreaterThan(base);
            assertThat(timeTo(level, body, start, bath + 1.0, film)).isLessThan(base * reserve);
            assertThat(timeTo(level, body, start + 2.0, bath, film)).isLessThan(base * reserve);
            assertThat(timeTo(level, body, start, bath, film * 1.3)).isLessThan(base * reserve);
        }
    }

    /** Thawed to 0.1 K at any time; from frozen, where the core leaps after the thaw, to 0.3 % of the time of milestones. */
    @Test
    void splitting_a_stage_in_two_changes_nothing_beyond_the_tolerance() {
        Surroundings bath = new Surroundings(62.0, 250.0);
        for (double start : new double[] {5.0, -18.0}) {
            PointHistory whole = run(new Slab(0.04), start, Programme.of(new Stage(bath, 9000.0)), Resolution.SERVICE)
                    .core();
            PointHistory split = run(
                            new Slab(0.04),
                            start,
                            Programme.of(new Stage(bath, 2100.0), new Stage(bath, 6900.0)),
                            Resolution.SERVICE)
                    .core();
            for (double time = 2200.0; start > 0.0 && time <= 9000.0; time += 400.0) {
                assertThat(split.atC(time)).isBetween(whole.atC(time) - 0.1, whole.atC(time) + 0.1);
            }
            for (double level : new double[] {20.0, 40.0, 50.0, 55.0, 60.0, 61.5}) {
                double time = whole.firstAtOrAbove(level);
                assertThat(split.firstAtOrAbove(level)).isBetween(0.997 * time, 1.003 * time);
            }
        }
    }

    @Test
    void an_insulated_body_levels_out_at_its_mean_temperature() {
        TemperatureHistory history = Conduction.run(
                new Slab(0.02),
                Material.constant(0.5, 3.5e6),
                new StartField(10.0, 40.0),
                Programme.of(new Stage(new Surroundings(99.0, 0.0), 36_000.0)),
                Resolution.SERVICE);
        // The mean of 10 + 30 x^2 over a slab is 20.
        assertThat(history.core().atC(36_000.0)).isBetween(19.99, 20.01);
        assertThat(history.surface().atC(36_000.0)).isBetween(19.99, 20.01);
    }

    @Test
    void the_same_input_gives_the_same_bits() {
        Programme bath = Programme.of(new Stage(new Surroundings(60.0, 200.0), 9000.0));
        TemperatureHistory one = run(new Sphere(0.05), -18.0, bath, Resolution.SERVICE);
        TemperatureHistory other = run(new Sphere(0.05), -18.0, bath, Resolution.SERVICE);
        assertThat(one.samples()).isEqualTo(other.samples());
        for (int i = 0; i < one.samples(); i++) {
            for (int node = 0; node < one.nodes(); node++) {
                assertThat(one.temperatureC(i, node)).isEqualTo(other.temperatureC(i, node));
            }
        }
    }

    @Test
    void the_shares_of_a_shell_are_those_of_its_volume() {
        TemperatureHistory ball = Conduction.run(
                new Sphere(0.045),
                Material.constant(0.5, 3.5e6),
                StartField.uniform(5.0),
                Programme.of(new Stage(new Surroundings(60.0, 400.0), 60.0)),
                Resolution.SERVICE);
        double mean = 0.0;
        double[] shares = ball.shellShares(0.0, 0.5);
        for (int node = 0; node < ball.nodes(); node++) {
            mean += shares[node] * ball.position(node) * ball.position(node);
        }
        // The mean of r^2 over a ball of radius a is 3 a^2 / 5; straight lines between nodes lie a little above it.
        assertThat(mean).isBetween(0.15, 0.155);
    }

    @Test
    void impossible_sizes_and_programmes_are_refused_with_the_value() {
        assertThatThrownBy(() -> new Slab(0.0)).hasMessageContaining("thickness = 0.0 m");
        assertThatThrownBy(() -> new Sphere(Double.NaN)).hasMessageContaining("diameter");
        assertThatThrownBy(() -> new Surroundings(Double.NaN, 10.0)).hasMessageContaining("temperatureC");
        assertThatThrownBy(() -> new Surroundings(60.0, -1.0)).hasMessageContaining("filmCoefficient");
        assertThatThrownBy(() -> new Stage(new Surroundings(60.0, 1.0), -5.0)).hasMessageContaining("duration");
        assertThatThrownBy(() -> new Programme(List.of())).hasMessageContaining("at least one");
        assertThatThrownBy(() -> new StartField(Double.POSITIVE_INFINITY, 5.0)).hasMessageContaining("finite");
        assertThatThrownBy(() -> Material.constant(-0.5, 1e6)).hasMessageContaining("conductivity");
        assertThatThrownBy(() -> new Resolution(2, 40, 40, 0.1, 0.1)).hasMessageContaining("means nothing");
    }

    private static Body body(Random random, double across) {
        return switch (random.nextInt(3)) {
            case 0 -> new Slab(across);
            case 1 -> new LongCylinder(across);
            default -> new Sphere(across);
        };
    }

    private static TemperatureHistory run(Body body, double startC, Programme programme, Resolution resolution) {
        return Conduction.run(body, MEAT, StartField.uniform(startC), programme, resolution);
    }

    private static double timeTo(double levelC, Body body, double startC, double bathC, double film) {
        return run(body, startC, Programme.of(new Stage(new Surroundings(bathC, film), 200_000.0)), Resolution.SERVICE)
                .core()
                .firstAtOrAbove(levelC);
    }
}
