package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A bath that the food cools, with a heater of limited power. */
class WaterBathTest {

    private static final double DIFFUSIVITY = AnalyticVectors.CONDUCTIVITY / AnalyticVectors.VOLUMETRIC_HEAT;

    /** Exact: a heater at its limit in a bath without losses and food is a ramp; Duhamel's integral of the series. */
    @Test
    void food_in_a_bath_that_warms_steadily_follows_the_exact_ramp() {
        double perSecond = 0.01;
        Map<String, Double> worst = new TreeMap<>();
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("bath_ramp");
        double scale = perSecond * AnalyticVectors.REACH * AnalyticVectors.REACH / DIFFUSIVITY;
        for (AnalyticVectors.Vector v : vectors) {
            WaterBath ramp =
                    new WaterBath(OptionalDouble.of(5.0), 1000.0, 1000.0, 1000.0 * perSecond, 0.0, 0.0, 5.0, 0.0);
            TemperatureHistory history = run(v, ramp, AnalyticVectors.seconds(2.0));
            double computedC = AnalyticVectors.point(history, v.quantity()).atC(AnalyticVectors.seconds(v.fourier()));
            worst.merge(v.geometry() + " " + v.quantity(), Math.abs(computedC - 5.0 - scale * v.value()), Math::max);
        }
        worst.forEach((name, error) -> System.out.printf("accuracy: ramp, %s within %.4f K%n", name, error));
        assertThat(vectors).hasSize(180);
        assertThat(worst.values()).allSatisfy(error -> assertThat(error).isLessThan(0.02));
    }

    /** Exact: an unheated bath without food recovers towards the room as an exponential. */
    @Test
    void food_in_a_bath_that_recovers_exponentially_follows_the_exact_solution() {
        double worst = 0.0;
        List<AnalyticVectors.Vector> vectors = AnalyticVectors.ofKind("bath_exponential_recovery");
        for (AnalyticVectors.Vector v : vectors) {
            double rate = v.parameter("b") * DIFFUSIVITY / (AnalyticVectors.REACH * AnalyticVectors.REACH);
            double startC = 60.0 - v.parameter("D_rel") * AnalyticVectors.STEP_K;
            WaterBath recovering =
                    new WaterBath(OptionalDouble.of(startC), 60.0, 1000.0, 0.0, 1000.0 * rate, 0.0, 60.0, 0.0);
            TemperatureHistory history = run(v, recovering, AnalyticVectors.seconds(2.0));
            double computedC = AnalyticVectors.point(history, v.quantity()).atC(AnalyticVectors.seconds(v.fourier()));
            worst = Math.max(worst, Math.abs(computedC - 5.0 - AnalyticVectors.STEP_K * v.value()));
        }
        System.out.printf("accuracy: exponential recovery within %.4f K%n", worst);
        assertThat(vectors).hasSize(36);
        assertThat(worst).isLessThan(0.02);
    }

