package dev.slowpoint.food;

import static dev.slowpoint.food.ReleasedModel.CATALOGUE;
import static dev.slowpoint.food.ReleasedModel.MODEL;
import static dev.slowpoint.food.ReleasedModel.diffusivity;
import static dev.slowpoint.food.ReleasedModel.food;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThermalPropertiesTest {

    /** Nine printed digits. */
    private static final double PRINTED = 5e-9 * 1.01;

    static List<TableRow> checks() {
        return TableRow.of("property-checks.csv");
    }

    static List<TableRow> specificHeats() {
        return TableRow.of("specific-heats.csv");
    }

    static List<TableRow> fishEnthalpies() {
        return TableRow.of("fish-enthalpy.csv");
    }

    private static ThermalProperties nominal(String id) {
        return MODEL.properties(food(id), MODEL.bias().nominal());
    }

    // An independent calculation of the same formulas in another language, for compositions of the ASHRAE
    // Refrigeration Handbook, Table 3, and of USDA SR28.
    @ParameterizedTest
    @MethodSource("checks")
    void every_property_agrees_with_an_independent_calculation_to_the_printed_digits(TableRow row) {
        double temperatureC = row.number("T_C");
        boolean frozen = row.text("state").startsWith("frozen");
        Composition x = Composition.normalised(
                row.number("x_water"),
                row.number("x_protein"),
                row.number("x_fat"),
                row.number("x_carb_less_fibre"),
                row.number("x_fibre"),
                row.number("x_ash"));
        double freezingPointC = frozen ? row.number("Tf_C") : -1.0;
        ThermalProperties properties = MODEL.properties(x, freezingPointC, 1.0);

        SoftAssertions all = new SoftAssertions();
        printed(all, "parallel k", properties.parallelConductivity(temperatureC), row.number("k_parallel_W_mK"));
        printed(all, "series k", properties.seriesConductivity(temperatureC), row.number("k_series_W_mK"));
        printed(all, "Levy k", properties.dispersedConductivity(temperatureC), row.number("k_levy_W_mK"));
        printed(all, "density", properties.density(temperatureC), row.number("rho_kg_m3"));
        printed(all, "sensible heat", properties.sensibleHeat(temperatureC), row.number("cp_sensible_J_kgK"));
        printed(all, "latent heat", properties.latentHeatPerKelvin(temperatureC), row.number("cp_latent_J_kgK"));
        printed(all, "apparent heat", properties.apparentHeat(temperatureC), row.number("cp_apparent_J_kgK"));
        double chen = frozen
                ? PublishedFormulas.chenFrozenHeat(x, freezingPointC, temperatureC)
                : PublishedFormulas.chenThawedHeat(x);
        printed(all, "Chen heat", chen, row.number("cp_chen_J_kgK"));
        printed(all, "ice", properties.iceFraction(temperatureC), row.number("x_ice"));
        printed(
                all,
                "diffusivity",
                diffusivity(properties, temperatureC) * 1e6,
                row.number("alpha_parallel_1e-6_m2_s"));
        all.assertAll();
    }

    private static void printed(SoftAssertions all, String what, double value, double reference) {
        all.assertThat(value).as(what).isCloseTo(reference, within(Math.abs(reference) * PRINTED));
    }

    // ASHRAE Refrigeration Handbook, Table 3 (READ). The table counts the fibre of vegetables twice, in the total
    // carbohydrate and once more: its values come out again when we do so, to its last digit.
    @ParameterizedTest
    @MethodSource("specificHeats")
    void specific_heats_agree_with_the_handbook_where_it_agrees_with_itself(TableRow row) {
        double published = row.number("published_kJ_kgK");
        ThermalProperties properties = MODEL.properties(row.composition(), -1.0, 1.0);
        double ours = properties.apparentHeat(5.0) / 1000.0;
        double asPrinted = heatOfFractionsAsPrinted(row) / 1000.0;

        if (row.text("food").equals("chicken")) {
            // Known disagreement: 4.34 would be more than pure water; the printed composition gives 3.44.
            assertThat(asPrinted).isCloseTo(row.number("recomputed_kJ_kgK"), within(0.0006));
            assertThat(published - asPrinted).isGreaterThan(0.85);
        } else {
            assertThat(asPrinted).isCloseTo(published, within(0.011));
            assertThat(ours).isCloseTo(published, within(0.06));
        }
    }

    /** The sum of the handbook: fractions as printed, not normalised, fibre on top of the carbohydrate. */
    private static double heatOfFractionsAsPrinted(TableRow row) {
        double sum = 0.0;
        for (ComponentProperties each : MODEL.components()) {
            double percent = switch (each.component()) {
                case WATER -> row.number("water_pct");
                case ICE -> 0.0;
                case PROTEIN -> row.number("protein_pct");
                case FAT -> row.number("fat_pct");
                case CARBOHYDRATE -> row.number("carbohydrate_with_fibre_pct");
                case FIBRE -> row.number("fibre_pct");
                case ASH -> row.number("ash_pct");
            };
            sum += percent / 100.0 * each.specificHeatAt(5.0);
        }
        return sum;
    }

    // FAO Fisheries Technical Paper 340, Table 31, white fish above -40 C (READ), freezing point about -1 C there.
    // From -20 C up the heat to take in agrees within 1.2 %. Known disagreement: below -20 C the model takes 19 % more,
    // because the polynomial of unfrozen water rises steeply there; and between -6 and -1 C the table melts later.
    @ParameterizedTest(name = "to {0} C")
    @CsvSource({"0, 281.1", "2, 288.3", "10, 317.6", "20, 354.3", "40, 428.0"})
    void thawing_fish_takes_the_heat_of_the_published_table(double temperatureC, double publishedKj) {
        ThermalProperties cod = MODEL.properties(food("cod").composition(), -1.0, 1.0);

        double kj = (cod.enthalpy(temperatureC) - cod.enthalpy(-20.0)) / 1000.0;

        assertThat(kj).isCloseTo(publishedKj, withinPercentage(1.2));
    }

    // The same table from -40 C on. Known disagreement, in the column model_excess, which an independent quadrature
    // gave.
    @ParameterizedTest
    @MethodSource("fishEnthalpies")
    void heat_content_of_fish_above_minus_40_lies_a_known_way_above_the_published_table(TableRow row) {
        ThermalProperties cod = MODEL.properties(food("cod").composition(), -1.0, 1.0);

        double kj = cod.enthalpy(row.number("temperature_C")) / 1000.0;

        assertThat(kj - row.number("enthalpy_kJ_kg")).isCloseTo(row.number("model_excess_kJ_kg"), within(0.051));
    }

    // Chen 1985 (READ): the formula that Fricke and Becker 2001 found best for heat content. From -18 to 5 C the
    // model takes up to 7 % more for lean meat and fish, and for pork belly the same within 3 %.
    @ParameterizedTest
    @CsvSource({
        "beef-sirloin-lean, 0.0, 0.07",
        "chicken-breast, 0.0, 0.07",
        "cod, 0.0, 0.07",
        "salmon, 0.0, 0.07",
        "pork-belly, -0.03, 0.03"
    })
    void thawing_takes_the_heat_of_an_independent_formula(String id, double least, double most) {
        Food food = food(id);
        ThermalProperties properties = MODEL.properties(food, 1.0);

        double ours = properties.enthalpy(5.0) - properties.enthalpy(-18.0);
        double chen = PublishedFormulas.chenEnthalpy(food.composition(), food.freezingPointC(), 5.0)
                - PublishedFormulas.chenEnthalpy(food.composition(), food.freezingPointC(), -18.0);

        assertThat(ours / chen - 1.0).isBetween(least, most);
    }

    // Chang and Tao 1981 (READ_CODE): lean meat at its freezing point, above -45.6 C. Ours counts from -40 C, a gap of
    // about 11 kJ/kg (2 kJ/(kg K)), so it must lie below by some 2 to 5 %.
    @ParameterizedTest
    @ValueSource(strings = {"beef-sirloin-lean", "veal-loin", "pork-loin", "chicken-breast", "lamb-leg-lean"})
    void heat_content_at_the_freezing_point_agrees_with_a_fit_for_meat(String id) {
        Food food = food(id);
        double ours = MODEL.properties(food, 1.0).enthalpy(food.freezingPointC()) + 11_000.0;

        double published = PublishedFormulas.changAndTaoEnthalpyAtFreezing(
                food.composition().water());

        assertThat(ours).isCloseTo(published, withinPercentage(3.0));
    }

    // ASHRAE Refrigeration Handbook, Example 1 (MEMORY): 0.52 of ice in a beef carcass of 58 % water at -20 C by
    // Tchigeov. Known disagreement: the ideal solution gives 10 % less there, as it leaves the bound water out.
    @Test
    void ice_lies_below_tchigeov_by_a_known_part() {
        Composition carcass = Composition.normalised(58.21, 17.48, 22.55, 0.0, 0.0, 0.82);

        double tchigeov = PublishedFormulas.tchigeovIce(0.58, -1.7, -20.0);
        double ours = MODEL.properties(carcass, -1.7, 1.0).iceFraction(-20.0);

        assertThat(tchigeov).isCloseTo(0.52, within(0.005));
        assertThat(ours / tchigeov).isBetween(0.90, 0.93);
    }

    // FAO Fisheries Technical Paper 340 (READ): 55 % of the water of fish is frozen at -2.2 C and 70 % at -5 C.
    @Test
    void over_half_of_the_freezable_water_of_fish_is_ice_at_minus_2() {
        ThermalProperties cod = MODEL.properties(food("cod").composition(), -1.0, 1.0);
        double water = food("cod").composition().water();
        double freezable = MODEL.freezing().freezableWater(food("cod").composition());

        assertThat(cod.iceFraction(-2.2) / freezable).isCloseTo(0.55, within(0.01));
        assertThat(cod.iceFraction(-2.2) / water).isCloseTo(0.55, within(0.06));
        assertThat(cod.iceFraction(-5.0) / water).isCloseTo(0.70, within(0.04));
    }

    // Sweat, Haugh and Stadelman 1973, J. Food Sci. 38:158 (READ_ABSTRACT): white meat of chicken,
    // k = 0.476 + 0.00060 T from 0 to 20 C, and k = 1.07 - 0.0149 T - 1.04e-4 T^2 below -10 C.
    @ParameterizedTest
    @CsvSource({"0.1, 0.4761", "10, 0.4820", "20, 0.4880", "-10, 1.2086", "-20, 1.3264", "-40, 1.4996"})
    void conductivity_of_chicken_agrees_with_measurement_before_any_correction(double temperatureC, double measured) {
        ThermalProperties chicken = MODEL.properties(food("chicken-breast").composition(), -1.0, 1.0);

        assertThat(chicken.conductivity(temperatureC)).isCloseTo(measured, withinPercentage(6.0));
    }

    @Test
    void the_slope_of_heat_content_is_the_apparent_heat() {
        for (Food food : CATALOGUE.foods()) {
            ThermalProperties properties = MODEL.properties(food, 1.0);
            for (double t : new double[] {-39.0, -25.0, -12.0, -4.0, -2.0, -0.05, 0.5, 20.0, 60.0, 120.0}) {
                double h = 1e-3;
                double slope = (properties.enthalpy(t + h) - properties.enthalpy(t - h)) / (2.0 * h);
                assertThat(slope)
                        .as("%s at %s C", food.id(), t)
                        .isCloseTo(properties.apparentHeat(t), withinPercentage(2e-4));
            }
        }
    }

    @Test
    void heat_content_rises_without_a_jump_from_zero_at_the_lowest_temperature() {
        for (Food food : CATALOGUE.foods()) {
            ThermalProperties properties = MODEL.properties(food, 1.0);
            assertThat(properties.enthalpy(properties.lowestC())).isZero();
            double before = 0.0;
            for (double t = properties.lowestC() + 0.01; t <= properties.highestC(); t += 0.01) {
                double now = properties.enthalpy(t);
                // The steepest slope there is: latent heat of all water over the freezing point.
                assertThat(now - before)
                        .as("%s at %s C", food.id(), t)
                        .isPositive()
                        .isLessThan(0.01 * 700_000.0);
                before = now;
            }
        }
    }

    @Test
    void conductivity_and_heat_content_do_not_jump_at_their_kinks() {
        for (Food food : CATALOGUE.foods()) {
            ThermalProperties properties = MODEL.properties(food, 0.93);
            assertThat(properties.kinksC()).containsExactly(food.freezingPointC(), 0.0);
            for (double kinkC : properties.kinksC()) {
                double before = Math.nextDown(kinkC);
                assertThat(properties.conductivity(before)).isCloseTo(properties.conductivity(kinkC), within(1e-9));
                assertThat(properties.enthalpy(before)).isCloseTo(properties.enthalpy(kinkC), within(1e-3));
            }
        }
    }

    @Test
    void conductivity_lies_between_its_bounds_and_falls_when_ice_melts() {
        for (Food food : CATALOGUE.foods()) {
            ThermalProperties properties = MODEL.properties(food, 1.0);
            for (double t = -40.0; t <= 150.0; t += 2.0) {
                assertThat(properties.conductivity(t))
                        .as("%s at %s C", food.id(), t)
                        .isBetween(
                                properties.seriesConductivity(t), properties.parallelConductivity(t) * (1.0 + 1e-12));
            }
            assertThat(properties.conductivity(-18.0)).isGreaterThan(properties.conductivity(0.0));
        }
    }

    @Test
    void the_factor_scales_conductivity_and_nothing_else() {
        ThermalProperties asComputed = MODEL.properties(food("pork-loin"), 1.0);
        ThermalProperties corrected = MODEL.properties(food("pork-loin"), 0.93);

        for (double t : new double[] {-20.0, 5.0, 60.0}) {
            assertThat(corrected.conductivity(t)).isEqualTo(0.93 * asComputed.conductivity(t));
            assertThat(corrected.volumetricEnthalpy(t)).isEqualTo(asComputed.volumetricEnthalpy(t));
        }
    }

    @Test
    void heat_per_volume_uses_the_thawed_density_at_all_temperatures() {
        ThermalProperties salmon = nominal("salmon");

        assertThat(salmon.referenceDensity()).isEqualTo(salmon.density(20.0));
        for (double t : new double[] {-30.0, -5.0, 5.0, 80.0}) {
            assertThat(salmon.volumetricEnthalpy(t)).isEqualTo(salmon.referenceDensity() * salmon.enthalpy(t));
        }
    }

    @Test
    void a_food_whose_water_is_all_bound_does_not_freeze() {
        // Dry chickpeas, USDA SR28 16056: 7.7 % water, of which 20.5 % protein can bind 8.2 %.
        Composition dry = Composition.normalised(0.0768, 0.2047, 0.0604, 0.5075, 0.1220, 0.0285);
        ThermalProperties properties = MODEL.properties(dry, -1.0, 1.0);

        assertThat(properties.iceFraction(-30.0)).isZero();
        assertThat(properties.apparentHeat(-30.0)).isEqualTo(properties.sensibleHeat(-30.0));
    }

    @Test
    void a_temperature_outside_the_polynomials_is_refused() {
        assertThatThrownBy(() -> nominal("cod").conductivity(-40.1))
                .hasMessageStartingWith("temperature -40.1 C is outside -40.0 to 150.0 C");
        assertThatThrownBy(() -> nominal("cod").enthalpy(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> nominal("cod").density(151.0)).hasMessageContaining("Fahrenheit");
        assertThatThrownBy(() -> nominal("cod").seriesConductivity(151.0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> nominal("cod").parallelConductivity(151.0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> nominal("cod").sensibleHeat(151.0)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0, 0.9, -40.0, Double.NaN})
    void a_freezing_point_that_is_none_is_refused(double freezingPointC) {
        Composition x = food("cod").composition();
        assertThatThrownBy(() -> MODEL.properties(x, freezingPointC, 1.0))
                .hasMessageContaining("freezing point " + freezingPointC);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0, -1.0, 93.0, Double.NaN})
    void a_conductivity_factor_that_is_none_is_refused(double factor) {
        Composition x = food("cod").composition();
        assertThatThrownBy(() -> MODEL.properties(x, -1.0, factor))
                .hasMessageContaining("conductivity factor " + factor)
                .hasMessageContaining("percent");
    }
}
