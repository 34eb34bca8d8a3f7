package dev.slowpoint.texture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The statements of the literature about texture, row by row, with what the released constants make of them.
 *
 * <p>Only rows whose role is {@code independent} are evidence; the others repeat what the constants were fitted to. A row
 * whose result is {@code disagrees} is a fact about the constants: the test asserts the disagreement, so that a change of
 * the constants shows.
 */
class PublishedChecksTest {

    private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");

    static Stream<Released.Vector> rows() {
        return Released.vectors("checks.csv").stream();
    }

    static Stream<Released.Vector> computed() {
        return rows().filter(row -> PublishedChecks.ALL.containsKey(id(row)));
    }

    @Test
    void every_row_is_computed_or_says_why_not() {
        List<Integer> expected = new ArrayList<>(PublishedChecks.ALL.keySet());
        expected.addAll(PublishedChecks.NOT_COMPUTED.keySet());
        assertThat(rows().map(PublishedChecksTest::id)).containsExactlyInAnyOrderElementsOf(expected);
        assertThat(PublishedChecks.ALL.keySet()).containsAll(PublishedChecks.IN_PART.keySet());
    }

    @Test
    void the_evidence_is_as_large_as_it_is_said_to_be() {
        assertThat(rows().filter(row -> row.text("role").equals("independent")).count())
                .isEqualTo(52);
    }

    @ParameterizedTest
    @MethodSource("computed")
    void the_model_agrees_and_disagrees_as_told(Released.Vector row) {
        boolean[] holds = outcome(row).holds();
        switch (row.text("result")) {
            case "pass", "agrees" -> assertThat(holds).doesNotContain(false);
            case "disagrees" -> assertThat(holds).containsExactly(false);
            case "partly agrees" -> assertThat(holds).containsExactly(true, false);
            case "partly disagrees" -> assertThat(holds).containsExactly(false, true);
            case "" -> {
                assertThat(row.text("role")).isEqualTo("known_disagreement");
                assertThat(holds).containsExactly(false);
            }
            default -> throw new IllegalArgumentException(row.text("result"));
        }
    }

    /** A figure is met within one unit of its last printed digit or 1 %, whichever is more. */
    @ParameterizedTest
    @MethodSource("computed")
    void the_figures_are_those_of_the_table(Released.Vector row) {
        Computed.Outcome outcome = outcome(row);
        List<String> printed = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(row.text("model_value"));
        while (matcher.find()) {
            printed.add(matcher.group());
        }
        for (int i = 0; i < outcome.values().length; i++) {
            String figure = printed.get(outcome.printedAt()[i]);
            double expected = Double.parseDouble(figure);
            int point = figure.indexOf('.');
            double unit = Math.pow(10.0, point < 0 ? 0 : point + 1 - figure.length());
            assertThat(outcome.values()[i])
                    .as(row.text("model_value"))
                    .isCloseTo(expected, within(Math.max(unit, 0.01 * expected)));
        }
    }

    private static int id(Released.Vector row) {
        return Integer.parseInt(row.text("id"));
    }

    private static Computed.Outcome outcome(Released.Vector row) {
        return Objects.requireNonNull(PublishedChecks.ALL.get(id(row))).get();
    }
}
