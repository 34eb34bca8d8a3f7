package dev.slowpoint.food;

import static dev.slowpoint.food.ReleasedModel.MODEL;
import static dev.slowpoint.food.ReleasedModel.food;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FoodTest {

    private static Food described(FoodGroup group) {
        return Food.described(
                food("cod").composition(), group, Condition.RAW, Optional.of("white_fish"), MODEL.freezing());
    }

    @Test
    void a_described_food_freezes_like_one_of_the_catalogue_with_the_same_composition() {
        Food fish = described(FoodGroup.FISH);

        assertThat(fish.freezingPointC()).isCloseTo(food("cod").freezingPointC(), within(0.005));
        assertThat(fish.composition()).isEqualTo(food("cod").composition());
        assertThat(fish.textureClass()).contains("white_fish");
        assertThat(fish.condition()).isEqualTo(Condition.RAW);
        assertThat(fish.origins()).extracting(Provenance::mark).containsExactly(Mark.DERIVED);
    }

    @Test
    void a_described_food_is_taken_for_the_riskier_of_what_it_may_be() {
        assertThat(described(FoodGroup.FISH).wild()).isTrue();
        assertThat(described(FoodGroup.BEEF).wild()).isFalse();
        assertThat(described(FoodGroup.BEEF).forms()).containsExactlyInAnyOrder(Form.values());
        assertThat(described(FoodGroup.BEEF).doneness()).isEmpty();
    }

    @Test
    void a_catalogue_finds_foods_lists_them_by_id_and_refuses_doubles() {
        Food cod = food("cod");
        Food apple = food("apple");
        Catalogue catalogue = new Catalogue(List.of(cod, apple));

        assertThat(catalogue.foods()).containsExactly(apple, cod);
        assertThat(catalogue.find("cod")).contains(cod);
        assertThat(catalogue.find("COD")).isEmpty();
        assertThatThrownBy(() -> new Catalogue(List.of(cod, apple, cod)))
                .hasMessageContaining("food 'cod' stands twice");
    }

    @Test
    void a_doneness_range_in_fahrenheit_or_turned_round_is_refused() {
        Provenance origin = new Provenance(Mark.MEMORY, "none");

        assertThatThrownBy(() -> new DonenessRange(130.0, 135.0, origin)).hasMessageContaining("Fahrenheit");
        assertThatThrownBy(() -> new DonenessRange(57.0, 54.0, origin)).hasMessageContaining("57.0 to 54.0");
        assertThatThrownBy(() -> new DonenessRange(20.0, 54.0, origin)).hasMessageContaining("20.0");
    }

    @Test
    void film_coefficients_out_of_order_are_refused() {
        Provenance origin = new Provenance(Mark.MEMORY, "none");

        assertThatThrownBy(() -> new Film("x", "X", 200.0, 100.0, 400.0, origin))
                .hasMessageContaining("'x'");
        assertThatThrownBy(() -> new Film("x", "X", 0.0, 100.0, 400.0, origin)).hasMessageContaining("positive");
        assertThatThrownBy(() -> new Film("x", "X", 50.0, 100.0, 90.0, origin)).hasMessageContaining("rise");
    }
}
