package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;
import dev.slowpoint.parameters.ParameterSets;
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
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
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

    private static @Nullable JsonNode contract;

    private JsonNode contract() {
        JsonNode kept = contract;
        if (kept == null) {
            kept = READER.readTree(http().get("/openapi.json").asByteArray());
            contract = kept;
        }
        return kept;
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

    /** Who never had to show who they are need not do so now; who is not known must be able to find out why. */
    @Test
    void callers_may_have_to_show_who_they_are_but_for_the_meaning_of_problems() {
        JsonNode contract = contract();
        assertThat(contract.at("/security").toString()).isEqualTo("[{},{\"bearer\":[]}]");
        assertThat(contract.at("/components/securitySchemes/bearer/scheme").asString())
                .isEqualTo("bearer");
        for (JsonNode path : contract.at("/paths")) {
            for (JsonNode operation : path) {
                String name = operation.at("/operationId").asString();
                boolean open = name.equals("explainProblem");
                assertThat(operation.has("security")).as(name).isEqualTo(open);
                for (String status : List.of("401", "403", "429")) {
                    JsonNode response = operation.at("/responses/" + status);
                    assertThat(response.isMissingNode()).as(name + " " + status).isEqualTo(open);
                    if (!open) {
                        assertThat(resolved(response).at("/content").propertyNames())
                                .containsExactly(PROBLEM);
                        assertThat(resolved(response).at("/headers").propertyNames())
                                .contains(status.equals("429") ? "Retry-After" : "WWW-Authenticate");
                    }
                }
            }
        }
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
                        "/v1/parameter-sets/{version}/differences",
                        "/v1/warnings",
                        "/v1/warnings/{code}",
                        "/v1/problems",
                        "/v1/problems/{code}",
                        "/problems/{slug}");
    }

    /** Generated clients are named after them: a name that is published never changes. */
    @Test
    void the_names_of_operations_are_frozen() {
        Map<String, String> names = new TreeMap<>();
        operations()
                .forEach((place, operation) ->
                        names.put(operation.at("/operationId").asString(), place));
        assertThat(names)
                .isEqualTo(new TreeMap<>(Map.ofEntries(
                        Map.entry("planCook", "post /v1/cook-plans"),
                        Map.entry("planChill", "post /v1/chill-plans"),
                        Map.entry("reviewLog", "post /v1/log-reviews"),
                        Map.entry("planAnew", "post /v1/replans"),
                        Map.entry("planWindow", "post /v1/process-windows"),
                        Map.entry("planLoad", "post /v1/load-plans"),
                        Map.entry("planPortions", "post /v1/portion-sheets"),
                        Map.entry("planTable", "post /v1/lookup-tables"),
                        Map.entry("listFoods", "get /v1/foods"),
                        Map.entry("getFood", "get /v1/foods/{id}"),
                        Map.entry("listRules", "get /v1/rules"),
                        Map.entry("getRule", "get /v1/rules/{id}"),
                        Map.entry("listParameterSets", "get /v1/parameter-sets"),
                        Map.entry("getParameterSet", "get /v1/parameter-sets/{version}"),
                        Map.entry("listDifferences", "get /v1/parameter-sets/{version}/differences"),
                        Map.entry("listWarnings", "get /v1/warnings"),
                        Map.entry("getWarning", "get /v1/warnings/{code}"),
                        Map.entry("listProblems", "get /v1/problems"),
                        Map.entry("getProblem", "get /v1/problems/{code}"),
                        Map.entry("explainProblem", "get /problems/{slug}"))));
    }

    /** All operations by method and path. */
    private Map<String, JsonNode> operations() {
        JsonNode paths = contract().at("/paths");
        Map<String, JsonNode> operations = new TreeMap<>();
        for (String path : paths.propertyNames()) {
            for (String method : paths.get(path).propertyNames()) {
                operations.put(method + " " + path, paths.get(path).get(method));
            }
        }
        return operations;
    }

    /** What is wrong with a member of a record, a parameter or a header. */
    private static List<String> gaps(String place, JsonNode property, JsonNode schemas) {
        List<String> gaps = new ArrayList<>();
        JsonNode value = property.has("items") ? property.get("items") : property;
        String type = value.at("/type").asString("");
        if (property.at("/type").asString("").equals("array") && !property.has("maxItems")) {
            gaps.add(place + " has no bound on its items");
        }
        if (value.has("$ref")) {
            if (!schemas.has(value.get("$ref").asString().substring("#/components/schemas/".length()))) {
                gaps.add(place + " refers to nothing");
            }
            return gaps;
        }
        if (List.of("number", "integer").contains(type)) {
            if (!(value.has("minimum") && value.has("maximum") && value.has("format") && value.has("examples"))) {
                gaps.add(place + " has no bounds, format or example");
            }
            for (JsonNode example : value.at("/examples")) {
                if (example.asDouble() < value.at("/minimum").asDouble()
                        || example.asDouble() > value.at("/maximum").asDouble()) {
                    gaps.add(place + " shows what it does not allow");
                }
            }
            if (place.matches(".*(C|K|Mm|S|Log10|Percent|M|L|G|W|Days)") && !value.has("x-unit")) {
                gaps.add(place + " has no unit");
            }
        } else if (type.equals("string")) {
            if (!(value.has("examples") || value.has("enum"))) {
                gaps.add(place + " has no example");
            }
            for (JsonNode example : value.at("/examples")) {
                if (value.has("pattern")
                        && !example.asString().matches(value.at("/pattern").asString())) {
                    gaps.add(place + " shows what it does not allow");
                }
            }
        } else if (!type.equals("boolean")) {
            gaps.add(place + " has no type");
        }
        return gaps;
    }

    @Test
    void every_member_is_described_bounded_and_shown() {
        List<String> gaps = new ArrayList<>();
        JsonNode schemas = contract().at("/components/schemas");
        for (String name : schemas.propertyNames()) {
            JsonNode schema = schemas.get(name);
            if (schema.at("/description").asString("").isEmpty()) {
                gaps.add(name + " has no description");
            }
            for (String member : schema.at("/properties").propertyNames()) {
                JsonNode property = schema.at("/properties").get(member);
                String place = name + "." + member;
                if (property.at("/description").asString("").isEmpty()) {
                    gaps.add(place + " has no description");
                }
                gaps.addAll(gaps(place, property, schemas));
                if (schema.has("additionalProperties")
                        && property.at("/type").asString("").equals("string")
                        && !property.has("enum")
                        && !property.has("maxLength")) {
                    gaps.add(place + " has no bound on its length");
                }
            }
        }
        assertThat(gaps).isEmpty();
    }

    @Test
    void every_parameter_is_described_bounded_and_shown() {
        List<String> gaps = new ArrayList<>();
        JsonNode schemas = contract().at("/components/schemas");
        operations().forEach((place, operation) -> {
            for (JsonNode parameter : operation.at("/parameters")) {
                String name = place + "?" + parameter.at("/name").asString();
                if (parameter.at("/description").asString("").isEmpty()) {
                    gaps.add(name + " has no description");
                }
                gaps.addAll(gaps(name, parameter.get("schema"), schemas));
            }
        });
        assertThat(gaps).isEmpty();
    }

    /** Words of requests are an enumeration of their own and complete; words of answers are open, and say what then. */
    @Test
    void words_of_answers_are_open_and_say_what_an_unknown_one_means() {
        JsonNode schemas = contract().at("/components/schemas");
        int open = 0;
        for (String name : schemas.propertyNames()) {
            JsonNode schema = schemas.get(name);
            for (String member : schema.at("/properties").propertyNames()) {
                JsonNode property = schema.at("/properties").get(member);
                JsonNode value = property.has("items") ? property.get("items") : property;
                String place = name + "." + member;
                if (!schema.has("additionalProperties")) {
                    assertThat(value.has("enum")).as(place).isFalse();
                    assertThat(value.has("$ref") && resolved(value).has("enum"))
                            .as(place)
                            .isFalse();
                }
                String text = property.at("/description").asString();
                if (text.contains("More words may come")) {
                    assertThat(text).as(place).contains("unknown word");
                    open++;
                }
            }
        }
        assertThat(open).isGreaterThan(50);
    }

    /** What decides on safety falls to the safe side where a word is unknown. */
    @ParameterizedTest
    @CsvSource({
        "Safety,verdict,notMet",
        "Safety,band,notMet",
        "SheetSafety,verdict,notMet",
        "SheetSafety,band,notMet",
        "LogReviewAnswer,verdict,notMet",
        "CriticalLimit,met,notMet",
        "ReplanAnswer,decision,discard",
        "LoadPlanAnswer,schedule,apart",
        "Interruption,verdict,discardOrDecide",
        "Keeping,basis,notFitToKeep",
        "Warning,severity,danger",
        "Texture,confidence,low",
        "Origin,mark,memory"
    })
    void an_unknown_word_is_taken_on_the_safe_side(String schema, String member, String word) {
        assertThat(contract()
                        .at("/components/schemas/" + schema + "/properties/" + member + "/description")
                        .asString())
                .contains("reat an unknown word as `" + word + "`");
    }

    @Test
    void every_answer_tells_its_headers_and_what_it_is() {
        JsonNode headers = contract().at("/components/headers");
        Set<String> referred = new HashSet<>();
        operations().forEach((place, operation) -> {
            Set<String> descriptions = new HashSet<>();
            JsonNode responses = operation.at("/responses");
            for (String status : responses.propertyNames()) {
                JsonNode response = resolved(responses.get(status));
                assertThat(descriptions.add(response.at("/description").asString()))
                        .as(place + " " + status)
                        .isTrue();
                assertThat(response.at("/headers").propertyNames())
                        .as(place + " " + status)
                        .contains("Cache-Control", "Vary", "X-Content-Type-Options");
                for (JsonNode header : response.at("/headers")) {
                    String name = header.at("/$ref").asString().substring("#/components/headers/".length());
                    assertThat(headers.has(name)).as(name).isTrue();
                    referred.add(name);
                }
            }
            boolean computed = place.startsWith("post ");
            assertThat(responses.at("/200/headers/Cache-Control/$ref").asString())
                    .as(place)
                    .isEqualTo("#/components/headers/" + (computed ? "NoStore" : "Fresh"));
            assertThat(responses.has("304")).as(place).isEqualTo(!computed);
            assertThat(responses.at("/200/headers").has("ETag")).as(place).isEqualTo(!computed);
            assertThat(operation
                            .at("/parameters")
                            .valueStream()
                            .anyMatch(p -> p.at("/name").asString().equals("If-None-Match")))
                    .as(place)
                    .isEqualTo(!computed);
        });
        assertThat(referred).containsExactlyInAnyOrderElementsOf(headers.propertyNames());
        for (String name : headers.propertyNames()) {
            assertThat(headers.get(name).at("/description").asString(""))
                    .as(name)
                    .isNotEmpty();
            assertThat(gaps(name, headers.get(name).get("schema"), contract().at("/components/schemas")))
                    .isEmpty();
        }
    }

    @Test
    void every_operation_shows_an_answer_and_is_the_same_in_binary() {
        operations().forEach((place, operation) -> {
            JsonNode content = operation.at("/responses/200/content");
            assertThat(content.at("/application~1json/examples")).as(place).isNotEmpty();
            assertThat(content.at("/application~1cbor/schema"))
                    .as(place)
                    .isEqualTo(content.at("/application~1json/schema"));
            if (place.startsWith("post ")) {
                assertThat(operation.at("/requestBody/content/application~1cbor/schema"))
                        .as(place)
                        .isEqualTo(operation.at("/requestBody/content/application~1json/schema"));
            }
            for (String type : content.propertyNames()) {
                if (!type.equals(JSON) && !type.equals(CBOR)) {
                    assertThat(content.get(type).at("/schema/description").asString(""))
                            .as(place + " " + type)
                            .isNotEmpty();
                }
            }
            assertThat(operation.at("/description").asString("")).as(place).isNotEmpty();
        });
    }

    /** The examples of lists show one entry, and that entry is what the list really says of it. */
    @Test
    void the_examples_of_catalogues_are_real() {
        JsonNode paths = contract().at("/paths");
        for (String path : paths.propertyNames()) {
            if (!paths.get(path).has("get") || path.endsWith("}") || path.endsWith("differences")) {
                continue;
            }
            JsonNode shown = paths.get(path).at("/get/responses/200/content/application~1json/examples/shown/value");
            JsonNode real = READER.readTree(http().get(path).asByteArray());
            String list = shown.propertyNames().iterator().next();
            assertThat(real.get(list).valueStream())
                    .as(path)
                    .contains(shown.get(list).get(0));
        }
        assertThat(READER.readTree(http().get("/v1/parameter-sets/2026.1/differences?from=2026.1")
                        .asByteArray()))
                .isEqualTo(
                        paths.at(
                                "/~1v1~1parameter-sets~1{version}~1differences/get/responses/200/content/application~1json/examples/shown/value"));
    }

    /** Limits: the code that keeps them; the figures are those of the tests of each limit. */
    @Test
    void the_text_tells_policy_and_limits() {
        String text = contract().at("/info/description").asString();
        assertThat(text.lines().filter(line -> line.startsWith("## ")))
                .containsExactly(
                        "## Messages",
                        "## Same question, same bytes",
                        "## What may change",
                        "## Problems and retries",
                        "## Who may ask",
                        "## Limits",
                        "## Headers");
        assertThat(text)
                .doesNotContain("{", "}")
                .contains(
                        "may have 64 KiB, that of a log 4 MiB, that of a sheet of portions 12 MiB",
                        "no line longer than 16 KiB",
                        "may lie 20 deep",
                        "may have 8 KiB",
                        "up to 51",
                        "`Deprecation`",
                        "`Sunset`",
                        "`retryable`");
    }

    @Test
    void nothing_of_the_product_is_deprecated_today() {
        assertThat(contract().findValues("deprecated")).isEmpty();
        assertThat(ParameterSets.released().all())
                .allMatch(set -> set.retirement().isEmpty());
        for (JsonNode operation : operations().values()) {
            assertThat(operation.at("/responses/304/headers").has("Sunset")).isFalse();
        }
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
        assertThat(contract()
                        .at("/components/schemas/FoodChoice/properties/group/enum")
                        .toString())
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
        "/v1/parameter-sets/2026.1/differences?from=2026.1,ParameterSetDifferences",
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
