package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.parameters.Deprecation;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.parameters.TestSets;
import io.restassured.response.Response;
import io.swagger.v3.oas.annotations.Hidden;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.context.annotation.Profile;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockServletContext;
import org.springframework.test.context.ActiveProfiles;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.support.AnnotationConfigWebApplicationContext;
import org.springframework.web.servlet.config.annotation.EnableWebMvc;
import tools.jackson.databind.JsonNode;

/**
 * What is deprecated says so in every answer. Nothing of the product is: an operation and a parameter set of the tests
 * are. Forms of the headers: RFC 9745, section 2, and RFC 8594, section 3.
 */
@ActiveProfiles("going")
@Import({DeprecationHttpTest.Retired.class, DeprecationHttpTest.Sets.class})
class DeprecationHttpTest extends HttpTest {

    /** 2027-01-01T00:00:00Z by {@code date -u -d 2027-01-01 +%s}. */
    private static final String SINCE = "@1798761600";

    private static final String SUNSET = "Mon, 01 Jan 2029 00:00:00 GMT";
    private static final String PINNED = "{\"parameterSet\":\"" + TestSets.OLD + "\",";

    /** An answer of the operation that is going. */
    @Schema(name = "RetiredAnswer", description = "An answer.")
    record Word(
            @Schema(description = "A word.", example = "yes")
            String word) {}

    @RestController
    @Profile("going")
    @Tag(name = "catalogues")
    static class Retired {

        @GetMapping(path = "/v1/retired", produces = MediaType.APPLICATION_JSON_VALUE)
        @Operation(operationId = "getRetired", summary = "Get what is going", description = "Gets it.")
        @Retiring(since = "2027-01-01", sunset = "2029-01-01", see = "/docs/going")
        ResponseEntity<Word> get(@RequestParam(name = "as", required = false) @Schema(example = "it") String as) {
            return ResponseEntity.ok(new Word("yes"));
        }

        @PostMapping(
                path = "/v1/retired",
                consumes = MediaType.APPLICATION_JSON_VALUE,
                produces = MediaType.APPLICATION_JSON_VALUE)
        @Hidden
        ResponseEntity<Word> post(@RequestBody Word word) {
            return ResponseEntity.ok(word);
        }
    }

    @TestConfiguration(proxyBeanMethods = false)
    @Profile("going")
    static class Sets {

        @Bean
        @Primary
        ParameterSets setsOfTheTest() {
            return TestSets.withAnOldOne();
        }
    }

    private static void assertGoing(Response answer, String link) {
        assertThat(answer.header("Deprecation")).isEqualTo(SINCE);
        assertThat(answer.header("Sunset")).isEqualTo(SUNSET);
        assertThat(answer.header("Link")).isEqualTo("<" + link + ">; rel=\"deprecation\"");
    }

    private static void assertStaying(Response answer) {
        assertThat(answer.headers().asList())
                .extracting(header -> header.getName())
                .doesNotContain("Deprecation", "Sunset", "Link");
    }

    @Test
    void the_days_in_the_headers_are_those_of_the_calendar() {
        assertThat(Instant.ofEpochSecond(Long.parseLong(SINCE.substring(1))))
                .isEqualTo(Instant.parse("2027-01-01T00:00:00Z"));
        assertThat(ZonedDateTime.parse(SUNSET, DateTimeFormatter.RFC_1123_DATE_TIME))
                .isEqualTo(ZonedDateTime.of(2029, 1, 1, 0, 0, 0, 0, ZoneOffset.UTC));
    }

    @ParameterizedTest
    @CsvSource({
        "/v1/retired, application/json, 200",
        "/v1/retired?what=1, application/json, 400",
        "/v1/retired, application/pdf, 406"
    })
    void every_answer_of_an_operation_that_is_going_says_so(String path, String accept, int status) {
        Response answer = http().accept(accept).get(path);
        assertThat(answer.statusCode()).isEqualTo(status);
        assertGoing(answer, "/docs/going");
    }

    @Test
    void another_operation_at_the_same_path_stays() {
        assertStaying(http().contentType(JSON).body("{\"word\":\"no\"}").post("/v1/retired"));
        assertStaying(http().get("/v1/foods"));
    }

    @Test
    void the_contract_tells_it_and_of_every_answer() {
        JsonNode contract = READER.readTree(http().get("/openapi.json").asByteArray());
        JsonNode going = contract.at("/paths/~1v1~1retired/get");
        assertThat(going.at("/deprecated").asBoolean()).isTrue();
        assertThat(going.at("/description").asString()).contains("2027-01-01", "2029-01-01", "/docs/going");
        assertThat(going.at("/responses"))
                .isNotEmpty()
                .allSatisfy(response ->
                        assertThat(response.at("/headers").propertyNames()).contains("Deprecation", "Sunset", "Link"));
        assertThat(contract.findValues("deprecated")).hasSize(1);
    }

