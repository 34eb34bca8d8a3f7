package dev.slowpoint.kit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The list of requirements and the tests of the kit are one and the same. */
class RequirementsTest {

    private static Map<String, String> layersByTag() {
        Map<String, String> tags = new TreeMap<>();
        for (Class<?> layer : ContractKit.LAYERS) {
            for (Method method : layer.getDeclaredMethods()) {
                Tag tag = method.getAnnotation(Tag.class);
                if (tag != null) {
                    String name = layer.getSimpleName().replace("Layer", "").toLowerCase(Locale.ROOT);
                    assertThat(tags.put(tag.value(), name))
                            .as("a second test of " + tag.value())
                            .isNull();
                }
            }
        }
        return tags;
    }

    @Test
    void each_requirement_has_one_test_in_its_layer_or_says_why_it_has_none() {
        Map<String, String> expected = new TreeMap<>();
        Requirement.ALL.values().stream()
                .filter(requirement -> requirement.untestable().isEmpty())
                .forEach(requirement -> expected.put(requirement.id(), requirement.layer()));
        assertThat(layersByTag()).isEqualTo(expected);
    }

    @Test
    void each_requirement_is_a_sentence_with_a_source() {
        Requirement.ALL.values().forEach(requirement -> {
            assertThat(requirement.id()).matches("R-\\d{3}");
            assertThat(requirement.text()).as(requirement.id()).matches("[A-Z/].{15,}[^.]");
            assertThat(requirement.source()).as(requirement.id()).isNotBlank();
        });
        assertThat(new ArrayList<>(Requirement.ALL.keySet())).isSorted();
    }

    private static String run(int code, String... arguments) {
        StringWriter printed = new StringWriter();
        assertThat(ContractKit.run(new PrintWriter(printed), arguments))
                .as(printed.toString())
                .isEqualTo(code);
        return printed.toString();
    }

    @Test
    void the_list_asks_nobody_and_names_all() {
        List<String> lines = run(0, "--list").lines().toList();
        assertThat(lines).hasSameSizeAs(Requirement.ALL.keySet());
        assertThat(run(0, "--list", "--tags", "smoke").lines()).hasSize(4).allMatch(line -> line.contains("smoke"));
        assertThat(run(0, "--list", "--tags", "R-047,golden", "--skip", "should")
                        .lines())
                .map(line -> line.substring(0, 5))
                .containsExactly("R-030", "R-031", "R-032", "R-047");
    }

    @ParameterizedTest
    @CsvSource({
        "'', --base-url is needed",
        "--base-url localhost:8080, --base-url is needed",
        "--base-url http://localhost:8080 --tags smok, smok is no layer",
        "--base-url http://localhost:8080 --operations planDinner, no operation planDinner",
        "--base-url http://localhost:8080 --header X, a colon between them",
        "--base-url http://localhost:8080 --trust nowhere.pem, nowhere.pem",
        "--base-url http://localhost:8080 --rounds many, --rounds"
    })
    void wrong_options_are_told_and_end_with_two(String options, String told) {
        String[] arguments = options.isEmpty() ? new String[0] : options.split(" ", -1);
        assertThat(run(2, arguments)).contains(told);
    }
}
