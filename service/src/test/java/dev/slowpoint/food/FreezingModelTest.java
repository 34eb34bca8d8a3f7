package dev.slowpoint.food;

import static dev.slowpoint.food.ReleasedModel.MODEL;
import static dev.slowpoint.food.ReleasedModel.food;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class FreezingModelTest {

    private static Composition moist(double water) {
        return Composition.normalised(water, 1.0 - water, 0.0, 0.0, 0.0, 0.0);
    }

    // Chang and Tao 1981, meat: 271.18 + 1.47 w [K] (READ_CODE), worked out by hand.
    @ParameterizedTest
    @CsvSource({"0.58, -1.117", "0.70, -0.941", "0.75, -0.867", "0.80, -0.794", "0.85, -0.720", "0.90, -0.647"})
    void meat_freezes_where_chang_and_tao_say(double water, double publishedC) {
        assertThat(MODEL.freezing().freezingPointC(FoodGroup.BEEF, moist(water)))
                .isCloseTo(publishedC, within(0.0005));
    }

    // Chang and Tao 1981, fruit and vegetables: 287.56 - 49.19 w + 37.07 w^2 [K] (READ_CODE), worked out by hand.
    @ParameterizedTest
    @CsvSource({"0.7925, -1.29", "0.7728, -1.47", "0.7605, -1.56", "0.8494, -0.63", "0.8396, -0.76"})
    void plants_freeze_where_chang_and_tao_say(double water, double publishedC) {
        assertThat(MODEL.freezing().freezingPointC(FoodGroup.VEGETABLE, moist(water)))
                .isCloseTo(publishedC, within(0.005));
    }

    // Above 89 % of water that polynomial says above 0 C, which no food does. ASHRAE Refrigeration Handbook, Table 3
    // (READ): asparagus -0.6, cauliflower -0.8, beet -1.1, carrot -1.4 C. So the bound errs by up to 0.8 K.
    @ParameterizedTest
    @CsvSource({"asparagus, -0.6", "cauliflower, -0.8", "beet, -1.1", "carrot, -1.4"})
    void wet_vegetables_freeze_within_a_kelvin_of_measurement(String id, double measuredC) {
        double computedC = MODEL.freezing().freezingPointC(FoodGroup.VEGETABLE, food(id).composition());

        assertThat(computedC).isCloseTo(measuredC, within(0.81)).isLessThanOrEqualTo(-0.6);
    }

    @ParameterizedTest
    @EnumSource(FoodGroup.class)
    void every_food_freezes_below_zero_however_wet_or_dry(FoodGroup group) {
        for (double water = 0.0; water <= 1.0; water += 0.01) {
            assertThat(MODEL.freezing().freezingPointC(group, moist(water))).isBetween(-5.0, -0.4);
        }
    }

    @Test
    void protein_binds_four_tenths_of_its_mass_of_water() {
        assertThat(MODEL.freezing().freezableWater(moist(0.75))).isCloseTo(0.75 - 0.4 * 0.25, within(1e-12));
        assertThat(MODEL.freezing().freezableWater(moist(0.10))).isZero();
    }

    @Test
    void constants_outside_nature_are_refused() {
        Polynomial p = new Polynomial(272.0, 0.0, 0.0);
        assertThatThrownBy(() -> new FreezingModel(-0.1, 333_600.0, p, p, -0.6))
                .hasMessageContaining("bound water -0.1");
        assertThatThrownBy(() -> new FreezingModel(0.4, 333.6, p, p, -0.6)).hasMessageContaining("kJ/kg");
        assertThatThrownBy(() -> new FreezingModel(0.4, 333_600.0, p, p, 0.0)).hasMessageContaining("below zero");
    }
}