    @Test
    void a_day_of_sunset_before_the_deprecation_stops_the_start() {
        try (AnnotationConfigWebApplicationContext service = new AnnotationConfigWebApplicationContext()) {
            service.setServletContext(new MockServletContext());
            service.getEnvironment().setActiveProfiles("hasty");
            service.register(Web.class, RetiringOperations.class, Hasty.class);
            assertThatThrownBy(service::refresh)
                    .hasMessageContaining("the sunset on 2026-12-31 must not lie before the deprecation on 2027-01-01");
        }
    }

    @TestConfiguration(proxyBeanMethods = false)
    @Profile("hasty")
    @EnableWebMvc
    static class Web {}

    @RestController
    @Profile("hasty")
    static class Hasty {

        @GetMapping("/v1/hasty")
        @Hidden
        @Retiring(since = "2027-01-01", sunset = "2026-12-31", see = "/docs/going")
        ResponseEntity<Word> get() {
            return ResponseEntity.ok(new Word("yes"));
        }
    }

    @Test
    void a_plan_of_a_set_that_is_going_says_so_and_is_the_plan_of_that_set() {
        Response going =
                http().contentType(JSON).body(PORK.replaceFirst("\\{", PINNED)).post(PLANS);
        assertThat(going.statusCode()).as(going.asString()).isEqualTo(200);
        assertGoing(going, "/v1/parameter-sets/2025.9");
        JsonNode plan = READER.readTree(going.asByteArray());
        assertThat(plan.at("/parameterSet").asString()).isEqualTo(TestSets.OLD);
        assertThat(READER.readTree(http().get("/v1/parameter-sets/2025.9").asByteArray())
                        .at("/digest")
                        .asString())
                .startsWith(plan.at("/digest").asString());
    }

    /** The bytes of a pinned set stay what they are; that it is going stands in the headers alone. */
    @Test
    void the_body_is_that_of_the_set_and_knows_nothing_of_its_end() {
        String old = http().contentType(JSON)
                .body(PORK.replaceFirst("\\{", PINNED))
                .post(PLANS)
                .asString();
        assertThat(old).doesNotContainIgnoringCase("deprecat").doesNotContainIgnoringCase("sunset");
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026.1", ""})
    void a_plan_of_the_current_set_says_nothing_of_the_kind(String version) {
        String body = version.isEmpty() ? PORK : PORK.replaceFirst("\\{", "{\"parameterSet\":\"" + version + "\",");
        assertStaying(http().contentType(JSON).body(body).post(PLANS));
    }

    @Test
    void a_refusal_by_a_set_that_is_going_says_so_too() {
        Response refused = http().contentType(JSON)
                .body(PORK.replaceFirst("\\{", PINNED).replace("pork-loin", "artichoke"))
                .post(PLANS);
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(READER.readTree(refused.asByteArray()).at("/code").asString())
                .isEqualTo("UNKNOWN_FOOD");
        assertGoing(refused, "/v1/parameter-sets/2025.9");
    }

    @Test
    void so_do_chills_tables_in_the_query_and_streams() {
        assertGoing(
                http().contentType(JSON)
                        .body(WARM_PORK.replaceFirst("\\{", PINNED))
                        .post(CHILLS),
                "/v1/parameter-sets/2025.9");
        assertGoing(
                http().contentType("text/csv")
                        .body("timeS,temperatureC\n0,60\n60,60\n")
                        .post(LOGS + "?food=pork-loin&place=core&parameterSet=2025.9"),
                "/v1/parameter-sets/2025.9");
        assertGoing(
                http().contentType("application/x-ndjson")
                        .body("{\"parameterSet\":\"2025.9\"}\n".getBytes(StandardCharsets.UTF_8))
                        .post(SHEETS),
                "/v1/parameter-sets/2025.9");
    }

    @Test
    void the_catalogue_of_sets_shows_the_days_and_what_comes_after() {
        JsonNode sets = READER.readTree(http().get("/v1/parameter-sets").asByteArray());
        assertThat(sets.at("/parameterSets/0/version").asString()).isEqualTo("2026.1");
        assertThat(sets.at("/parameterSets/0").propertyNames()).containsExactly("version", "digest", "status");
        JsonNode old = READER.readTree(http().get("/v1/parameter-sets/2025.9").asByteArray());
        assertThat(old).isEqualTo(sets.at("/parameterSets/1"));
        assertThat(old.at("/status").asString()).isEqualTo("deprecated");
        assertThat(old.at("/deprecatedOn").asString()).isEqualTo("2027-01-01");
        assertThat(old.at("/sunsetOn").asString()).isEqualTo("2029-01-01");
        assertThat(old.at("/successor").asString()).isEqualTo("2026.1");
    }

    /** What {@link TestSets#old} does to the released set. */
    @ParameterizedTest
    @ValueSource(strings = {JSON, CBOR})
    void the_differences_of_two_sets_are_told_cell_by_cell(String type) {
        Response answer = http().accept(type).get("/v1/parameter-sets/2026.1/differences?from=2025.9");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.header("ETag")).matches("\"[0-9a-f]{24}\"");
        assertThat(answer.header("Cache-Control")).isEqualTo("max-age=3600");
        JsonNode found = tree(answer.asByteArray(), type);
        assertThat(found.at("/version").asString()).isEqualTo("2026.1");
        assertThat(found.at("/from").asString()).isEqualTo("2025.9");
        assertThat(found.at("/count").asInt()).isEqualTo(3);
        assertThat(found.at("/tables").toString())
                .isEqualTo("[{\"table\":\"films.csv\",\"added\":0,\"removed\":0,\"changed\":0},"
                        + "{\"table\":\"foods.csv\",\"added\":1,\"removed\":1,\"changed\":1}]");
        JsonNode cell = found.at("/differences/0");
        assertThat(cell.at("/table").asString()).isEqualTo("foods.csv");
        assertThat(cell.at("/change").asString()).isEqualTo("changed");
        assertThat(cell.at("/key").asString()).isEqualTo("apple");
        assertThat(cell.at("/column").asString()).isEqualTo("freezing_point_C");
        assertThat(cell.at("/oldValue").asString()).isEqualTo("-1.20");
        assertThat(cell.at("/newValue").asString()).isEqualTo("-1.10");
        assertThat(cell.at("/source").asString()).contains("SR28");
        assertThat(http().accept(type)
                        .header("If-None-Match", answer.header("ETag"))
                        .get("/v1/parameter-sets/2026.1/differences?from=2025.9")
                        .statusCode())
                .isEqualTo(304);
    }

