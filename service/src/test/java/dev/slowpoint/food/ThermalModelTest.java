package dev.slowpoint.food;

import static dev.slowpoint.food.ReleasedModel.MODEL;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ThermalModelTest {

    @Test
    void properties_hold_where_all_polynomials_do() {
        // Choi and Okos 1986: -40 to 150 C.
        assertThat(MODEL.lowestC()).isEqualTo(-40.0);
        assertThat(MODEL.highestC()).isEqualTo(150.0);
    }

    @Test
    void water_takes_more_heat_below_zero_than_above() {
        // Choi and Okos 1986 as printed by Ibarz and Barbosa-Canovas: 4176.2 above 0 C and 4081.7 below, where the
        // quadratic term then outweighs that.
        ComponentProperties water = MODEL.components().get(0);

        assertThat(water.component()).isEqualTo(Component.WATER);
        assertThat(water.specificHeatAt(0.0)).isEqualTo(4176.2);
        assertThat(water.specificHeatAt(-10.0)).isCloseTo(4081.7 + 53.062 + 99.516, within(1e-9));
    }

    @Test
    void missing_and_repeated_components_are_refused() {
        List<ComponentProperties> all = new ArrayList<>(MODEL.components());
        List<ComponentProperties> noIce = new ArrayList<>(all);
        noIce.removeIf(each -> each.component() == Component.ICE);
        List<ComponentProperties> waterTwice = new ArrayList<>(all);
        waterTwice.add(all.get(0));

        assertThatThrownBy(() -> new ThermalModel(noIce, MODEL.freezing(), MODEL.bias(), 20.0))
                .hasMessageContaining("ICE are missing");
        assertThatThrownBy(() -> new ThermalModel(waterTwice, MODEL.freezing(), MODEL.bias(), 20.0))
                .hasMessageContaining("WATER were given twice");
    }

    @Test
    void a_density_of_frozen_food_is_refused_as_reference() {
        assertThatThrownBy(() -> new ThermalModel(MODEL.components(), MODEL.freezing(), MODEL.bias(), -1.0))
                .hasMessageContaining("reference temperature -1.0 C");
    }

    @Test
    void a_polynomial_and_its_integral_agree() {
        Polynomial p = new Polynomial(2.0, -3.0, 4.0);

        assertThat(p.at(2.0)).isEqualTo(12.0);
        assertThat(p.integral(2.0)).isCloseTo(2.0 * 2.0 - 1.5 * 4.0 + 4.0 / 3.0 * 8.0, within(1e-12));
        assertThat(p.plus(-1.0, p)).isEqualTo(Polynomial.ZERO);
    }
}
