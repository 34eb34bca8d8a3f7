package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.plan.DisplayUnits;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Quantities are shown in the units of the reader, and no limit becomes less safe by that. */
class QuantityTest {

    private static final Notation ENGLISH = Notation.of(Locale.ENGLISH, DisplayUnits.METRIC);
    private static final Notation AMERICAN = Notation.of(Locale.ENGLISH, DisplayUnits.US);
    private static final Notation GERMAN = Notation.of(Locale.GERMAN, DisplayUnits.METRIC);

    /**
     * Both figures as FDA Food Code 2022 prints them (3-202.11, 3-401.11, 3-402.11, 3-501.13, 3-501.14, 3-501.16), FSIS-GD-2021-14
     * (appendix A) and FSIS-GD-2021-13 (stabilisation), and 9 CFR 590.570 for egg (the Celsius figures of the last rounded).
     */
    @ParameterizedTest(name = "{0} C is printed as {1} F")
    @CsvSource({
        "5, 41",
        "21, 70",
        "57, 135",
        "60, 140",
        "63, 145",
        "68, 155",
        "70, 158",
        "74, 165",
        "-20, -4",
        "-35, -31",
        "54.4, 130",
        "57.8, 136",
        "26.7, 80",
        "4.4, 40",
        "10, 50",
        "63.3, 146",
        "62.2, 144"
    })
    @DisplayName("known limits come out as published")
    void published(String celsius, String fahrenheit) {
        assertThat(AMERICAN.quantity(Quantity.of(celsius + " C"), new BigDecimal(celsius)))
                .isEqualTo(fahrenheit + " °F");
        assertThat(AMERICAN.quantity(Quantity.of("{0} C+"), Double.valueOf(celsius)))
                .as("the same as a value that is filled in")
                .isEqualTo(fahrenheit + " °F");
        assertThat(AMERICAN.quantity(Quantity.of("{0} C-"), Double.valueOf(celsius)))
                .isEqualTo(fahrenheit + " °F");
    }

    @ParameterizedTest(name = "<{0}> is {2}")
    @CsvSource({
        "52.3 C+, 52.3, 127 °F",
        "6 C-, 6, 42 °F",
        "6 C-#, 6, 42",
        "83 C+, 83, 182 °F",
        "38 C+, 38, 101 °F",
        "{0} C+, 58.5, 138 °F",
        "{0} C-, 58.5, 137 °F"
    })
    @DisplayName("other limits are rounded to the safe side")
    void safe_side(String written, double celsius, String said) {
        assertThat(AMERICAN.quantity(Quantity.of(written), celsius)).isEqualTo(said);
    }

    @ParameterizedTest(name = "<{0}> of {1} is {2}, or {3}")
    @CsvSource({
        "{0} C~, 57, 57 °C, 134.6 °F",
        "{0} C~, 54.44, 54.44 °C, 130 °F",
        "{0} C~#, -1.8, -1.8, 28.8",
        "{0} K, 0.5, 0.5 K, 0.9 °F",
        "{0} mm, 45, 45 mm, 1.77 in",
        "{0} mm, 0.5, 0.5 mm, 0.02 in",
        "{0} m, 1800, '1,800 m', '5,906 ft'",
        "{0} g, 450, 450 g, 15.9 oz"
    })
    @DisplayName("what was measured or computed is converted, not replaced")
    void measured(String written, double amount, String metric, String us) {
        assertThat(ENGLISH.quantity(Quantity.of(written), amount)).isEqualTo(metric);
        assertThat(AMERICAN.quantity(Quantity.of(written), amount)).isEqualTo(us);
    }

    @ParameterizedTest
    @ValueSource(strings = {"52.3 C", "83 C", "{0} C", "54.4", "54.4 F", "54,4 C", "x C", "54.4 C!", "{10} C"})
    @DisplayName("a limit that does not say which way to round, and all else, is refused")
    void refused(String written) {
        assertThatThrownBy(() -> Quantity.of(written)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    @DisplayName(
            "every limit in the bundle is at most its published half degree from its conversion, or on the safe side")
    void limits_of_the_bundle() {
        Matcher matcher = Pattern.compile("<((-?[0-9.]+) C([+-]?)#?)>")
                .matcher(String.join("\n", Languages.read(Locale.ENGLISH).values()));
        Set<String> limits = new TreeSet<>();
        while (matcher.find()) {
            limits.add(matcher.group(1));
            double exact = 32.0 + 1.8 * Double.parseDouble(matcher.group(2));
            double shown = Quantity.of(matcher.group(1))
                    .us(new BigDecimal(matcher.group(2)))
                    .doubleValue();
            assertThat(shown).as(matcher.group()).isBetween(exact - 1.0, exact + 1.0);
            if (matcher.group(3).equals("+")) {
                assertThat(shown).as(matcher.group()).isGreaterThanOrEqualTo(exact);
            } else if (matcher.group(3).equals("-")) {
                assertThat(shown).as(matcher.group()).isLessThanOrEqualTo(exact);
            } else {
                assertThat(shown).as(matcher.group()).isBetween(exact - 0.41, exact + 0.41);
            }
        }
        assertThat(limits).contains("54.4 C", "57 C#", "21 C", "5 C", "74 C", "52.3 C+");
    }

    @Test
    @DisplayName("a language writes numbers its own way")
    void numbers() {
        assertThat(ENGLISH.number(1234567.8915)).isEqualTo("1,234,567.892");
        assertThat(GERMAN.number(1234567.8915)).isEqualTo("1\u00a0234\u00a0567,892");
        assertThat(GERMAN.number(-0.25)).isEqualTo("-0,25");
        assertThat(GERMAN.number(60.0)).isEqualTo("60");
        assertThat(ENGLISH.number(100)).isEqualTo("100");
        assertThat(ENGLISH.number(-0.0001)).isEqualTo("0");
        assertThat(GERMAN.quantity(Quantity.of("54.4 C"), new BigDecimal("54.4")))
                .isEqualTo("54,4 °C");
    }

    @Test
    @DisplayName("a sentence shows its quantities, values and signs")
    void sentence() {
        Wording wording = Wording.of("L'eau: {0} h, de <10 C#> à <54.4 C>, puis <{1} C~>, 'et' <{2} K>");
        assertThat(wording.said(List.of(2.5, 57.0, 0.5), GERMAN))
                .isEqualTo("L'eau: 2,5 h, de 10 à 54,4 °C, puis 57 °C, 'et' 0,5 K");
        assertThat(wording.said(List.of(2.5, 57.0, 0.5), AMERICAN))
                .isEqualTo("L'eau: 2.5 h, de 50 à 130 °F, puis 134.6 °F, 'et' 0.9 °F");
        assertThat(wording.open(AMERICAN)).isEqualTo("L'eau: {0} h, de 50 à 130 °F, puis {1} °F, 'et' {2} °F");
    }
}
