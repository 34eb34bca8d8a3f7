package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Heating and cooling times and temperatures from books and papers, each row with its source, its tolerance and why it is
 * that wide. Where the film coefficient or the thickness was not published the row says what was assumed. Bodies with ends
 * and frozen food are checked elsewhere.
 */
class PublishedHeatingTimesTest {

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/heat/published-heating-times.csv", useHeadersInDisplayName = false, numLinesToSkip = 1)
    void the_solver_gives_the_published_figure(
            String id,
            String shape,
            double acrossMm,
            double startC,
            double mediumC,
            double film,
            double conductivity,
            double diffusivity,
            String criterion,
            double level,
            double published,
            Double series,
            double tolerance,
            String toleranceReason,
            String mark,
            String source,
            String result) {
        Body body = switch (shape) {
            case "slab" -> new Slab(acrossMm / 1000.0);
            case "cylinder" -> new LongCylinder(acrossMm / 1000.0);
            case "sphere" -> new Sphere(acrossMm / 1000.0);
            default -> throw new IllegalArgumentException(shape);
        };
        TemperatureHistory history = Conduction.run(
                body,
                Material.constant(conductivity, conductivity / diffusivity),
                StartField.uniform(startC),
                Programme.of(new Stage(new Surroundings(mediumC, film), 40.0 * 3600.0)),
                Resolution.YARDSTICK);
        double computed = switch (criterion) {
            case "core_after_min" -> history.core().atC(level * 60.0);
            case "core_min", "core_min_at_most" -> minutesTo(history.core(), level);
            case "surface_min" -> minutesTo(history.surface(), level);
            case "surface_5_log_min" ->
                Dose.of(new Listeria(), history.surface()).timeOf(5.0) / 60.0;
            default -> throw new IllegalArgumentException(criterion);
        };
        System.out.printf(
                "published: %s: computed %.2f, published %.2f (%s, %s): %s%n",
                id, computed, published, mark, source, result);
        if (series != null) {
            // Our own recomputation by the exact series of the same problem, to its printed digits or half a percent.
            assertThat(computed).isCloseTo(series, within(Math.max(0.005 * series, 0.5)));
        }
        switch (result) {
            case "agrees" -> {
                if (criterion.equals("core_min_at_most")) {
                    assertThat(computed).isLessThanOrEqualTo(published);
                } else {
                    assertThat(computed).as(toleranceReason).isCloseTo(published, within(tolerance));
                }
            }
            case "known disagreement" ->
                assertThat(Math.abs(computed - published)).as(toleranceReason).isGreaterThan(tolerance);
            default -> throw new IllegalArgumentException(result);
        }
    }

    /** Minutes until the level is passed, from below or from above. */
    private static double minutesTo(PointHistory history, double levelC) {
        if (history.temperatureC(0) < levelC) {
            return history.firstAtOrAbove(levelC) / 60.0;
        }
        return history.secondsAtOrAbove(levelC, history.end()) / 60.0;
    }

    /** Six log of Listeria in 2 min at 70 C, z 7.5 C. */
    private record Listeria() implements RateLaw {
        @Override
        public double perSecond(double temperatureC) {
            return Exp.pow10((temperatureC - 70.0) / 7.5) / 20.0;
        }

        @Override
        public double[] breaksC() {
            return new double[0];
        }
    }
}