    @Test
    void heat_given_lost_and_taken_up_by_the_food_add_up_to_what_the_water_gained() {
        Random random = new Random(41);
        for (int i = 0; i < 60; i++) {
            double startC = random.nextDouble(10.0, 65.0);
            double capacity = random.nextDouble(5.0, 80.0) * WaterBath.WATER_J_PER_KG_K;
            double load = random.nextDouble(0.0, 0.006);
            WaterBath bath = new WaterBath(
                    OptionalDouble.of(startC),
                    random.nextDouble(45.0, 90.0),
                    capacity,
                    random.nextDouble(0.0, 2000.0),
                    random.nextDouble(0.0, 12.0),
                    random.nextDouble(0.0, 0.1),
                    22.0,
                    load);
            Body body = i % 3 == 0
                    ? new Slab(random.nextDouble(0.01, 0.08))
                    : i % 3 == 1
                            ? new LongCylinder(random.nextDouble(0.02, 0.1))
                            : new Sphere(random.nextDouble(0.02, 0.1));
            WaterBath after = new WaterBath(OptionalDouble.empty(), 50.0, capacity, 0.0, 5.0, 0.0, 20.0, load);
            TemperatureHistory history = Conduction.run(
                    body,
                    AnalyticVectors.material(),
                    StartField.uniform(random.nextDouble(0.0, 25.0)),
                    Programme.of(
                            new Stage(new Surroundings(60.0, 200.0), random.nextDouble(600.0, 20_000.0)).inBath(bath),
                            new Stage(new Surroundings(60.0, 100.0), 3000.0).inBath(after)),
                    Resolution.SERVICE);
            HeatBalance balance = history.heatBalance();
            PointHistory water = history.bath().orElseThrow();
            double gained = capacity * (water.atC(history.end()) - startC);
            double given = balance.heated() - balance.lost() - load * balance.taken();
            double scale = Math.max(Math.abs(balance.heated()) + Math.abs(balance.lost()), Math.abs(gained));
            assertThat(given).isCloseTo(gained, within(1e-9 * scale));
            assertThat(balance.relativeError()).isLessThan(1e-9);
        }
    }

    /**
     * Sags of a bath at 60 C when portions at 5 C go in, from an independent simulation of slabs with a PI controller that
     * saturates at the power given (losses 8 W/K): the lowest temperature and when it is back within 0.5 K of the setpoint.
     * Portions of 30 mm: film 200; of 12 mm: 400; of 15 mm: 300 W/m2K. The controllers differ, so a sag is held to 0.3 K
     * or 15 %, and a return to 3 min.
     *
     * <p>Known disagreement: 6 kg in 20 L at 1800 W, simulated 1.5 K and 5 min. It is the third and fourth row twice over,
     * which sag 1.0 and 1.4 K, so that controller was another one.
     */
    @Test
    void the_bath_sags_and_recovers_as_an_independent_simulation_found() {
        List<String> misses = new ArrayList<>();
        sag(0.030, 200.0, 1.5, 10.0, 800.0, 0.6, Double.NaN, misses);
        sag(0.030, 200.0, 1.5, 10.0, 1800.0, 0.6, Double.NaN, misses);
        sag(0.030, 200.0, 3.0, 10.0, 1000.0, 1.0, Double.NaN, misses);
        sag(0.030, 200.0, 3.0, 10.0, 800.0, 1.4, Double.NaN, misses);
        sag(0.012, 400.0, 3.0, 10.0, 1000.0, 5.9, 12.0, misses);
        sag(0.012, 400.0, 1.5, 5.0, 800.0, 4.7, 8.0, misses);
        sag(0.015, 300.0, 2.0, 10.0, 1000.0, 2.1, 7.0, misses);
        sag(0.030, 200.0, 6.0, 20.0, 1800.0, 1.5, 5.0, misses);
        assertThat(misses).hasSize(2).allSatisfy(miss -> assertThat(miss).contains("6.0 kg"));
    }

    private static void sag(
            double thickness,
            double film,
            double load,
            double litres,
            double power,
            double sagK,
            double backMin,
            List<String> misses) {
        Material meat = Material.constant(0.48, 3.6e6);
        WaterBath bath = new WaterBath(
                OptionalDouble.of(60.0),
                60.0,
                litres * WaterBath.WATER_J_PER_KG_K,
                power,
                8.0,
                0.0,
                22.0,
                load / 1060.0);
        PointHistory water = Conduction.run(
                        new Slab(thickness),
                        meat,
                        StartField.uniform(5.0),
                        Programme.of(new Stage(new Surroundings(60.0, film), 7200.0).inBath(bath)),
                        Resolution.SERVICE)
                .bath()
                .orElseThrow();
        double lowestC = 60.0;
        double back = 0.0;
        for (double time = 0.0; time <= 7200.0; time += 5.0) {
            lowestC = Math.min(lowestC, water.atC(time));
            if (water.atC(time) < 59.5) {
                back = time;
            }
        }
        System.out.printf(
                "sag: %.0f mm, %.1f kg in %.0f L at %.0f W: %.2f K (simulated %.1f), back after %.1f min (%.0f)%n",
                1e3 * thickness, load, litres, power, 60.0 - lowestC, sagK, back / 60.0, backMin);
        if (Math.abs(60.0 - lowestC - sagK) > Math.max(0.3, 0.15 * sagK)) {
            misses.add(thickness + " m, " + load + " kg, " + power + " W sags " + (60.0 - lowestC) + ", not " + sagK);
        }
        if (!Double.isNaN(backMin) && Math.abs(back / 60.0 - backMin) > 3.0) {
            misses.add(thickness + " m, " + load + " kg is back after " + back / 60.0 + " min, not " + backMin);
        }
    }

