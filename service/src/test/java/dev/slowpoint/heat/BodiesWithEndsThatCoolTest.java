package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Bricks and cylinders with ends that cool from 57 C to the two limits of cooling rules, 21 C and 5 C (FDA Food Code 2022,
 * 3-501.14, in whole degrees Celsius), against the exact product solution (Newman 1936; Carslaw and Jaeger 1959, section
 * 1.15) with constant properties. Errors are printed in percent of time, early below zero.
 */
class BodiesWithEndsThatCoolTest {

    private static final double K = 0.48;
    private static final double HEAT = 3.5e6;
    private static final Material MEAT = Material.constant(K, HEAT);
    private static final double START_C = 57.0;
    private static final double[] LEVELS_C = {21.0, 5.0};

    /** Still air of a fridge, a blast of air, a bowl of water, ice water that is stirred, and more than any bath [W/m2K]. */
    private static final double[] FILMS = {8.0, 25.0, 100.0, 300.0, 2000.0};

    @Test
    void a_chill_on_its_own_takes_the_exact_time_and_early_and_late_enclose_it() {
        double earliest = 0.0;
        double latest = 0.0;
        for (Body body : bodies()) {
            for (double film : FILMS) {
                for (double mediumC : new double[] {1.0, 3.0}) {
                    Programme chill = Programme.of(new Stage(new Surroundings(mediumC, film), 400 * 3600.0));
                    StandIn standIn = Conduction.standIn(body, MEAT, StartField.uniform(START_C), chill);
                    double[] nominal = errors(body, standIn, chill, 0.0, film, mediumC);
                    double[] early = errors(body, standIn.early(), chill, 0.0, film, mediumC);
                    double[] late = errors(body, standIn.late(), chill, 0.0, film, mediumC);
                    System.out.printf(
                            "chill: %s, %.0f W/m2K, %.0f C, to 21 and 5 C: %.1f %.1f; early %.1f %.1f; late %.1f %.1f%n",
                            body, film, mediumC, nominal[0], nominal[1], early[0], early[1], late[0], late[1]);
                    for (int i = 0; i < 2; i++) {
                        earliest = Math.min(earliest, nominal[i]);
                        latest = Math.max(latest, nominal[i]);
                        assertThat(early[i]).isNegative();
                        assertThat(late[i]).isPositive();
                    }
                }
            }
        }
        System.out.printf("chill: in all %.1f to +%.1f %%%n", earliest, latest);
        assertThat(earliest).isGreaterThan(-2.0);
        assertThat(latest).isLessThan(3.0);
    }

    /** One stand-in is carried from a bath into a colder medium with another film: where rules look it is late or exact. */
    @Test
    void a_piece_that_cools_after_a_bath_is_not_early_at_either_limit() {
        double earliest = 0.0;
        double latest = 0.0;
        for (Body body : bodies()) {
            for (double bathFilm : new double[] {100.0, 300.0}) {
                for (double film : FILMS) {
                    Programme cooked = new Programme(List.of(
                            new Stage(new Surroundings(START_C, bathFilm), 60.0),
                            new Stage(new Surroundings(1.0, film), 400 * 3600.0)));
                    StandIn standIn = Conduction.standIn(body, MEAT, StartField.uniform(START_C), cooked);
                    double[] nominal = errors(body, standIn, cooked, 60.0, film, 1.0);
                    double[] late = errors(body, standIn.late(), cooked, 60.0, film, 1.0);
                    System.out.printf(
                            "chill: %s, after %.0f in %.0f W/m2K, to 21 and 5 C: %.1f %.1f; late %.1f %.1f%n",
                            body, bathFilm, film, nominal[0], nominal[1], late[0], late[1]);
                    for (int i = 0; i < 2; i++) {
                        earliest = Math.min(earliest, nominal[i]);
                        latest = Math.max(latest, nominal[i]);
                        assertThat(late[i]).isPositive();
                    }
                }
            }
        }
        System.out.printf("chill: after a bath in all %.1f to +%.1f %%%n", earliest, latest);
        assertThat(earliest).isGreaterThan(-2.0);
    }

    /** Air of a fridge is warmer than ice water, and yet the piece that comes from there, still warm, goes on to cool. */
    @Test
    void a_fridge_after_ice_water_counts_as_cooling() {
        Body body = new Brick(0.05, 0.08, 0.12);
        StandIn standIn = body.standIn(300.0 * body.reach() / K);
        Stage fridge = new Stage(new Surroundings(4.0, 8.0), 36_000.0);
        double film =
                new Films(body, standIn, K, START_C).of(fridge).surroundings().filmCoefficient();
        double biot = 8.0 * body.reach() / K;
        double atFirstLimit = body.equalTimeBiot(standIn, biot, StandIn.COOLING_EXACT_AT);
        assertThat(film).isEqualTo(atFirstLimit * K / standIn.reach());
        assertThat(atFirstLimit).isLessThan(body.equalTimeBiot(standIn, biot, StandIn.EXACT_AT));
    }

    private static List<Body> bodies() {
        List<Body> bodies = new ArrayList<>();
        double[][] bricks = {{1, 1}, {1, 4}, {1.5, 2}, {1.6, 2.4}, {2, 3}, {3, 5}, {5, 8}};
        for (double[] b : bricks) {
            bodies.add(new Brick(0.05, 0.05 * b[0], 0.05 * b[1]));
        }
        for (double ratio : new double[] {0.25, 0.5, 1, 1.5, 2, 4}) {
            bodies.add(new ShortCylinder(0.05, 0.05 * ratio));
        }
        return bodies;
    }

    private static double[] errors(
            Body body, StandIn standIn, Programme programme, double begin, double film, double mediumC) {
        PointHistory core = Conduction.run(
                        body, standIn, MEAT, StartField.uniform(START_C), programme, Resolution.SERVICE)
                .core();
        ProductSolution exact = BodiesWithEndsTest.exact(body, film * body.reach() / K);
        double[] errors = new double[LEVELS_C.length];
        for (int i = 0; i < errors.length; i++) {
            double left = (LEVELS_C[i] - mediumC) / (START_C - mediumC);
            double time = exact.fourierAt(left) * body.reach() * body.reach() * HEAT / K;
            errors[i] = 100.0 * ((fallenTo(core, LEVELS_C[i]) - begin) / time - 1.0);
        }
        return errors;
    }

    private static double fallenTo(PointHistory core, double levelC) {
        for (int i = 1; i < core.samples(); i++) {
            if (core.temperatureC(i) <= levelC) {
                return core.crossing(i - 1, levelC);
            }
        }
        return Double.POSITIVE_INFINITY;
    }
}
