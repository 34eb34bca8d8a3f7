package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.Slab;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Notices of a bath whose heater is limited: each given by its trigger and kept back without it. */
class BathNoticesTest {

    private static final Afterwards PORK = Afterwards.of(Kitchen.of("pork-loin", new Slab(0.03), 4.0, 60.0));

    private static CookTask.Vessel vessel(double litres, double watts, OptionalDouble startC, double loadKg) {
        return new CookTask.Vessel(
                litres / 1000.0,
                watts,
                startC,
                loadKg,
                true,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    static Stream<Arguments> triggers() {
        Afterwards strong = PORK.in(vessel(20, 2000, OptionalDouble.empty(), 0.3));
        return Stream.of(
                Arguments.of(NoticeCode.BATH_SAGS, PORK.in(vessel(5, 600, OptionalDouble.empty(), 2.0)), strong),
                Arguments.of(NoticeCode.STARTS_COLD, PORK.in(vessel(10, 1500, OptionalDouble.of(20.0), 0.5)), strong),
                Arguments.of(NoticeCode.HEATER_TOO_WEAK, PORK.in(vessel(20, 20, OptionalDouble.empty(), 2.0)), strong));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("triggers")
    void a_notice_is_given_by_its_trigger_and_kept_back_without_it(NoticeCode code, Asked fires, Asked silent) {
        assertThat(fires.notices()).contains(code);
        assertThat(silent.notices()).doesNotContain(code);
    }
}
