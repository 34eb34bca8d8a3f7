package dev.slowpoint.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DoseTest {

    /** Tenfold per z kelvin, one unit per D seconds at the reference; zero below a floor. */
    private record Line(double dSeconds, double referenceC, double zK, double floorC) implements RateLaw {
        @Override
        public double perSecond(double temperatureC) {
            return temperatureC < floorC ? 0.0 : Exp.pow10((temperatureC - referenceC) / zK) / dSeconds;
        }

        @Override
        public double[] breaksC() {
            return new double[] {floorC};
        }
    }

    /**
     * A straight rise from T1 to T2 at r K/s: L = z / (r ln10 D) (10^((T2-Tref)/z) - 10^((T1-Tref)/z)), the closed
     * integral of the log-linear law.
     */
    @Test
    void a_straight_rise_gives_the_closed_integral_with_and_without_a_floor() {
        PointHistory ramp = PointHistory.straightLines(new double[] {0.0, 4800.0}, new double[] {20.0, 60.0});
        double r = 40.0 / 4800.0;
        for (double floor : new double[] {-100.0, 54.444}) {
            Line line = new Line(1034.0, 54.444, 5.556, floor);
            double from = Math.max(20.0, floor);
            double exact = 5.556
                    / (r * Math.log(10.0) * 1034.0)
                    * (Math.pow(10.0, (60.0 - 54.444) / 5.556) - Math.pow(10.0, (from - 54.444) / 5.556));
            assertThat(Dose.of(line, ramp).total()).isCloseTo(exact, within(2e-6 * exact));
        }
    }

    @Test
    void the_time_of_a_dose_is_when_the_dose_is_reached() {
        PointHistory history = PointHistory.straightLines(
                new double[] {0.0, 1000.0, 3000.0, 4000.0}, new double[] {20.0, 58.0, 58.0, 30.0});
        Dose dose = Dose.of(new Line(300.0, 58.0, 6.0, 50.0), history);
        for (double share = 0.05; share < 1.0; share += 0.05) {
            double threshold = share * dose.total();
            assertThat(dose.at(dose.timeOf(threshold))).isCloseTo(threshold, within(1e-6 * dose.total()));
        }
        assertThat(dose.timeOf(dose.total() * 1.01)).isInfinite();
        assertThat(dose.timeOf(0.0)).isZero();
    }

    @Test
    void doses_of_two_parts_of_a_history_add_up_to_the_whole() {
        PointHistory whole =
                PointHistory.straightLines(new double[] {0.0, 900.0, 1800.0}, new double[] {10.0, 60.0, 20.0});
        PointHistory up = PointHistory.straightLines(new double[] {0.0, 900.0}, new double[] {10.0, 60.0});
        PointHistory down = PointHistory.straightLines(new double[] {0.0, 900.0}, new double[] {60.0, 20.0});
        Line line = new Line(60.0, 60.0, 7.5, 40.0);
        assertThat(Dose.of(line, up).total() + Dose.of(line, down).total())
                .isCloseTo(Dose.of(line, whole).total(), within(1e-9));
    }

    @Test
    void seconds_above_and_between_levels_are_counted_up_to_a_time() {
        PointHistory history = PointHistory.straightLines(
                new double[] {0.0, 100.0, 200.0, 300.0}, new double[] {0.0, 50.0, 50.0, 0.0});
        assertThat(history.secondsAtOrAbove(25.0, 300.0)).isCloseTo(200.0, within(1e-3));
        assertThat(history.secondsAtOrAbove(25.0, 150.0)).isCloseTo(100.0, within(1e-3));
        assertThat(history.secondsBetween(10.0, 25.0, 300.0)).isCloseTo(60.0, within(1e-3));
        assertThat(history.firstAtOrAbove(49.0)).isCloseTo(98.0, within(1e-3));
        assertThat(history.firstAtOrAbove(51.0)).isInfinite();
        assertThat(history.highestC()).isEqualTo(50.0);
    }
}
