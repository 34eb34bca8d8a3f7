package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Cooling of large cooked joints, bodies with ends all of them: James and James 2002, Meat Refrigeration (Woodhead), tables
 * 16.4 and 16.7, core times in minutes.
 *
 * <p>The book gives neither film coefficients nor, for most, the length; both are inferred (length from the mass; 250 W/m2K
 * in ice-cold water, 25 in air of 1 to 2 m/s and 20 for rolled joints there, 10 in a chill room or a shop with still air;
 * conductivity and diffusivity of the composition times 0.93, or 0.50 W/mK and 1.35e-7 m2/s for the beef). So no row is a
 * blind test; plus or minus 15 % is the accuracy that is claimed of any time, and rows beyond it are named.
 */
class PublishedCoolingTimesTest {

    private static final double BEEF_K = 0.50;
    private static final double BEEF_ALPHA = 1.35e-7;
    private static final double HAM_K = 0.457;
    private static final double HAM_ALPHA = 1.28e-7;

    /**
     * First stages were measured earlier than the exact solution for an even start (real cores are not even), later ones
     * later; air figures depend on evaporation. What the solver misses of the exact solution is checked beside each row, so
     * that these are disagreements of the inferred film, size and start with the book.
     */
    private static final Set<String> KNOWN_DISAGREEMENTS = Set.of(
            "slab in air",
            "forequarter in water",
            "roast in water to 50",
            "roast in water from 50 to 12",
            "roast in water from 12 to 5",
            "roast in water to 5",
            "roast in air of 2 m/s",
            "second ham of 178 mm to 50",
            "ham of 203 mm to 50",
            "hotter ham of 203 mm to 50",
            "ham of 191 mm to 50",
            "bacon to 50");

    private final Set<String> apart = new TreeSet<>();

    @Test
    void joints_cool_as_the_book_says_within_fifteen_percent_or_are_named() {
        Body slab = new Brick(0.050, 0.133, 0.133);
        beef("slab in water", slab, 70, 0, 250, 70, 10, 72);
        beef("slab in air", slab, 70, 0, 25, 70, 10, 126);
        Body joint = new ShortCylinder(0.110, 0.268);
        beef("forequarter in water", joint, 70, 0, 250, 70, 10, 216);
        beef("silverside in water", joint, 70, 0, 250, 70, 10, 186);
        beef("forequarter in air", joint, 70, 0, 20, 70, 10, 306);
        beef("silverside in air", joint, 70, 0, 20, 70, 10, 294);
        Body roast = new Brick(0.130, 0.160, 0.330);
        beef("roast in water to 50", roast, 70, 1, 250, 70, 50, 90);
        beef("roast in water from 50 to 12", roast, 70, 1, 250, 50, 12, 252);
        beef("roast in water from 12 to 5", roast, 70, 1, 250, 12, 5, 168);
        beef("roast in water to 8", roast, 70, 1, 250, 70, 8, 414);
        beef("roast in water to 5", roast, 70, 1, 250, 70, 5, 510);
        beef("roast in air of 2 m/s", roast, 70, 1, 25, 70, 5, 456);
        beef("roast in air of 1 m/s", roast, 70, 1, 25, 70, 5, 618);
        Body ham = new ShortCylinder(0.178, 0.273);
        ham("ham of 178 mm to 50", ham, 69, -2, 69, 50, 228);
        ham("ham of 178 mm to 10", ham, 69, -2, 69, 10, 762);
        ham("second ham of 178 mm to 50", ham, 68, -2, 68, 50, 204);
        ham("second ham of 178 mm to 10", ham, 68, -2, 68, 10, 750);
        Body flat = new ShortCylinder(0.203, 0.199);
        ham("ham of 203 mm to 50", flat, 69, 11, 69, 50, 222);
        ham("hotter ham of 203 mm to 50", flat, 75, 11, 75, 50, 264);
        ham("ham of 191 mm to 50", new ShortCylinder(0.191, 0.210), 71, 11.5, 71, 50, 216);
        ham("bacon to 50", new ShortCylinder(0.114, 0.420), 76, 16, 76, 50, 114);
        ham("lighter bacon to 50", new ShortCylinder(0.114, 0.377), 71, 16, 71, 50, 156);
        assertThat(apart).isEqualTo(KNOWN_DISAGREEMENTS);
    }

    /** A spray of 18 C for 30 min and then air of 0 C, 3 m/s: two stages on one field (the book's table 16.5). */
    @Test
    void a_ham_log_cools_through_spray_and_air_as_the_book_says() {
        Body log = new Brick(0.120, 0.120, 0.400);
        TemperatureHistory history = Conduction.run(
                log,
                Material.constant(HAM_K, HAM_K / HAM_ALPHA),
                StartField.uniform(70.0),
                Programme.of(
                        new Stage(new Surroundings(18.0, 200.0), 1800.0),
                        new Stage(new Surroundings(0.0, 40.0), 60_000.0)),
                Resolution.SERVICE);
        double minutes = fallenTo(history, 5.0) / 60.0;
        System.out.printf("published: ham log by spray and air: %.0f min, published 402 and 390%n", minutes);
        assertThat(minutes).isBetween(0.85 * 396.0, 1.15 * 396.0);
    }

    private void beef(
            String name,
            Body body,
            double startC,
            double mediumC,
            double film,
            double fromC,
            double toC,
            double published) {
        check(name, body, BEEF_K, BEEF_ALPHA, startC, mediumC, film, fromC, toC, published);
    }

    private void ham(
            String name, Body body, double startC, double mediumC, double fromC, double toC, double published) {
        check(name, body, HAM_K, HAM_ALPHA, startC, mediumC, 10.0, fromC, toC, published);
    }

    private void check(
            String name,
            Body body,
            double conductivity,
            double diffusivity,
            double startC,
            double mediumC,
            double film,
            double fromC,
            double toC,
            double published) {
        TemperatureHistory history = Conduction.run(
                body,
                Material.constant(conductivity, conductivity / diffusivity),
                StartField.uniform(startC),
                Programme.of(new Stage(new Surroundings(mediumC, film), 40.0 * 3600.0)),
                Resolution.SERVICE);
        double begins = fromC < startC ? fallenTo(history, fromC) : 0.0;
        double minutes = (fallenTo(history, toC) - begins) / 60.0;
        double ratio = minutes / published;
        System.out.printf("published: %s: %.0f min, published %.0f (ratio %.2f)%n", name, minutes, published, ratio);
        if (ratio < 0.85 || ratio > 1.15) {
            apart.add(name);
        }
        double left = (toC - mediumC) / (startC - mediumC);
        if (left < 0.5) {
            double exact = BodiesWithEndsTest.exact(body, film * body.reach() / conductivity)
                            .fourierAt(left)
                    * body.reach()
                    * body.reach()
                    / diffusivity;
            assertThat(fallenTo(history, toC)).isBetween(0.98 * exact, 1.03 * exact);
        }
    }

    private static double fallenTo(TemperatureHistory history, double levelC) {
        PointHistory core = history.core();
        for (int i = 1; i < core.samples(); i++) {
            if (core.temperatureC(i) <= levelC) {
                return core.crossing(i - 1, levelC);
            }
        }
        return Double.POSITIVE_INFINITY;
    }
}
