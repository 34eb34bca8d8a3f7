package dev.slowpoint.parameters;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The released set with one fault put in. */
class BrokenFilesTest {

    private static void load(String file, UnaryOperator<String> fault) {
        ParameterFiles released = ParameterFiles.released("2026.1");
        Map<String, byte[]> files = new HashMap<>();
        for (String name : released.names()) {
            files.put(name, released.bytes(name));
        }
        String text = fault.apply(new String(released.bytes(file), StandardCharsets.UTF_8));
        files.put(file, text.getBytes(StandardCharsets.UTF_8));
        ParameterSet.load(
                ParameterFiles.of("test", files),
                ParameterSet.Status.CURRENT,
                LocalDate.of(2026, 1, 1),
                Optional.empty());
    }

    /** Replaces the first match, and insists that there is one. */
    private static UnaryOperator<String> replacing(String pattern, String by) {
        return text -> {
            Matcher matcher = Pattern.compile(pattern).matcher(text);
            if (!matcher.find()) {
                throw new AssertionError("'" + pattern + "' is not in the file");
            }
            return matcher.replaceFirst(by);
        };
    }

    @Test
    void without_a_fault_it_loads() {
        assertThatCode(() -> load("foods.csv", UnaryOperator.identity())).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "foods.csv; ,fruit,; ,berry,; line 2, column group: holds 'berry'",
                "foods.csv; ,0.8556,; ,85.56,; line 2, column water: holds 85.56",
                "foods.csv; ,0.8556,; ,0.7,; line 2, column ash: the mass fractions up to here add up to 0.8",
                "foods.csv; ,0.8556,; ,-0.1,; line 2, column water: holds -0.1",
                "foods.csv; ,0.8556,; ,,; line 2, column water: must not be empty",
                "foods.csv; ,-1.10,; ,1.10,; line 2, column freezing_point_C: holds 1.1, but must lie below zero",
                "foods.csv; intact; whole; line 2, column forms: holds 'whole'",
                "foods.csv; ,80,85,; ,180,185,; line 2, column doneness_high_C: the range 180.0 to 185.0 C",
                "foods.csv; ,80,85,; ,85,80,; line 2, column doneness_high_C: the range 85.0 to 80.0 C",
                "foods.csv; ,80,85,; ,80,,; line 2, column doneness_high_C: must not be empty",
                "foods.csv; ',no,READ,'; ',no,TOLD,'; line 2, column mark: holds 'TOLD'",
                "foods.csv; ',no,READ,'; ',perhaps,READ,'; line 2, column wild: holds 'perhaps'",
                "foods.csv; artichoke,; apple,; line 3, column id: stands twice",
                "films.csv; ,95,; ,950,; line 2, column typical: low, typical and high must be positive and rise",
                "films.csv; W/\\(m2 K\\); W/(cm2 K); line 2, column unit: must be 'W/(m2 K)'",
                "components.csv; conductivity,protein; viscosity,protein; line 2, column property: holds 'viscosity'",
                "components.csv; W/\\(m K\\); kcal/(m h K); line 2, column unit: must be 'W/(m K)'",
                "components.csv; 0.17881; zero; line 2, column c0: holds 'zero', which is no number",
                "components.csv; conductivity,protein; conductivity,fat; must hold one row of conductivity for PROTEIN",
                "thermal-model.csv; J/kg; kJ/kg; line 3, column unit: must be 'J/kg' for latent_heat",
                "thermal-model.csv; latent_heat; heat; has no value named 'latent_heat'. Maybe one of",
                "thermal-model.csv; 0.93; 1.93; conductivity factors 0.85, 1.93, 1.0 must be positive and rise",
                "defaults.csv; ,bath-pumped,; ,bath-pump,; line 2, column value: is no film of films.csv",
                "defaults.csv; JUDGEMENT; ''; line 2, column mark: must not be empty",
                "defaults.csv; ,FC-COOL,; ,FC-KOOL,; column value: is no cooling rule of limits.csv",
                "sear.csv; ,180,230,260,; ,280,230,260,; line 2, column typical: low, typical and high must be positive",
                "sear.csv; kW/m2; W/cm2; line 4, column unit: must be 'kW/m2'",
                "sear.csv; torch,flux; torch,heat; line 5, column quantity: holds 'heat'",
                "sear.csv; torch,flux; coals,flux; line 5, column method: stands twice with this quantity",
                "sear.csv; torch,flux; flame,flux; sear.csv: no row of FLUX for 'torch'",
                "reheating.csv; serve-at-once; eat-now; line 2, column use: holds 'eat-now'",
                "limits.csv; heat-adaptation-factor; heat-adaptation; column kind: may stand only once"
            })
    void a_fault_is_refused_by_file_line_and_column(String file, String pattern, String by, String complaint) {
        assertThatThrownBy(() -> load(file, replacing(pattern, by)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(complaint);
    }

    /** Gives a row of the limits another mark. */
    private static UnaryOperator<String> marked(String id, String mark) {
        return replacing("(?m)^(" + id + ",.*?),(READ|READ_SECONDARY|JUDGEMENT),", "$1," + mark + ",");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "A-CUT-6H",
                "AU-NSW-6H",
                "GROWTH-CP",
                "A-VEG-GROWTH",
                "FC-COOL-2",
                "S-OPT1-A",
                "AU-VIC-COOL-1",
                "FC-HOLD-HOT",
                "UK-HOT63",
                "FC-ROP-5C",
                "AU-VIC-5D",
                "OWN-KEEP-24H",
                "FC-ROP-FROZEN",
                "X-CBN-1"
            })
    void a_limit_that_was_only_recalled_lets_no_plan_pass(String id) {
        for (String mark : List.of("MEMORY", "MIXED")) {
            assertThatThrownBy(() -> load("limits.csv", marked(id, mark)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("limit " + id)
                    .hasMessageContaining("marked " + mark)
                    .hasMessageContaining("must not decide");
        }
    }

    /** An early warning, and a hot-holding limit that no rule uses. */
    @ParameterizedTest
    @ValueSource(strings = {"SLOW-HEAT-ADAPTED", "DE-BFR-HOT60"})
    void a_limit_that_only_warns_may_be_recalled(String id) {
        UnaryOperator<String> recalled = replacing("(?m)^(" + id + ",.*?),(READ|READ_ABSTRACT),", "$1,MEMORY,");
        assertThatCode(() -> load("limits.csv", recalled)).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @ValueSource(strings = {"A-CUT-6H", "FC-COOL-1", "UK-HOT63", "FC-ROP-5C"})
    void only_what_was_read_itself_stands_in_for_a_rule_that_names_nothing(String id) {
        assertThatThrownBy(() -> load("limits.csv", marked(id, "READ_SECONDARY")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("limit " + id)
                .hasMessageContaining("must not stand in for a rule that names none");
    }

    @Test
    void a_clause_may_be_recalled_since_it_judges_nothing() {
        assertThatCode(() -> load("clauses.csv", replacing(",READ,", ",MEMORY,")))
                .doesNotThrowAnyException();
    }
}
