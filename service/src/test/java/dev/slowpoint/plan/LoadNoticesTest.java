package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.Slab;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Notices of several foods in one bath: each given by its trigger and kept back without it. */
class LoadNoticesTest {

    private static final Loads PAIR = Loads.of(
            Loads.Dish.of("chicken", "chicken-breast", new Slab(0.03), 0.6),
            Loads.Dish.of("pork", "pork-loin", new Slab(0.04), 0.8));
    private static final Loads STRONG = PAIR.in(60, 3000);
    private static final Loads STEAKS = Loads.of(
                    Loads.Dish.of("medium", "beef-sirloin", new Slab(0.025), 0.3)
                            .core(57.2),
                    Loads.Dish.of("rare", "beef-sirloin", new Slab(0.025), 0.3).core(53.9))
            .in(15, 1000);

    static Stream<Arguments> triggers() {
        return Stream.of(
                Arguments.of(NoticeCode.LOAD_WATER_NOT_COMPUTED, PAIR, STRONG),
                Arguments.of(NoticeCode.LOAD_HEATER_AT_LIMIT, PAIR.in(6, 300), STRONG),
                Arguments.of(NoticeCode.LOAD_COOL_THE_WATER, STEAKS, STRONG),
                Arguments.of(NoticeCode.LOAD_READY_LATE, STRONG.servedAfter(3600), STRONG.servedAfter(4 * 3600.0)),
                Arguments.of(NoticeCode.BATH_SAGS, PAIR.in(6, 300), STRONG),
                Arguments.of(NoticeCode.STARTS_COLD, STRONG.from(20), STRONG));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("triggers")
    void a_notice_is_given_by_its_trigger_and_kept_back_without_it(NoticeCode code, Asked fires, Asked silent) {
        assertThat(fires.notices()).contains(code).contains(NoticeCode.ESTIMATE_NOT_GUARANTEE);
        assertThat(silent.notices()).doesNotContain(code);
    }
}
