package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Properties of any stages in any order, one temperature field carried through all of them. */
class ChainTest {

    private static final Material MEAT = lean();

    @Test
    void the_heat_account_closes_through_any_stages_of_any_body() {
        Random random = new Random(20261125);
        double worst = 0.0;
        for (int i = 0; i < 120; i++) {
            Body body = body(random, i);
            List<Stage> stages = new ArrayList<>();
            for (int s = random.nextInt(1, 7); s > 0; s--) {
                stages.add(stage(random, body instanceof Slab && i % 2 == 0));
            }
            TemperatureHistory history = Conduction.run(
                    body,
                    MEAT,
                    StartField.uniform(random.nextDouble(-25.0, 30.0)),
                    new Programme(stages),
                    Resolution.SERVICE);
            worst = Math.max(worst, history.heatBalance().relativeError());
            for (int sample = 0; sample < history.samples(); sample++) {
                assertThat(history.core().temperatureC(sample)).isFinite();
            }
        }
        System.out.printf("accuracy: heat balance through chains within %.1e%n", worst);
        assertThat(worst).isLessThan(1e-9);
    }

    /** Each stage cut in two at a random place; the middle must not notice, to the accuracy of the time steps. */
    @Test
    void cutting_stages_in_two_changes_nothing_beyond_the_tolerance() {
        Random random = new Random(5);
        for (int i = 0; i < 40; i++) {
            Body body = body(random, i);
            List<Stage> whole = new ArrayList<>();
            List<Stage> cut = new ArrayList<>();
            for (int s = 0; s < 3; s++) {
                Surroundings surroundings =
                        new Surroundings(random.nextDouble(1.0, 85.0), random.nextDouble(8.0, 400.0));
                double duration = random.nextDouble(900.0, 9000.0);
                double share = random.nextDouble(0.2, 0.8);
                whole.add(new Stage(surroundings, duration));
                cut.add(new Stage(surroundings, share * duration));
                cut.add(new Stage(surroundings, duration - share * duration));
            }
            TemperatureHistory one = run(body, whole);
            TemperatureHistory two = run(body, cut);
            for (int s = 0; s < 3; s++) {
                double at = one.stageEnd(s);
                assertThat(two.core().atC(at)).isCloseTo(one.core().atC(at), within(0.05));
                assertThat(two.surface().atC(at)).isCloseTo(one.surface().atC(at), within(0.15));
            }
        }
    }

    @Test
    void a_thicker_piece_a_cooler_bath_or_a_colder_start_is_never_sooner_for_any_body() {
        Random random = new Random(11);
        for (int i = 0; i < 60; i++) {
            Body body = body(random, i);
            double film = random.nextDouble(60.0, 400.0);
            double startC = i % 3 == 0 ? -18.0 : random.nextDouble(1.0, 15.0);
            double time = timeTo(50.0, body, startC, 60.0, film);
            // Half a percent for what the time steps leave at a thawing front.
            double reserve = 1.005;
            assertThat(timeTo(50.0, body.scaled(1.05), startC, 60.0, film)).isGreaterThan(time / reserve);
            assertThat(timeTo(50.0, body, startC, 62.0, film)).isLessThan(time * reserve);
            assertThat(timeTo(50.0, body, startC - 2.0, 60.0, film)).isGreaterThan(time / reserve);
        }
    }

    @Test
    void no_point_is_ever_warmer_than_the_warmest_or_colder_than_the_coldest_it_has_seen() {
        Random random = new Random(3);
        for (int i = 0; i < 60; i++) {
            double startC = random.nextDouble(-20.0, 20.0);
            double lowC = startC;
            double highC = startC;
            List<Stage> stages = new ArrayList<>();
            for (int s = 0; s < 4; s++) {
                double mediumC = random.nextDouble(-10.0, 95.0);
                lowC = Math.min(lowC, mediumC);
                highC = Math.max(highC, mediumC);
                stages.add(new Stage(
                        new Surroundings(mediumC, random.nextDouble(5.0, 900.0)), random.nextDouble(30.0, 9000.0)));
            }
            TemperatureHistory history = Conduction.run(
                    body(random, i), MEAT, StartField.uniform(startC), new Programme(stages), Resolution.SERVICE);
            // Next to a sudden jump of the surroundings the fourth-order mesh swings by a percent of it for a moment.
            double slackK = 0.015 * (highC - lowC);
            for (int sample = 0; sample < history.samples(); sample++) {
                assertThat(history.warmest().temperatureC(sample)).isLessThan(highC + slackK);
                assertThat(history.coldest().temperatureC(sample)).isGreaterThan(lowC - slackK);
            }
        }
    }

    private static Body body(Random random, int kind) {
        double size = random.nextDouble(0.012, 0.09);
        return switch (kind % 6) {
            case 0 -> new Slab(size);
            case 1 -> new LongCylinder(size);
            case 2 -> new Sphere(size);
            case 3 -> new Brick(size, size * random.nextDouble(1.0, 3.0), size * random.nextDouble(1.0, 5.0));
            case 4 -> new ShortCylinder(size, size * random.nextDouble(0.4, 4.0));
            default -> Egg.ofWidth(size);
        };
    }

    private static Stage stage(Random random, boolean faced) {
        double duration = random.nextDouble(20.0, 9000.0);
        Surroundings water = new Surroundings(random.nextDouble(0.0, 95.0), random.nextDouble(0.0, 400.0));
        return switch (random.nextInt(6)) {
            case 0 -> {
                Stage sear = new Stage(new Surroundings(220.0, 600.0).wetUpTo(103.0), random.nextDouble(10.0, 120.0));
                yield faced ? sear.farFace(new Surroundings(22.0, 25.0)) : sear;
            }
            case 1 -> new Stage(new Surroundings(22.0, 20.0).radiating(20_000.0).wetUpTo(100.0), 45.0);
            case 2 -> new Stage(Surroundings.insulated(), duration);
            case 3 ->
                new Stage(water, duration)
                        .inBath(new WaterBath(
                                OptionalDouble.of(random.nextDouble(10.0, 80.0)),
                                60.0,
                                4e4,
                                random.nextDouble(0.0, 1500.0),
                                5.0,
                                0.02,
                                20.0,
                                random.nextDouble(0.0, 0.003)));
            case 4 ->
                faced ? new Stage(water, duration).farFace(new Surroundings(21.0, 8.0)) : new Stage(water, duration);
            default -> new Stage(new Surroundings(random.nextDouble(-30.0, 5.0), 30.0), duration);
        };
    }

    private static TemperatureHistory run(Body body, List<Stage> stages) {
        return Conduction.run(body, MEAT, StartField.uniform(5.0), new Programme(stages), Resolution.SERVICE);
    }

    private static double timeTo(double levelC, Body body, double startC, double bathC, double film) {
        Programme bath = Programme.of(new Stage(new Surroundings(bathC, film), 200_000.0));
        return Conduction.run(body, MEAT, StartField.uniform(startC), bath, Resolution.SERVICE)
                .core()
                .firstAtOrAbove(levelC);
    }

    /** Freezes from -1 C on, three quarters water. */
    private static Material lean() {
        double freezingC = -1.0;
        return Material.tabulated(
                -45.0,
                120.0,
                t -> t < freezingC ? 0.45 + 1.1 * (1.0 - freezingC / t) : 0.45 + 0.001 * t,
                t -> t >= freezingC
                        ? 3.6e6 * (t - freezingC)
                        : 2.2e6 * (t - freezingC) - 1060.0 * 333_600.0 * 0.64 * (1.0 - freezingC / t),
                freezingC);
    }
}
