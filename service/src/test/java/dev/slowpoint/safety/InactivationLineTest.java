package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.parameters.ShippedSafety;
import java.util.Objects;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InactivationLineTest {

    private static InactivationLine line(String id) {
        return Objects.requireNonNull(ShippedSafety.KNOWLEDGE.lines().get(id), id);
    }

    // Times printed by the UK FSA for 6 log of non-proteolytic C. botulinum (vacuum-packing training, module 3 section
    // 2),
    // minutes; printed to two figures, hence 1.5 %.
    @ParameterizedTest
    @CsvSource({
        "80, 129",
        "81, 100",
        "82, 77",
        "83, 60",
        "84, 46",
        "85, 36",
        "86, 28",
        "87, 22",
        "88, 17",
        "89, 13",
        "90, 10",
        "91, 7.9",
        "92, 6.3",
        "93, 5.0",
        "94, 4.0",
        "95, 3.2",
        "96, 2.5",
        "97, 2.0",
        "98, 1.6",
        "99, 1.3",
        "100, 1.0"
    })
    void botulinum_line_returns_the_british_table(double temperatureC, double minutes) {
        assertThat(line("K-CB-UK").requiredS(6.0, temperatureC) / 60.0).isCloseTo(minutes, within(0.035 * minutes));
    }

    // FDA fish guide, 4th edition, Appendix 4, Table A-4: 6 log of non-proteolytic C. botulinum type B, minutes.
    @ParameterizedTest
    @CsvSource({
        "85, 51.8",
        "86, 37",
        "87, 27",
        "88, 19.2",
        "89, 13.9",
        "90, 10",
        "91, 7.9",
        "93, 5",
        "95, 3.2",
        "100, 1"
    })
    void botulinum_line_of_the_fish_guide_returns_its_table(double temperatureC, double minutes) {
        assertThat(line("K-CB-FDA").requiredS(6.0, temperatureC) / 60.0).isCloseTo(minutes, within(0.013 * minutes));
    }

    // FDA fish guide, Table A-3: 6 log of Listeria, minutes, printed to three figures up to 70 C.
    @ParameterizedTest
    @CsvSource({"63, 17", "64, 12.7", "65, 9.3", "66, 6.8", "67, 5", "68, 3.7", "69, 2.7", "70, 2"})
    void listeria_line_returns_the_fish_table(double temperatureC, double minutes) {
        assertThat(line("K-LM-UK").requiredS(6.0, temperatureC) / 60.0).isCloseTo(minutes, within(0.01 * minutes));
    }

    @Test
    void nothing_counts_below_the_floor_and_the_rate_is_held_above_the_highest_test() {
        RateLaw kill = line("K-LM-UK").killFrom(60.0);
        assertThat(kill.perSecond(59.999)).isZero();
        assertThat(kill.perSecond(60.0)).isPositive();
        assertThat(kill.perSecond(95.0)).isEqualTo(kill.perSecond(80.0));
        assertThat(kill.breaksC()).containsExactly(60.0, 80.0);
    }

    @Test
    void botulinum_rate_bends_at_ninety_degrees() {
        RateLaw kill = line("K-CB-UK").killFrom(80.0);
        assertThat(kill.breaksC()).containsExactly(80.0, 90.0, 100.0);
        // z 9 below and 10 above 90 C.
        assertThat(kill.perSecond(90.0) / kill.perSecond(81.0)).isCloseTo(10.0, within(1e-9));
        assertThat(kill.perSecond(100.0) / kill.perSecond(90.0)).isCloseTo(10.0, within(1e-9));
    }

    @Test
    void nonsense_is_refused_by_name() {
        Provenance known = new Provenance(Mark.READ, "test");
        assertThatThrownBy(() -> new InactivationLine(
                        "L", Hazard.SALMONELLA, "m", 60, -1, 7, OptionalDouble.empty(), 55, 65, "use", known))
                .hasMessageContaining("L")
                .hasMessageContaining("-1");
        assertThatThrownBy(() -> new InactivationLine(
                        "L", Hazard.SALMONELLA, "m", 60, 1, 7, OptionalDouble.empty(), 66, 65, "use", known))
                .hasMessageContaining("66");
        assertThatThrownBy(() -> line("K-LM-UK").slowerBy(0.5)).hasMessageContaining("0.5");
    }
}
