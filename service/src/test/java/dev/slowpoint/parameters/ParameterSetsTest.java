package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ParameterSetsTest {

    private static final ParameterSet.Retirement RETIREMENT =
            new ParameterSet.Retirement(new Deprecation(LocalDate.of(2027, 1, 1), Optional.empty()), "2026.1");

    private static ParameterSet set(String version, ParameterSet.Status status) {
        ParameterSet released = ParameterSets.released().current();
        return new ParameterSet(
                version,
                status,
                LocalDate.of(2026, 1, 1),
                status == ParameterSet.Status.DEPRECATED ? Optional.of(RETIREMENT) : Optional.empty(),
                released.files(),
                released.knowledge(),
                released.defaults());
    }

    @Test
    void the_current_set_is_found_by_its_version_too() {
        ParameterSets sets = ParameterSets.released();

        assertThat(sets.current().version()).isEqualTo("2026.1");
        assertThat(sets.find("2026.1")).containsSame(sets.current());
        assertThat(sets.find("2025.9")).isEmpty();
        assertThat(sets.all()).containsExactly(sets.current());
    }

    @Test
    void a_deprecated_set_still_answers_by_its_version() {
        ParameterSet old = set("2025.1", ParameterSet.Status.DEPRECATED);
        ParameterSet now = set("2026.1", ParameterSet.Status.CURRENT);
        ParameterSets sets = new ParameterSets(List.of(old, now));

        assertThat(sets.find("2025.1")).contains(old);
        assertThat(sets.current()).isSameAs(now);
    }

    @Test
    void one_set_alone_is_current() {
        ParameterSet current = set("2026.1", ParameterSet.Status.CURRENT);
        ParameterSet other = set("2026.2", ParameterSet.Status.CURRENT);
        ParameterSet old = set("2025.1", ParameterSet.Status.DEPRECATED);

        assertThatThrownBy(() -> new ParameterSets(List.of(current, other))).hasMessageContaining("there are 2");
        assertThatThrownBy(() -> new ParameterSets(List.of(old))).hasMessageContaining("there are 0");
        assertThatThrownBy(() -> new ParameterSets(List.of(current, current)))
                .hasMessage("parameter set 2026.1 was given twice");
    }

    @Test
    void a_list_says_since_when_a_set_is_deprecated_and_what_comes_after_it() {
        ParameterSets sets = TestSets.withAnOldOne();

        ParameterSet.Retirement retirement =
                sets.find(TestSets.OLD).orElseThrow().retirement().orElseThrow();
        assertThat(retirement.deprecation())
                .isEqualTo(new Deprecation(LocalDate.of(2027, 1, 1), Optional.of(LocalDate.of(2029, 1, 1))));
        assertThat(retirement.successor()).isEqualTo("2026.1");
        assertThat(sets.current().retirement()).isEmpty();
        assertThat(ParameterSets.released().all())
                .allMatch(set -> set.retirement().isEmpty());
    }

    /** RFC 9745, section 4: the sunset must not be earlier than the deprecation. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "deprecated,2025-09-01,2027-01-01,2026-12-31,2026.1; line 2, column sunset: the sunset on 2026-12-31 must",
                "deprecated,2025-09-01,,,; line 2, column deprecated: must hold a day for a deprecated set",
                "current,2025-09-01,2027-01-01,,2026.1; line 2, column deprecated: must hold a day for a deprecated set",
                "deprecated,2025-09-01,,2029-01-01,; line 2, column deprecated: must not be empty beside a sunset",
                "deprecated,2025-09-01,2025-08-31,,2026.1; line 2, column deprecated: must not lie before the release",
                "deprecated,2025-09-01,2027-01-01,,; line 2, column successor: must not be empty",
                "deprecated,2025-09-01,2027-01-01,,2031.1; must be followed by another of [2025.9, 2026.1], not by 2031.1",
                "deprecated,2025-09-01,2027-01-01,,2025.9; must be followed by another of [2025.9, 2026.1], not by 2025.9",
                "deprecated,2025-09-01,1 January 2027,,2026.1; line 2, column deprecated: holds '1 January 2027'",
            })
    void a_list_that_retires_a_set_in_no_order_is_refused(String cells, String complaint) {
        String list = "version,status,released,deprecated,sunset,successor,note\n2025.9," + cells
                + ",\n2026.1,current,2026-01-01,,,,\n";
        assertThatThrownBy(() -> TestSets.read(list))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(complaint);
    }

    @Test
    void the_day_of_the_deprecation_may_be_the_last() {
        LocalDate day = LocalDate.of(2027, 1, 1);
        assertThat(new Deprecation(day, Optional.of(day)).sunset()).contains(day);
    }
}
