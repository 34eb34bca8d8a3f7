package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class ParameterSetsTest {

    private static ParameterSet set(String version, ParameterSet.Status status) {
        ParameterSet released = ParameterSets.released().current();
        return new ParameterSet(
                version,
                status,
                LocalDate.of(2026, 1, 1),
                released.digest(),
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
}