    @Test
    void a_set_does_not_differ_from_itself() {
        JsonNode none = READER.readTree(
                http().get("/v1/parameter-sets/2026.1/differences?from=2026.1").asByteArray());
        assertThat(none.at("/count").asInt()).isZero();
        assertThat(none.at("/tables")).isEmpty();
        assertThat(none.at("/differences")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "2031.1/differences?from=2026.1, 404, NOT_FOUND, ''",
        "2026.1/differences?from=2031.1, 422, UNKNOWN_PARAMETER_SET, ?from",
        "2026.1/differences, 400, MISSING_FIELD, ?from",
        "2026.1/differences?from=2026.1&from=2025.9, 400, DUPLICATE_FIELD, ?from",
        "2026.1/differences?from=%20, 400, WRONG_PATTERN, ?from",
        "2026.1/differences?fom=2026.1, 400, UNKNOWN_PARAMETER, ?fom"
    })
    void sets_that_are_not_there_are_refused_by_name(String path, int status, String code, String pointer) {
        Response refused = http().urlEncodingEnabled(false).get("/v1/parameter-sets/" + path);
        assertThat(refused.statusCode()).isEqualTo(status);
        assertThat(refused.contentType()).isEqualTo(PROBLEM);
        JsonNode problem = READER.readTree(refused.asByteArray());
        assertThat(problem.at("/code").asString()).isEqualTo(code);
        assertThat(problem.at("/errors/0/pointer").asString("")).isEqualTo(pointer);
    }

    @Test
    void two_reasons_give_the_earlier_days_and_both_links() {
        MockHttpServletRequest request = new MockHttpServletRequest();
        MockHttpServletResponse response = new MockHttpServletResponse();
        Deprecation first = new Deprecation(LocalDate.of(2028, 1, 1), Optional.of(LocalDate.of(2029, 1, 1)));
        Deprecation second = new Deprecation(LocalDate.of(2027, 1, 1), Optional.empty());
        for (Deprecation each : List.of(first, second)) {
            DeprecationHeaders.announce(request, response, each, "/" + each.since());
        }
        assertThat(response.getHeaders("Deprecation")).containsExactly(SINCE);
        assertThat(response.getHeaders("Sunset")).containsExactly(SUNSET);
        assertThat(response.getHeaders("Link"))
                .containsExactly("</2028-01-01>; rel=\"deprecation\"", "</2027-01-01>; rel=\"deprecation\"");
    }
}