    /** Arithmetic: mixing; the thermal balance gives 53.8 and 48.8 C for 1.5 and 3 kg (3.6 kJ/kgK) in 10 L at 60 C. */
    @Test
    void without_a_heater_bath_and_food_level_out_at_the_mixing_temperature() {
        for (double load : new double[] {1.5, 3.0}) {
            WaterBath bath =
                    new WaterBath(OptionalDouble.of(60.0), 60.0, 10.0 * 4181.0, 0.0, 0.0, 0.0, 20.0, load / 1000.0);
            TemperatureHistory history = Conduction.run(
                    new Slab(0.02),
                    Material.constant(0.48, 3.6e6),
                    StartField.uniform(5.0),
                    Programme.of(new Stage(new Surroundings(60.0, 200.0), 40_000.0).inBath(bath)),
                    Resolution.SERVICE);
            double mixedC = (41_810.0 * 60.0 + load * 3600.0 * 5.0) / (41_810.0 + load * 3600.0);
            assertThat(history.core().atC(40_000.0)).isCloseTo(mixedC, within(1e-3));
            assertThat(history.bath().orElseThrow().atC(40_000.0)).isCloseTo(mixedC, within(1e-3));
        }
    }

    /**
     * Carrier's equation as tabulated for a room of 22 C and 50 %. The table and our pressure of vapour drift apart with
     * temperature; rows that differ by more than one percent are named, none by more than two.
     */
    @Test
    void evaporation_follows_the_table_of_carriers_equation() {
        double[][] table = {{50, 980}, {55, 1290}, {60, 1670}, {65, 2120}, {75, 3350}, {85, 5120}};
        List<Double> apart = new ArrayList<>();
        for (double[] row : table) {
            double ratio = Vapour.heatFlux(row[0], 22.0) / row[1];
            assertThat(ratio).isBetween(0.98, 1.02);
            if (Math.abs(ratio - 1.0) > 0.01) {
                apart.add(row[0]);
            }
        }
        assertThat(apart).containsExactly(60.0, 75.0, 85.0);
    }

    @Test
    void a_bath_goes_on_only_where_there_was_one() {
        WaterBath goingOn = new WaterBath(OptionalDouble.empty(), 60.0, 1e4, 1000.0, 5.0, 0.0, 20.0, 0.0);
        assertThatThrownBy(() -> Conduction.run(
                        new Slab(0.02),
                        AnalyticVectors.material(),
                        StartField.uniform(5.0),
                        Programme.of(new Stage(new Surroundings(60.0, 200.0), 100.0).inBath(goingOn)),
                        Resolution.SERVICE))
                .hasMessageContaining("before");
    }

    private static TemperatureHistory run(AnalyticVectors.Vector v, WaterBath bath, double duration) {
        return Conduction.run(
                AnalyticVectors.body(v.geometry()),
                AnalyticVectors.material(),
                StartField.uniform(5.0),
                Programme.of(new Stage(new Surroundings(0.0, AnalyticVectors.film(v.biot())), duration).inBath(bath)),
                Resolution.SERVICE);
    }
}
