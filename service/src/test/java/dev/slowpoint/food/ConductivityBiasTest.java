package dev.slowpoint.food;

import static dev.slowpoint.food.ReleasedModel.MODEL;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.Spreads;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The evidence for multiplying the computed conductivity: measured diffusivities of foods. */
class ConductivityBiasTest {

    static List<TableRow> measured() {
        return TableRow.of("diffusivities.csv");
    }

    private static double modelOverMeasured(TableRow row) {
        ThermalProperties properties = MODEL.properties(row.composition(), -1.0, 1.0);
        return ReleasedModel.diffusivity(properties, row.number("temperature_C")) * 1e6 / row.number("measured_mm2_s");
    }

    private static DoubleSummaryStatistics ratios(String kind, TestReporter reporter) {
        DoubleSummaryStatistics ratios = measured().stream()
                .filter(row -> row.text("kind").equals(kind))
                .mapToDouble(ConductivityBiasTest::modelOverMeasured)
                .summaryStatistics();
        reporter.publishEntry(
                "diffusivity, model over measured, " + kind,
                "mean %.3f, %.3f to %.3f, of %d"
                        .formatted(ratios.getAverage(), ratios.getMin(), ratios.getMax(), ratios.getCount()));
        return ratios;
    }

    @ParameterizedTest
    @MethodSource("measured")
    void each_ratio_of_model_to_measurement_is_the_one_on_record(TableRow row) {
        assertThat(modelOverMeasured(row)).isCloseTo(row.number("ratio"), within(0.0006));
    }

    // Dickerson and Read in a secondary copy: beef chuck, round and tongue, corned beef, halibut, cod, ham; 5 to 65 C.
    @Test
    void the_model_is_seven_percent_too_fast_for_meat_and_fish_and_the_factors_undo_that(TestReporter reporter) {
        DoubleSummaryStatistics flesh = ratios("flesh", reporter);

        assertThat(flesh.getCount()).isEqualTo(7);
        assertThat(flesh.getAverage()).isCloseTo(1.07, within(0.005));
        assertThat(flesh.getMin()).isCloseTo(0.98, within(0.005));
        assertThat(flesh.getMax()).isCloseTo(1.16, within(0.005));
        assertThat(MODEL.bias().nominal() * flesh.getAverage()).isBetween(0.99, 1.0);
        assertThat(MODEL.bias().pessimistic() * flesh.getMax()).isLessThan(1.0);
        assertThat(MODEL.bias().optimistic() * flesh.getMin()).isBetween(0.97, 1.0);
    }

    // Several laboratories, and two methods of one of them that lie 15 % apart on potatoes.
    @Test
    void plants_scatter_more_widely_about_the_same_bias(TestReporter reporter) {
        DoubleSummaryStatistics plants = ratios("plant", reporter);

        assertThat(plants.getMin()).isCloseTo(0.83, within(0.005));
        assertThat(plants.getMax()).isCloseTo(1.19, within(0.005));
        assertThat(plants.getAverage()).isBetween(1.05, 1.10);
    }

    @Test
    void the_spreads_that_are_sampled_are_those_of_the_measurements() {
        Spreads spreads = ParameterSets.released().current().knowledge().spreads();

        assertThat(spreadOfLogarithms("flesh")).isCloseTo(spreads.conductivity(), within(0.001));
        assertThat(spreadOfLogarithms("plant"))
                .isBetween(spreads.conductivityOfPlants() - 0.006, spreads.conductivityOfPlants());
    }

    private static double spreadOfLogarithms(String kind) {
        double[] logs = measured().stream()
                .filter(row -> row.text("kind").equals(kind))
                .mapToDouble(row -> Math.log(modelOverMeasured(row)))
                .toArray();
        double mean = Arrays.stream(logs).average().orElseThrow();
        double squares =
                Arrays.stream(logs).map(log -> (log - mean) * (log - mean)).sum();
        return Math.sqrt(squares / (logs.length - 1));
    }

    // Known disagreement: a cooked lean patty measured 0.103 mm2/s (READ_ABSTRACT). It would take a factor of 0.72.
    @Test
    void cooked_minced_meat_is_slower_than_even_the_pessimistic_factor_says(TestReporter reporter) {
        DoubleSummaryStatistics cooked = ratios("cooked", reporter);

        assertThat(cooked.getCount()).isEqualTo(1);
        assertThat(cooked.getAverage() * MODEL.bias().pessimistic()).isBetween(1.15, 1.20);
    }

    @Test
    void factors_out_of_order_are_refused() {
        assertThatThrownBy(() -> new ConductivityBias(0.95, 0.93, 1.0, List.of()))
                .hasMessageContaining("0.95, 0.93, 1.0");
        assertThatThrownBy(() -> new ConductivityBias(0.0, 0.93, 1.0, List.of()))
                .hasMessageContaining("positive");
        assertThatThrownBy(() -> new ConductivityBias(0.8, 0.93, 0.9, List.of()))
                .hasMessageContaining("rise");
    }
}
