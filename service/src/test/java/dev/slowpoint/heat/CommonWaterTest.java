package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Several bodies in one bath. */
class CommonWaterTest {

    private static final double CONDUCTIVITY = 0.48;
    private static final double VOLUMETRIC_HEAT = 3.6e6;
    private static final Material MATERIAL = Material.constant(CONDUCTIVITY, VOLUMETRIC_HEAT);
    private static final double FILM = 300.0;

    private static WaterBath bath(double litres, double watts, double setpointC, double startC) {
        return new WaterBath(OptionalDouble.of(startC), setpointC, litres * 0.99 * 4181.0, watts, 3.0, 0.02, 21.0, 0.0);
    }

    private static CommonWater.Guest slab(double thickness, double startC, double litres, double from, double until) {
        Slab slab = new Slab(thickness);
        double reach = 0.5 * thickness;
        double volume = litres / 1000.0;
        double rate = CONDUCTIVITY / (VOLUMETRIC_HEAT * reach * reach) / (CONDUCTIVITY / (FILM * reach) + 1.0 / 3.0);
        return new CommonWater.Guest(from, until, volume, startC, volume * VOLUMETRIC_HEAT, rate, line -> {
            List<Stage> stages = new ArrayList<>();
            for (int i = 1; i < line.times().length; i++) {
                double duration = line.times()[i] - line.times()[i - 1];
                if (duration > 0.0) {
                    stages.add(new Stage(new Surroundings(line.temperaturesC()[i - 1], FILM), duration)
                            .rampingTo(line.temperaturesC()[i]));
                }
            }
            return Conduction.run(
                    slab, MATERIAL, StartField.uniform(startC), new Programme(stages), Resolution.SERVICE);
        });
    }

    @Test
    @DisplayName("One body makes the same water as where it is solved together with it")
    void one_body_makes_the_same_water_as_where_it_is_solved_together_with_it() {
        double worst = 0.0;
        int rounds = 0;
        for (double[] c : new double[][] {
            // litres, watts, start of the water, litres of food, thickness
            {15, 1000, 57, 0.5, 0.03},
            {10, 1200, 60, 4.0, 0.03},
            {5, 300, 60, 4.0, 0.02},
            {12, 1000, 15, 1.0, 0.03},
            {20, 800, 15, 1.0, 0.05},
            {8, 100, 60, 6.0, 0.06},
            {100, 2000, 60, 30.0, 0.04}
        }) {
            WaterBath water = bath(c[0], c[1], 60.0, c[2]);
            WaterBath alone = new WaterBath(
                    water.startC(),
                    water.setpointC(),
                    water.heatCapacity(),
                    water.heaterPower(),
                    water.lossCoefficient(),
                    water.openSurface(),
                    water.roomC(),
                    c[3] / 1000.0);
            double horizon = 60_000.0;
            TemperatureHistory together = Conduction.run(
                    new Slab(c[4]),
                    MATERIAL,
                    StartField.uniform(4.0),
                    Programme.of(new Stage(new Surroundings(60.0, FILM), horizon).inBath(alone)),
                    Resolution.SERVICE);
            CommonWater.Found found =
                    CommonWater.of(water, List.of(), List.of(slab(c[4], 4.0, c[3], 0.0, 1e9)), horizon);
            PointHistory exact = together.bath().orElseThrow();
            double waterK = 0.0;
            double coreK = 0.0;
            for (double t = 0.0; t <= horizon; t += 7.0) {
                waterK = Math.max(waterK, Math.abs(found.water().atC(t) - exact.atC(t)));
                coreK = Math.max(
                        coreK,
                        Math.abs(found.histories().get(0).core().atC(t)
                                - together.core().atC(t)));
            }
            System.out.printf(
                    "accuracy: common water of one body, %.0f L %.0f W %.1f L of food: water within %.3f K, core within %.3f K,"
                            + " %d rounds, %d pieces, balance %.1e%n",
                    c[0],
                    c[1],
                    c[3],
                    waterK,
                    coreK,
                    found.rounds(),
                    found.water().times().length,
                    found.account().relativeError());
            worst = Math.max(worst, Math.max(waterK, coreK));
            rounds = Math.max(rounds, found.rounds());
        }
        assertThat(worst).isLessThan(0.05);
        assertThat(rounds).isLessThan(10);
    }

