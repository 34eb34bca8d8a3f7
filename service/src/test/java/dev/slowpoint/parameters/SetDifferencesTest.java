package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import dev.slowpoint.parameters.SetDifferences.Change;
import dev.slowpoint.parameters.SetDifferences.Count;
import dev.slowpoint.parameters.SetDifferences.Difference;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The expected differences are those that the tests put in themselves. */
class SetDifferencesTest {

    private static ParameterFiles files(String version, Map<String, String> texts) {
        return ParameterFiles.of(
                version,
                texts.entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey, text -> text.getValue().getBytes(StandardCharsets.UTF_8))));
    }

    private static SetDifferences between(String before, String after) {
        return SetDifferences.between(files("1", Map.of("t.csv", before)), files("2", Map.of("t.csv", after)));
    }

    @Test
    void a_set_does_not_differ_from_itself() {
        SetDifferences none = SetDifferences.between(TestSets.old(), TestSets.old());
        assertThat(none.counts()).isEmpty();
        assertThat(none.all()).isEmpty();
    }

    @Test
    void rows_that_came_went_and_changed_are_told_by_table_key_and_column() {
        SetDifferences found = SetDifferences.between(TestSets.old(), ParameterFiles.released("2026.1"));

        assertThat(found.counts()).containsExactly(new Count("films.csv", 0, 0, 0), new Count("foods.csv", 1, 1, 1));
        assertThat(found.all())
                .extracting(
                        Difference::change, Difference::key, Difference::column, Difference::before, Difference::after)
                .containsExactly(
                        tuple(
                                Change.CHANGED,
                                "apple",
                                Optional.of("freezing_point_C"),
                                Optional.of("-1.20"),
                                Optional.of("-1.10")),
                        tuple(Change.ADDED, "artichoke", Optional.empty(), Optional.empty(), Optional.empty()),
                        tuple(Change.REMOVED, "apple-of-old", Optional.empty(), Optional.empty(), Optional.empty()));
        assertThat(found.all()).allMatch(difference -> difference.source().isPresent());
    }

    @Test
    void the_other_way_round_what_came_went() {
        SetDifferences found = SetDifferences.between(ParameterFiles.released("2026.1"), TestSets.old());
        assertThat(found.all())
                .extracting(Difference::change)
                .containsExactly(Change.CHANGED, Change.ADDED, Change.REMOVED);
        assertThat(found.all().get(0).before()).contains("-1.10");
    }

    @Test
    void the_key_is_as_short_as_tells_all_rows_apart() {
        SetDifferences found =
                between("class,process,rate\na,set,1\na,soft,2\n", "class,process,rate\na,soft,3\na,set,1\n");
        assertThat(found.all())
                .containsExactly(new Difference(
                        "t.csv",
                        Change.CHANGED,
                        "a/soft",
                        Optional.of("rate"),
                        Optional.of("2"),
                        Optional.of("3"),
                        Optional.empty()));
    }

    @Test
    void a_column_that_is_new_is_told_for_each_row_that_fills_it() {
        SetDifferences found = between("id,rate\na,1\nb,2\n", "id,rate,note\na,1,x\nb,2,\n");
        assertThat(found.all()).hasSize(1);
        assertThat(found.all().get(0).column()).contains("note");
        assertThat(found.all().get(0).before()).isEmpty();
    }

    @Test
    void rows_that_nothing_tells_apart_are_counted() {
        SetDifferences found = between("a,b\n1,2\n", "a,b\n1,2\n1,2\n");
        assertThat(found.counts()).containsExactly(new Count("t.csv", 1, 0, 0));
    }

    @Test
    void a_table_that_is_new_has_only_new_rows() {
        SetDifferences found = SetDifferences.between(
                files("1", Map.of()), files("2", Map.of("t.csv", "id,rate\na,1\nb,2\n", "empty.csv", "id,rate\n")));
        assertThat(found.counts()).containsExactly(new Count("empty.csv", 0, 0, 0), new Count("t.csv", 2, 0, 0));
    }
}
