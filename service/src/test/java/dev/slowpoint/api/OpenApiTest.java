package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;
import io.restassured.response.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** The contract is what the service does, and the file that is published is what the service serves. */
class OpenApiTest extends HttpTest {

    static final Path CONTRACT = Path.of("../api-spec/openapi.yaml");
    private static final String PLACE = "https://slowpoint.invalid/openapi.yaml";
    private static final Path EXAMPLES = Path.of("../api-spec/examples");

    private JsonNode contract() {
        return READER.readTree(http().get("/openapi.json").asByteArray());
    }

    private JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? contract().at(node.get("$ref").asString().substring(1)) : node;
    }

    static Schema schema(String name) {
        try {
            Map<String, String> files = Map.of(PLACE, Files.readString(CONTRACT));
            return SchemaRegistry.withDialect(Dialects.getOpenApi31(), registry -> registry.schemas(files))
                    .getSchema(SchemaLocation.of(PLACE + "#/components/schemas/" + name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void assertValid(String name, JsonNode body) {
        assertThat(schema(name).validate(body)).as(body.toString()).isEmpty();
    }

    /** After a change on purpose: {@code mvn -pl service -am test -Dtest=OpenApiTest -Dcontract.write=true}. */
    @Test
    void the_published_contract_is_the_one_that_is_served() throws IOException {
        String served = http().get("/openapi.yaml").asString();
        if (Boolean.getBoolean("contract.write")) {
            Files.writeString(CONTRACT, served);
        }
        assertThat(Files.readString(CONTRACT))
                .as("api-spec/openapi.yaml is not what the service serves. After a change on purpose, write it again:"
                        + " mvn -pl service -am test -Dtest=OpenApiTest -Dcontract.write=true"
                        + " -Dsurefire.failIfNoSpecifiedTests=false")
                .isEqualTo(served);
    }

    @Test
    void the_contract_is_of_version_3_1_and_names_no_host() {
        JsonNode contract = contract();
        assertThat(contract.at("/openapi").asString()).startsWith("3.1");
        assertThat(contract.at("/servers").toString()).contains("\"url\":\"/\"").doesNotContain("localhost");
        assertThat(contract.at("/info/title").asString()).isEqualTo("Slowpoint");
    }

    @Test
    void text_and_yaml_are_the_same_contract() throws IOException {
        assertThat(new YAMLMapper().readTree(http().get("/openapi.yaml").asByteArray()))
                .isEqualTo(contract());
    }

    @Test
    void every_operation_has_a_name_of_its_own_one_tag_and_its_problems() {
        Set<String> names = new HashSet<>();
        for (JsonNode path : contract().at("/paths")) {
            for (JsonNode operation : path) {
                String name = operation.at("/operationId").asString();
                assertThat(names.add(name)).as(name).isTrue();
                assertThat(name).matches("(plan|review|list|get|explain)[A-Z][A-Za-z]+");
                assertThat(operation.at("/tags")).as(name).hasSize(1);
                assertThat(operation.at("/summary").asString()).as(name).isNotEmpty();
                assertThat(operation.at("/responses/200/content").propertyNames())
                        .as(name)
                        .containsExactlyInAnyOrderElementsOf(
                                switch (name) {
                                    case "reviewLog" -> List.of(JSON, CBOR, "text/html;charset=UTF-8");
                                    case "planWindow" -> List.of(JSON, CBOR, "image/svg+xml", "text/csv");
                                    case "planPortions" ->
                                        List.of(JSON, CBOR, "image/svg+xml", "text/csv", "application/x-ndjson");
                                    case "planCook", "planAnew", "planChill", "planLoad" ->
                                        List.of(JSON, CBOR, "image/svg+xml");
                                    case "planTable" -> List.of(JSON, CBOR, "text/csv");
                                    default -> List.of(JSON, CBOR);
                                });
                for (String status : List.of("400", "406", "500", "503")) {
                    JsonNode content =
                            resolved(operation.at("/responses/" + status)).at("/content");
                    assertThat(content.propertyNames()).as(name + " " + status).containsExactly(PROBLEM);
                }
            }
        }
        assertThat(names).contains("planCook", "listFoods", "getProblem");
    }

    @Test
    void every_operation_of_the_service_is_in_the_contract() {
        assertThat(contract().at("/paths").propertyNames())
                .containsExactlyInAnyOrder(
                        "/v1/cook-plans",
                        "/v1/chill-plans",
                        "/v1/log-reviews",
                        "/v1/replans",
                        "/v1/process-windows",
                        "/v1/load-plans",
                        "/v1/portion-sheets",
                        "/v1/lookup-tables",
                        "/v1/foods",
                        "/v1/foods/{id}",
                        "/v1/rules",
                        "/v1/rules/{id}",
                        "/v1/parameter-sets",
                        "/v1/parameter-sets/{version}",
                        "/v1/warnings",
                        "/v1/warnings/{code}",
                        "/v1/problems",
                        "/v1/problems/{code}",
                        "/problems/{slug}");
    }

    @Test
    void every_member_is_described_and_every_number_bounded() {
        List<String> gaps = new ArrayList<>();
        JsonNode schemas = contract().at("/components/schemas");
        for (String name : schemas.propertyNames()) {
            JsonNode schema = schemas.get(name);
            for (String member : schema.at("/properties").propertyNames()) {
                JsonNode property = schema.at("/properties").get(member);
                JsonNode value = property.has("items") ? property.get("items") : property;
                String place = name + "." + member;
                if (property.at("/description").asString("").isEmpty()) {
                    gaps.add(place + " has no description");
                }
                boolean number =
                        List.of("number", "integer").contains(value.at("/type").asString(""));
                if (number && !(value.has("minimum") && value.has("maximum") && value.has("format"))) {
                    gaps.add(place + " has no bounds or format");
                }
                if (number && member.matches(".*(C|K|Mm|S|Log10|Percent|M)") && !value.has("x-unit")) {
                    gaps.add(place + " has no unit");
                }
            }
        }
        assertThat(gaps).isEmpty();
    }

    /** Client generators stumble over unions and nulls. */
    @ParameterizedTest
    @ValueSource(strings = {"oneOf", "anyOf", "allOf", "discriminator", "nullable"})
    void the_contract_has_no_unions_and_no_nulls(String word) {
        assertThat(contract().findValues(word)).isEmpty();
    }

    @Test
    void no_type_is_a_list_of_types() {
        assertThat(contract().findValues("type")).noneMatch(JsonNode::isArray);
    }

    @Test
    void what_is_required_is_what_is_missed() {
        JsonNode required = contract().at("/components/schemas/CookPlanRequest/required");
        List<String> names =
                required.valueStream().map(JsonNode::asString).sorted().toList();
        assertThat(names).containsExactly("food", "geometry", "start", "surroundings");
        JsonNode problem =
                READER.readTree(http().contentType(JSON).body("{}").post(PLANS).asByteArray());
        assertThat(problem.at("/errors")
                        .valueStream()
                        .map(fault -> fault.at("/pointer").asString().substring(2))
                        .sorted()
                        .toList())
                .isEqualTo(names);
    }

    @Test
    void numbers_carry_their_unit_and_bounds_from_the_reader() {
        JsonNode thickness = contract().at("/components/schemas/Geometry/properties/thicknessMm");
        assertThat(thickness.at("/minimum").asDouble()).isEqualTo(3.0);
        assertThat(thickness.at("/maximum").asDouble()).isEqualTo(250.0);
        assertThat(thickness.at("/x-unit").asString()).isEqualTo("mm");
        assertThat(contract().at("/components/schemas/FoodGroup/enum").toString())
                .contains("\"eggInShell\"");
    }

    @ParameterizedTest
    @CsvSource({JSON, CBOR})
    void a_real_plan_keeps_the_contract(String type) {
        Response response = http().contentType(JSON)
                .accept(type)
                .body(PORK)
                .post(PLANS + "?include=curve,organisms,sources,uncertainty");
        assertValid("CookPlanAnswer", tree(response.asByteArray(), type));
    }

    @ParameterizedTest
    @CsvSource({JSON, CBOR})
    void a_real_chill_keeps_the_contract(String type) {
        Response response =
                http().contentType(JSON).accept(type).body(WARM_PORK).post(CHILLS + "?include=curve,sources");
        assertValid("ChillPlanAnswer", tree(response.asByteArray(), type));
    }

    @ParameterizedTest
    @CsvSource({
        "/v1/foods,FoodList",
        "/v1/foods/trout,FoodEntry",
        "/v1/rules,RuleList",
        "/v1/rules/us-fsis-2021,RuleEntry",
        "/v1/rules/FC-COOL,RuleEntry",
        "/v1/parameter-sets,ParameterSetList",
        "/v1/parameter-sets/2026.1,ParameterSetEntry",
        "/v1/warnings,WarningList",
        "/v1/warnings/FROM_FROZEN,WarningEntry",
        "/v1/problems,ProblemList",
        "/problems/not-found,ProblemEntry"
    })
    void a_real_catalogue_keeps_the_contract(String path, String schema) {
        for (String type : List.of(JSON, CBOR)) {
            assertValid(schema, tree(http().accept(type).get(path).asByteArray(), type));
        }
    }

    @Test
    void a_real_problem_keeps_the_contract() {
        String body = porkWith("\"slab\"", "\"slap\"").replace("45", "2").replace("\"temperatureC\":4", "\"x\":1");
        byte[] problem = http().contentType(JSON).body(body).post(PLANS).asByteArray();
        assertValid("Problem", READER.readTree(problem));
        assertValid("Problem", READER.readTree(http().get("/nothing").asByteArray()));
    }

    static Stream<Path> requests() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLES)) {
            return files.filter(file -> file.toString().endsWith(".request.json")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("requests")
    void every_example_keeps_the_contract_and_is_planned(Path file) throws IOException {
        byte[] body = Files.readAllBytes(file);
        String operation = operation(file.getFileName().toString());
        String schema = Map.of(
                        PLANS,
                        "CookPlan",
                        CHILLS,
                        "ChillPlan",
                        LOGS,
                        "LogReview",
                        REPLANS,
                        "Replan",
                        WINDOWS,
                        "ProcessWindow",
                        LOADS,
                        "LoadPlan",
                        SHEETS,
                        "PortionSheet",
                        TABLES,
                        "LookupTable")
                .get(operation);
        assertValid(schema + "Request", READER.readTree(body));
        Response response = http().contentType(JSON).body(body).post(operation);
        assertThat(response.statusCode()).isEqualTo(200);
        assertValid(schema + "Answer", READER.readTree(response.asByteArray()));
        assertThat(new String(body, StandardCharsets.UTF_8)).endsWith("\n");
    }

    @Test
    void the_contract_shows_every_example() throws IOException {
        int shown = 0;
        for (String operation : List.of(PLANS, CHILLS, LOGS, REPLANS, WINDOWS, LOADS, SHEETS, TABLES)) {
            shown += contract()
                    .at("/paths/" + operation.replace("/", "~1")
                            + "/post/requestBody/content/application~1json/examples")
                    .size();
        }
        assertThat(shown).isEqualTo((int) requests().count());
    }

    @Test
    void every_problem_of_the_catalogue_is_an_example_that_keeps_the_contract() {
        Set<String> shown = new HashSet<>();
        for (JsonNode response : contract().at("/components/responses")) {
            JsonNode examples = response.at("/content/application~1problem+json/examples");
            shown.addAll(examples.propertyNames());
            examples.forEach(example -> assertValid("Problem", example.get("value")));
        }
        assertThat(shown).contains("OUT_OF_RANGE", "NOT_FOUND", "UNKNOWN_FOOD", "OVERLOADED");
    }

    @Test
    void the_docs_are_served_and_ask_nobody_outside() {
        Response page = http().redirects().follow(true).get("/docs");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.contentType()).startsWith("text/html");
        assertThat(page.asString()).doesNotContain("http://").doesNotContain("https://");
        String settings = http().get("/docs/openapi/swagger-config").asString();
        assertThat(settings).contains("\"/openapi.yaml\"").doesNotContain("https://");
    }
}