    /**
     * An independent model: two slabs cut into many layers, and the water, by explicit steps. One comes in later, and the water
     * is cooled for both in between.
     */
    @Test
    @DisplayName("Two bodies make the water and the cores of an independent model")
    void two_bodies_make_the_water_and_the_cores_of_an_independent_model() {
        double capacity = 9.0 * 0.99 * 4181.0;
        double watts = 400.0;
        double loss = 5.0;
        double roomC = 21.0;
        WaterBath bath = new WaterBath(OptionalDouble.of(60.0), 60.0, capacity, watts, loss, 0.0, roomC, 0.0);
        double[] thickness = {0.02, 0.045};
        double[] volume = {0.0025, 0.004};
        double[] enters = {1800.0, 0.0};
        double changeAt = 9000.0;
        double horizon = 20_000.0;
        CommonWater.Found found = CommonWater.of(
                bath,
                List.of(new CommonWater.Change(changeAt, 55.0, 55.0)),
                List.of(slab(thickness[0], 4.0, 2.5, enters[0], 1e9), slab(thickness[1], 4.0, 4.0, enters[1], 1e9)),
                horizon);
        int layers = 50;
        double dt = 0.05;
        double[][] t = new double[2][layers];
        for (double[] body : t) {
            Arrays.fill(body, 4.0);
        }
        double waterC = 60.0;
        double setpointC = 60.0;
        double waterK = 0.0;
        double coreK = 0.0;
        double lowestC = 60.0;
        long steps = Math.round(horizon / dt);
        for (long n = 0; n < steps; n++) {
            double now = n * dt;
            if (n == Math.round(changeAt / dt)) {
                setpointC = 55.0;
                waterC = Math.min(waterC, 55.0);
            }
            if (n % 200 == 0) {
                waterK = Math.max(waterK, Math.abs(found.water().atC(now) - waterC));
                for (int b = 0; b < 2; b++) {
                    if (now > enters[b]) {
                        coreK = Math.max(
                                coreK, Math.abs(found.histories().get(b).core().atC(now - enters[b]) - t[b][0]));
                    }
                }
            }
            double taken = 0.0;
            for (int b = 0; b < 2; b++) {
                if (now < enters[b]) {
                    continue;
                }
                double dx = 0.5 * thickness[b] / layers;
                double[] body = t[b];
                double flux = (waterC - body[layers - 1]) / (1.0 / FILM + 0.5 * dx / CONDUCTIVITY);
                double[] next = body.clone();
                for (int i = 0; i < layers; i++) {
                    double in = i + 1 < layers ? CONDUCTIVITY * (body[i + 1] - body[i]) / dx : flux;
                    double out = i > 0 ? CONDUCTIVITY * (body[i] - body[i - 1]) / dx : 0.0;
                    next[i] = body[i] + dt * (in - out) / (VOLUMETRIC_HEAT * dx);
                }
                taken += flux * volume[b] / (0.5 * thickness[b]);
                t[b] = next;
            }
            double wanted = loss * (setpointC - roomC) + capacity / 60.0 * (setpointC - waterC);
            double power = Math.min(Math.max(wanted, 0.0), watts);
            waterC += dt * (power - loss * (waterC - roomC) - taken) / capacity;
            lowestC = Math.min(lowestC, waterC);
        }
        System.out.printf(
                "accuracy: common water of two bodies, water within %.3f K, cores within %.3f K of an independent model,"
                        + " lowest %.2f C and %.2f C%n",
                waterK,
                coreK,
                lowestC,
                found.water().temperaturesC()[found.water().coldest()]);
        assertThat(lowestC).isLessThan(54.0);
        assertThat(waterK).isLessThan(0.05);
        assertThat(coreK).isLessThan(0.05);
    }

