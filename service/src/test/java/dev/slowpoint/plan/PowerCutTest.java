package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PowerCutTest {

    private static final AfterBath AFTER = Kitchen.PLANNER.knowledge().after();

    private static PowerCut cut(OptionalDouble hours, OptionalDouble foundC, Corner corner) {
        OptionalDouble seconds =
                hours.isPresent() ? OptionalDouble.of(3600.0 * hours.getAsDouble()) : OptionalDouble.empty();
        return PowerCut.of(new Step.Unheated(seconds, foundC), 60.0, corner, AFTER);
    }

    @ParameterizedTest
    @EnumSource(Corner.class)
    void what_was_found_is_what_comes_out(Corner corner) {
        assertThat(cut(OptionalDouble.empty(), OptionalDouble.of(40), corner).endC())
                .isCloseTo(40.0, within(1e-9));
        assertThat(cut(OptionalDouble.of(3), OptionalDouble.of(40), corner).endC())
                .isCloseTo(40.0, within(1e-9));
    }

    // By hand: a room of 21 C and 4 h make 60 - 21 = 39 K shrink to 39/e = 14.35 K in 4 h.
    @Test
    void water_cools_by_newtons_law() {
        PowerCut four = cut(OptionalDouble.of(4), OptionalDouble.empty(), Corner.NOMINAL);
        assertThat(four.endC()).isCloseTo(35.35, within(0.01));
        assertThat(four.below(60.0)).isEqualTo(4 * 3600.0);
        assertThat(four.below(20.0)).isZero();
        assertThat(four.below(35.0)).isZero();
        assertThat(four.below(four.endC() + 1e-9)).isCloseTo(0.0, within(1e-3));
    }

    @Test
    void where_only_the_length_is_known_the_late_side_is_the_longest_in_the_growth_range() {
        double late =
                cut(OptionalDouble.of(4), OptionalDouble.empty(), Corner.LATE).below(52.3);
        double nominal = cut(OptionalDouble.of(4), OptionalDouble.empty(), Corner.NOMINAL)
                .below(52.3);
        double early =
                cut(OptionalDouble.of(4), OptionalDouble.empty(), Corner.EARLY).below(52.3);
        assertThat(late).isGreaterThan(nominal);
        assertThat(nominal).isGreaterThan(early);
    }

    @Test
    void water_found_as_cold_as_the_room_was_off_for_long_and_not_for_ever() {
        PowerCut cold = cut(OptionalDouble.empty(), OptionalDouble.of(20), Corner.LATE);
        assertThat(cold.duration()).isFinite().isGreaterThan(12 * 3600.0);
    }
}
