package dev.slowpoint.texture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.ConstantPropertyReference;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.TemperatureHistory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoistureModelTest {

    private static final MoistureModel PORK =
            Released.MODEL.get("pork_loin").moisture().orElseThrow();

    /** L = Leq (1 - exp(-k t)) in closed form, with the printed constants of the general curve. */
    @ParameterizedTest
    @CsvSource({"50, 600", "57.42, 3600", "60, 14400", "76, 5400", "60, 360000"})
    void a_hold_loses_as_the_closed_form_says(double temperatureC, double seconds) {
        double leq = 40.0 / (1.0 + Math.exp(-(temperatureC - 57.42) / 13.22));
        double k = 0.02645 / 60.0 * Math.exp(60_000.0 / 8.314 * (1.0 / 333.15 - 1.0 / (temperatureC + 273.15)));
        MoistureLoss loss = PORK.over(ConstantPropertyReference.hold(temperatureC, seconds), 0.0);
        for (double share : new double[] {0.1, 0.5, 1.0}) {
            double expected = leq * (1.0 - Math.exp(-k * share * seconds));
            assertThat(loss.percentAt(share * seconds)).isCloseTo(expected, within(1e-4 * expected));
        }
    }

    @Test
    void half_of_the_most_is_lost_in_the_end_at_the_midpoint() {
        assertThat(PORK.equilibriumPercent(57.42)).isCloseTo(20.0, within(1e-12));
    }

    /** Against small midpoint steps along a ramp, where nothing can be solved in closed form. */
    @Test
    void a_ramp_converges_with_the_square_of_the_step() {
        double small = 0.0;
        double step = 0.25;
        for (double t = 0.5 * step; t < 7200.0; t += step) {
            double temperatureC = 5.0 + 60.0 * t / 7200.0;
            double k = PORK.rate().perSecond(temperatureC);
            small += step * k * Math.max(0.0, PORK.equilibriumPercent(temperatureC) - small);
        }
        double coarse = Math.abs(rampLoss(24) - small);
        double fine = Math.abs(rampLoss(48) - small);
        assertThat(coarse / fine).isBetween(3.5, 4.5);
        assertThat(fine).isLessThan(0.02);
    }

    private static double rampLoss(int steps) {
        double[] times = new double[steps + 1];
        double[] temperaturesC = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            times[i] = 7200.0 * i / steps;
            temperaturesC[i] = 5.0 + 60.0 * i / steps;
        }
        return PORK.over(ConstantPropertyReference.even(times, temperaturesC), 0.0)
                .percentAt(7200.0);
    }

    @Test
    void chilling_gives_nothing_back_and_a_second_milder_cook_takes_nothing_more() {
        TemperatureHistory twice = ConstantPropertyReference.even(
                new double[] {0.0, 40_000.0, 41_000.0, 60_000.0, 61_000.0, 90_000.0},
                new double[] {63.0, 63.0, 4.0, 4.0, 58.0, 58.0});
        MoistureLoss loss = PORK.over(twice, 0.0);
        double afterFirst = loss.percentAt(40_000.0);
        assertThat(afterFirst).isCloseTo(PORK.equilibriumPercent(63.0), within(0.01));
        assertThat(loss.percentAt(60_000.0)).isCloseTo(afterFirst, within(1e-3));
        assertThat(loss.percentAt(90_000.0)).isCloseTo(afterFirst, within(1e-3));
    }

    @Test
    void an_earlier_loss_is_where_the_next_begins() {
        TemperatureHistory hold = ConstantPropertyReference.hold(60.0, 3600.0);
        MoistureLoss first = PORK.over(hold, 0.0);
        MoistureLoss second = PORK.over(hold, first.percentAt(3600.0));
        MoistureLoss both = PORK.over(ConstantPropertyReference.hold(60.0, 7200.0), 0.0);
        assertThat(second.percentAt(0.0)).isEqualTo(first.percentAt(3600.0));
        assertThat(second.percentAt(3600.0)).isCloseTo(both.percentAt(7200.0), within(1e-9));
    }

    @Test
    void the_outside_loses_before_the_core_does() {
        TemperatureHistory thick =
                new ConstantPropertyReference(new Slab(0.05), 1.4e-7, 0.48, 400.0).bath(5.0, 60.0, 7200.0);
        TemperatureHistory thin =
                new ConstantPropertyReference(new Slab(0.02), 1.4e-7, 0.48, 400.0).bath(5.0, 60.0, 7200.0);
        assertThat(PORK.over(thick, 0.0).percentAt(3600.0))
                .isLessThan(PORK.over(thin, 0.0).percentAt(3600.0));
    }

    @Test
    void the_time_of_a_loss_is_the_time_at_which_it_is_reached() {
        TemperatureHistory bath =
                new ConstantPropertyReference(new Slab(0.03), 1.4e-7, 0.48, 400.0).bath(5.0, 70.0, 20_000.0);
        MoistureLoss loss = PORK.over(bath, 0.0);
        for (double percent : new double[] {0.5, 5.0, 15.0, 25.0, 28.0}) {
            double time = loss.timeOf(percent);
            assertThat(loss.percentAt(time)).isCloseTo(percent, within(1e-6));
            assertThat(loss.percentAt(time - 5.0)).isLessThan(percent);
        }
        assertThat(loss.timeOf(0.0)).isZero();
        assertThat(loss.timeOf(35.0)).isInfinite();
        assertThat(loss.percentAt(-1.0)).isZero();
        assertThat(loss.percentAt(1e9)).isEqualTo(loss.percentAt(20_000.0));
    }

    /**
     * Known disagreements. The curves were fitted to holds from which a come-up time of 0.4 to 0.7 h had been taken off,
     * and the service counts the come-up node by node. Chicken breast lost 6.58 % in 60 min at 60 C (Park et al. 2020,
     * 25 mm assumed): too much here. Salmon lost 6.3 % in 20 min at 57 C and 9.1 % in 80 min at 63 C (Gluchowski et al.
     * 2020, 22 mm assumed): too little after the short cook.
     */
    @Test
    void known_disagreement_short_cooks_lose_too_much_in_chicken_and_too_little_in_salmon() {
        double chicken = Released.read("chicken_breast", "slab", 25.0, 60.0, 60.0)
                .lossPercentAt(3600.0)
                .orElseThrow();
        assertThat(chicken).isCloseTo(14.3, within(0.1)).isGreaterThan(6.58 + 5.0);
        double early = Released.read("salmon", "slab", 22.0, 57.0, 20.0)
                .lossPercentAt(1200.0)
                .orElseThrow();
        assertThat(early).isCloseTo(2.4, within(0.1)).isLessThan(6.3);
        double late = Released.read("salmon", "slab", 22.0, 63.0, 80.0)
                .lossPercentAt(4800.0)
                .orElseThrow();
        assertThat(late).isCloseTo(9.1, within(0.3));
    }

    @Test
    void impossible_constants_are_refused_by_name() {
        assertThatThrownBy(() -> curve(0.0, 13.0, 25.0)).hasMessageContaining("largestPercent = 0.0");
        assertThatThrownBy(() -> curve(101.0, 13.0, 25.0)).hasMessageContaining("largestPercent = 101.0");
        assertThatThrownBy(() -> curve(40.0, 0.0, 25.0)).hasMessageContaining("widthK = 0.0");
        assertThatThrownBy(() -> curve(40.0, 13.0, 0.0)).hasMessageContaining("dryPercent = 0.0");
        assertThatThrownBy(() -> curve(40.0, 13.0, 100.5)).hasMessageContaining("dryPercent = 100.5");
    }

    @Test
    void a_table_of_cubics_keeps_the_rate_within_a_millionth() {
        ArrheniusLaw law = PORK.rate();
        CubicTable table = CubicTable.of(law::perSecond, 0.0, 110.0, 0.5);
        for (double temperatureC = -5.0; temperatureC < 115.0; temperatureC += 0.0937) {
            assertThat(table.at(temperatureC) / law.perSecond(temperatureC)).isCloseTo(1.0, within(1e-6));
        }
    }

    private static MoistureModel curve(double largest, double width, double dry) {
        return new MoistureModel(
                "x",
                largest,
                57.0,
                width,
                PORK.rate(),
                dry,
                new Provenance(Mark.JUDGEMENT, "test"),
                Confidence.LOW,
                "");
    }
}
