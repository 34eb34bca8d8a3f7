package dev.slowpoint.contract;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.Command;
import dev.slowpoint.started.Tools;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Two public linters find nothing in the contract, and find what is broken in it on purpose. */
class ContractLintIT {

    private static final Path CONTRACT = Path.of("..", "api-spec", "openapi.yaml");
    private static final Path LINT = Path.of("..", "api-spec", "lint");
    private static final YAMLMapper YAML = new YAMLMapper();
    private static final String THICKNESS = "/components/schemas/Geometry/properties/thicknessMm";

    @TempDir
    static Path folder;

    private static String node = "";

    @BeforeAll
    static void installLinters() throws IOException {
        node = Tools.need("node").toString();
        String npm = Tools.need("npm").toString();
        for (String file : List.of("package.json", "package-lock.json", "redocly.yaml", "spectral.yaml")) {
            Files.copy(LINT.resolve(file), folder.resolve(file));
        }
        Command installed = Command.run(
                folder,
                Map.of(),
                List.of(npm, "ci", "--ignore-scripts", "--prefer-offline", "--no-audit", "--no-fund"));
        assertThat(installed.exitCode()).as(installed.output()).isZero();
    }

    @Test
    void nothing_is_found_in_the_contract() throws IOException {
        Path file = folder.resolve("openapi.yaml");
        Files.copy(CONTRACT, file);
        for (Command lint : List.of(redocly(file), spectral(file))) {
            assertThat(lint.exitCode()).as(lint.output()).isZero();
        }
    }

    @Test
    void what_breaks_the_standard_is_refused_by_both() throws IOException {
        JsonNode broken = YAML.readTree(CONTRACT);
        object(broken, THICKNESS).put("exclusiveMinimum", true);
        object(broken, "/components/schemas/Geometry").put("type", "objekt");
        Path file = write(broken, "standard.yaml");

        assertThat(redocly(file)).satisfies(lint -> refused(lint, "struct"));
        assertThat(spectral(file)).satisfies(lint -> refused(lint, "oas3-schema"));
    }

    @Test
    void what_breaks_the_rules_of_the_first_linter_is_refused_by_name() throws IOException {
        JsonNode broken = YAML.readTree(CONTRACT);
        object(broken, THICKNESS).remove("examples");
        object(broken, "/paths/~1v1~1cook-plans/post/responses")
                .remove(List.of("400", "401", "403", "406", "413", "415", "422", "429"));
        object(broken, "/components/responses/Problem503/headers").remove("Retry-After");
        object(broken, "/paths")
                .set("/v1/cookPlans", broken.at("/paths/~1v1~1foods").deepCopy());
        Path file = write(broken, "first.yaml");

        refused(
                redocly(file),
                "scalar-property-missing-example",
                "operation-4xx-response",
                "response-contains-header",
                "paths-kebab-case",
                "operation-operationId-unique");
    }

    @Test
    void what_breaks_the_rules_of_the_house_is_refused_by_name() throws IOException {
        JsonNode broken = YAML.readTree(CONTRACT);
        object(broken, THICKNESS).remove("x-unit");
        object(broken, "/components/schemas/Geometry/properties/massG")
                .put("x-unit", "kg")
                .remove("format");
        object(broken, "/components/schemas/Geometry/properties/widthMm")
                .put("x-unit", "K")
                .remove("description");
        ObjectNode members = object(broken, "/components/schemas/Geometry/properties");
        members.set(
                "wall_thickness",
                broken.at("/components/schemas/Geometry/properties/lengthMm").deepCopy());
        object(broken, "/components/schemas/Pack").putArray("oneOf").addObject().put("type", "object");
        object(broken, "/components/schemas/Start")
                .putArray("type")
                .add("object")
                .add("null");
        object(broken, "/components/schemas/CookPlanAnswer").put("additionalProperties", false);
        object(broken, "/components/schemas/CookPlanRequest").remove("additionalProperties");
        object(broken, "/paths/~1v1~1cook-plans/post/responses").remove(List.of("400", "422"));
        object(broken, "/paths/~1v1~1cook-plans/post")
                .putArray("tags")
                .add("plans")
                .add("catalogues");
        object(broken, "/paths/~1v1~1cook-plans/post/requestBody/content/application~1json")
                .remove("examples");
        object(broken, "/paths")
                .set("/v1/cookPlans", broken.at("/paths/~1v1~1foods").deepCopy());
        Path file = write(broken, "house.yaml");

        refused(
                spectral(file),
                "unit-mm",
                "unit-g",
                "name-of-kelvins",
                "numbers-have-a-format-and-both-bounds",
                "members-are-described",
                "members-in-camel-case",
                "no-unions",
                "one-type",
                "answers-stay-open",
                "requests-are-closed",
                "operations-list-their-problems",
                "posts-list-the-problems-of-bodies",
                "one-tag",
                "bodies-have-an-example",
                "paths-in-kebab-case");
    }

    private static void refused(Command lint, String... rules) {
        assertThat(lint.exitCode()).as(lint.output()).isNotZero();
        assertThat(lint.output()).contains(rules);
    }

    private static Command redocly(Path file) {
        return lint("@redocly/cli/bin/cli.js", "lint", "--config", "redocly.yaml", "--format", "stylish", file);
    }

    private static Command spectral(Path file) {
        return lint(
                "@stoplight/spectral-cli/dist/index.js",
                "lint",
                "--ruleset",
                "spectral.yaml",
                "--fail-severity",
                "warn",
                file);
    }

    private static Command lint(String program, Object... words) {
        List<String> command = new ArrayList<>(List.of(node, "node_modules/" + program));
        for (Object word : words) {
            command.add(word.toString());
        }
        return Command.run(folder, Map.of("REDOCLY_TELEMETRY", "off"), command);
    }

    private static Path write(JsonNode contract, String name) {
        Path file = folder.resolve(name);
        YAML.writeValue(file, contract);
        return file;
    }

    private static ObjectNode object(JsonNode contract, String pointer) {
        return (ObjectNode) contract.at(pointer);
    }
}