    @Test
    @DisplayName("Heat given, lost, poured in and taken up adds up to what the water gained")
    void heat_adds_up() {
        Random random = new Random(20_261_126L);
        double worst = 0.0;
        int most = 0;
        for (int i = 0; i < 40; i++) {
            double setpointC = random.nextDouble(50.0, 85.0);
            double litres = random.nextDouble(4.0, 60.0);
            WaterBath bath = bath(
                    litres,
                    random.nextDouble(50.0, 3000.0),
                    setpointC,
                    random.nextBoolean() ? setpointC : random.nextDouble(10.0, setpointC));
            List<CommonWater.Guest> guests = new ArrayList<>();
            for (int g = 0; g < 1 + random.nextInt(6); g++) {
                double enters = random.nextBoolean() ? 0.0 : random.nextDouble(1.0, 20_000.0);
                guests.add(slab(
                        random.nextDouble(0.01, 0.08),
                        random.nextDouble(0.0, 25.0),
                        random.nextDouble(0.01, 0.12) * litres,
                        enters,
                        random.nextBoolean() ? 1e9 : enters + random.nextDouble(2000.0, 30_000.0)));
            }
            List<CommonWater.Change> changes = random.nextBoolean()
                    ? List.of()
                    : List.of(new CommonWater.Change(
                            random.nextDouble(100.0, 20_000.0), setpointC - 8.0, setpointC - 8.0));
            CommonWater.Found found = CommonWater.of(bath, changes, guests, 80_000.0);
            worst = Math.max(worst, found.account().relativeError());
            most = Math.max(most, found.rounds());
        }
        System.out.printf("accuracy: heat of common water adds up to %.1e, at most %d rounds%n", worst, most);
        assertThat(worst).isLessThan(1e-3);
        assertThat(most).isLessThan(12);
    }

    @Test
    @DisplayName("More cold food never makes the water warmer nor the other food hot sooner")
    void more_cold_food_never_makes_the_water_warmer() {
        Random random = new Random(7);
        for (int i = 0; i < 12; i++) {
            WaterBath bath = bath(random.nextDouble(5.0, 30.0), random.nextDouble(100.0, 2000.0), 60.0, 60.0);
            CommonWater.Guest first = slab(random.nextDouble(0.015, 0.05), 4.0, random.nextDouble(0.2, 2.0), 0.0, 1e9);
            CommonWater.Guest more = slab(
                    random.nextDouble(0.015, 0.05),
                    4.0,
                    random.nextDouble(0.2, 2.0),
                    random.nextDouble(0.0, 3000.0),
                    1e9);
            CommonWater.Found few = CommonWater.of(bath, List.of(), List.of(first), 40_000.0);
            CommonWater.Found many = CommonWater.of(bath, List.of(), List.of(first, more), 40_000.0);
            for (double t = 0.0; t < 40_000.0; t += 97.0) {
                assertThat(many.water().atC(t)).isLessThan(few.water().atC(t) + 2.0 * CommonWater.SETTLED_K);
            }
            assertThat(many.histories().get(0).core().firstAtOrAbove(55.0))
                    .isGreaterThan(few.histories().get(0).core().firstAtOrAbove(55.0) - 2.0);
        }
    }

    @Test
    @DisplayName("A line keeps its samples within the tolerance and its jumps")
    void a_line_keeps_its_samples_and_its_jumps() {
        int n = 400;
        double[] times = new double[n + 1];
        double[] temperaturesC = new double[n + 1];
        for (int i = 0; i < n; i++) {
            times[i] = i < 200 ? 10.0 * i : 10.0 * (i - 1);
            temperaturesC[i] = i < 200 ? 60.0 - 5.0 * Math.exp(-0.02 * i) : 54.0 + Math.sin(0.02 * i);
        }
        times[n] = 10.0 * n;
        temperaturesC[n] = temperaturesC[n - 1];
        WaterLine whole = new WaterLine(times, temperaturesC);
        WaterLine line = whole.within(0.01);
        assertThat(line.times().length).isLessThan(120);
        for (int i = 0; i <= n; i++) {
            double at = i == 199 ? line.beforeC(times[i]) : line.atC(times[i]);
            assertThat(at).isCloseTo(temperaturesC[i], within(0.0101));
        }
        assertThat(line.between(500.0, 1990.0).atC(0.0)).isCloseTo(line.atC(500.0), within(1e-9));
        assertThat(line.between(500.0, 1990.0).end()).isEqualTo(1490.0);
        assertThat(line.between(500.0, 1990.0).beforeC(1490.0)).isEqualTo(line.beforeC(1990.0));
        assertThat(line.between(1990.0, 3000.0).temperaturesC()[0]).isEqualTo(line.atC(1990.0));
    }
}
