package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.FoodGroup;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WordsTest {

    private static final List<String> SIZES = List.of("shape", "thicknessMm", "diameterMm");

    @Test
    void constants_are_spelled_in_camel_case() {
        assertThat(Words.of(FoodGroup.EGG_IN_SHELL)).isEqualTo("eggInShell");
        assertThat(Words.of(FoodGroup.PORK)).isEqualTo("pork");
        assertThat(Words.constants(FoodGroup.class)).hasSize(FoodGroup.values().length);
    }

    @ParameterizedTest
    @CsvSource({
        "thickness_mm,thicknessMm",
        "THICKNESSMM,thicknessMm",
        "thickness,thicknessMm",
        "thicknesMm,thicknessMm",
        "diametreMm,diameterMm",
        "shap,shape"
    })
    void the_word_that_was_probably_meant_is_found(String given, String meant) {
        assertThat(Words.nearest(given, SIZES)).contains(meant);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "weight", "__", "colour"})
    void a_word_that_is_far_from_all_gets_no_guess(String given) {
        assertThat(Words.nearest(given, SIZES)).isEmpty();
    }
}
