package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import dev.slowpoint.api.RawHttp;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import tools.jackson.databind.JsonNode;

/** Only those with a key are answered, only as often as they may, and all others learn nothing. */
@DirtiesContext
class KeysHttpTest extends HttpTest {

    private static final String KITCHEN = Keys.key(11);
    private static final String HUT = Keys.key(12);
    private static final String EXPIRED = Keys.key(13);

    @DynamicPropertySource
    static void keys(DynamicPropertyRegistry properties) {
        try {
            Path file = Files.writeString(
                    Files.createTempFile("keys", ".csv"),
                    Keys.file(
                            Keys.line("kitchen", KITCHEN, "1000,10000,16,,"),
                            Keys.line("hut", HUT, "0.1,20,2,,"),
                            Keys.line("old", EXPIRED, "5,20,2,,2026-01-01")));
            file.toFile().deleteOnExit();
            properties.add("slowpoint.access.mode", () -> "keys");
            properties.add("slowpoint.access.keys-file", file::toString);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private RequestSpecification as(String key) {
        return http().header("Authorization", "Bearer " + key);
    }

    private JsonNode refused(Response response, int status, String code) {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        assertThat(response.contentType()).isEqualTo(PROBLEM);
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        assertThat(response.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(response.header("Vary")).contains("Accept-Language");
        assertThat(response.header("Content-Length")).isNotNull();
        assertThat(response.header("Set-Cookie")).isNull();
        JsonNode problem = READER.readTree(response.asByteArray());
        assertThat(problem.at("/code").asString()).isEqualTo(code);
        assertThat(problem.at("/status").asInt()).isEqualTo(status);
        return problem;
    }

    @Test
    void with_a_key_a_plan_is_answered() {
        assertThat(as(KITCHEN).contentType(JSON).body(PORK).post(PLANS).statusCode())
                .isEqualTo(200);
        assertThat(http().header("Authorization", "bearer  " + KITCHEN)
                        .get("/v1/foods")
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void without_one_nothing_is_and_the_answer_is_the_same_whatever_was_wrong() {
        Response none = http().contentType(JSON).body(PORK).post(PLANS);
        refused(none, 401, "UNAUTHENTICATED");
        assertThat(none.header("WWW-Authenticate")).isEqualTo("Bearer realm=\"slowpoint\"");
        byte[] body = none.asByteArray();
        String unknown = Keys.key(99);
        for (String shown : List.of(
                "Bearer " + unknown,
                "Bearer " + EXPIRED,
                "Bearer " + KITCHEN + "x",
                "Bearer " + KITCHEN.substring(0, KITCHEN.length() - 1),
                "Bearer " + Keys.hash(KITCHEN),
                "Bearer",
                "Bearer ",
                "Bearer a b",
                "Basic a2l0Y2hlbjp4",
                KITCHEN,
                "Bearer " + "a".repeat(6000))) {
            Response response = http().header("Authorization", shown)
                    .contentType(JSON)
                    .body(PORK)
                    .post(PLANS);
            refused(response, 401, "UNAUTHENTICATED");
            assertThat(response.asByteArray()).isEqualTo(body);
            assertThat(response.header("WWW-Authenticate"))
                    .isEqualTo("Bearer realm=\"slowpoint\", error=\"invalid_token\"");
        }
    }

    @Test
    void two_credentials_are_none() {
        RawHttp answer = RawHttp.exchange(
                port,
                "GET /v1/foods HTTP/1.1\r\nHost: a\r\nConnection: close\r\nAuthorization: Bearer " + KITCHEN
                        + "\r\nAuthorization: Bearer " + KITCHEN + "\r\n\r\n");
        assertThat(answer.status()).isEqualTo(401);
    }

    @Test
    void the_problem_is_told_in_the_language_that_was_asked_for() {
        JsonNode problem = refused(http().header("Accept-Language", "de").get("/v1/foods"), 401, "UNAUTHENTICATED");
        assertThat(problem.at("/title").asString()).isEqualTo("Nicht bekannt");
        assertThat(http().header("Accept-Language", "de").get("/v1/foods").header("Content-Language"))
                .isEqualTo("de");
    }

    @ParameterizedTest
    @ValueSource(strings = {"HEAD", "OPTIONS", "PUT", "PATCH", "DELETE", "POST"})
    void every_method_needs_a_key(String method) {
        Response response = http().request(method, "/v1/foods");
        assertThat(response.statusCode()).isEqualTo(401);
        assertThat(response.header("WWW-Authenticate")).startsWith("Bearer");
    }

    /** Whatever is not known to be open is closed, however it is written, whether it is there or not. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/trial/../v1/foods",
                "/trial/",
                "/v1",
                "/v1/foods",
                "/v1/nothing",
                "/v1/problems",
                "/V1/foods",
                "//v1/foods",
                "/v1//foods",
                "/%761/foods",
                "/v1/./foods",
                "/docs/../v1/foods",
                "/docs/..;/v1/foods",
                "/docs/%2e%2e/v1/foods",
                "/docs;/../v1/foods",
                "/livez/../v1/foods",
                "/livez;/v1/foods",
                "/problems/../v1/foods",
                "/problems/x/../../v1/foods",
                "/v1/foods;x=/docs",
                "/v1/foods?/docs",
                "/v1/foods#/docs",
                "/actuator/health",
                "/error",
                "/livez/",
                "/readyz.json",
                "/openapi.yaml/",
                "/problems/",
                "/docs/.env"
            })
    void every_other_path_needs_a_key(String path) {
        RawHttp answer = RawHttp.exchange(port, "GET " + path + " HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n");
        assertThat(answer.status()).as(answer.toString()).isIn(400, 401);
        assertThat(answer.body()).doesNotContain("pork-loin");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/?language=de",
                "/trial/page.js",
                "/livez",
                "/readyz",
                "/openapi.yaml",
                "/openapi.json",
                "/problems/unauthenticated"
            })
    void pages_probes_contract_and_problems_are_open(String path) {
        assertThat(http().get(path).statusCode()).isEqualTo(200);
        assertThat(http().header("Authorization", "Bearer x").get(path).statusCode())
                .isEqualTo(200);
    }

    @Test
    void the_documentation_is_open() {
        Response page = http().redirects().follow(true).get("/docs");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.contentType()).startsWith("text/html");
    }

    @Test
    void whoever_asks_more_than_they_may_is_told_when_to_come_again() {
        int through = 0;
        Response last = as(HUT).get("/v1/foods");
        while (last.statusCode() == 200 && through < 40) {
            through++;
            last = as(HUT).get("/v1/foods");
        }
        assertThat(through).isBetween(18, 22);
        JsonNode problem = refused(last, 429, "TOO_MANY_REQUESTS");
        assertThat(problem.at("/retryable").asBoolean()).isTrue();
        assertThat(last.header("Retry-After")).matches("[1-9]|10");
        assertThat(as(KITCHEN).get("/v1/foods").statusCode())
                .as("others are not touched")
                .isEqualTo(200);
        assertThat(http().get("/livez").statusCode()).isEqualTo(200);
    }

    @Test
    void a_page_of_another_site_is_told_nothing() {
        for (String key : List.of(KITCHEN, "x")) {
            Response asked = as(key).header("Origin", "https://site.example").get("/v1/foods");
            Response preflight = as(key).header("Origin", "https://site.example")
                    .header("Access-Control-Request-Method", "POST")
                    .header("Access-Control-Request-Headers", "authorization,content-type")
                    .options(PLANS);
            for (Response response : List.of(asked, preflight)) {
                assertThat(response.headers().asList())
                        .noneMatch(header -> header.getName().startsWith("Access-Control-"));
            }
        }
    }

    @Test
    void operators_see_why_and_who_without_anything_that_callers_sent() {
        as(KITCHEN).get("/v1/foods");
        as(Keys.key(98)).get("/v1/foods");
        as(EXPIRED).get("/v1/foods");
        http().get("/v1/foods");
        as("xyzzy").get("/v1/foods");
        String scrape = RestAssured.given()
                .port(managementPort)
                .get("/actuator/prometheus")
                .asString();
        for (String start : List.of(
                "slowpoint_refused_total{application=\"slowpoint\",code=\"UNAUTHENTICATED\"}",
                "slowpoint_access_not_known_total{application=\"slowpoint\",reason=\"missing\"}",
                "slowpoint_access_not_known_total{application=\"slowpoint\",reason=\"malformed\"}",
                "slowpoint_access_not_known_total{application=\"slowpoint\",reason=\"unknown\"}",
                "slowpoint_access_not_known_total{application=\"slowpoint\",reason=\"not-now\"}",
                "slowpoint_client_requests_total{application=\"slowpoint\",client=\"kitchen\",outcome=\"taken\"}",
                "slowpoint_access_reload_failed_total{",
                "slowpoint_access_keys{")) {
            assertThat(scrape.lines()).as(start).anyMatch(line -> line.startsWith(start));
        }
        assertThat(scrape).doesNotContain("xyzzy").doesNotContain(KITCHEN).doesNotContain(Keys.hash(KITCHEN));
        assertThat(scrape.lines()).anyMatch(line -> line.startsWith("slowpoint_access_keys{") && line.endsWith(" 2.0"));
    }

    /** The management port has no guard of its own: it is closed by the network (the guide says how). */
    @ParameterizedTest
    @CsvSource({"/actuator/health,200", "/actuator/prometheus,200", "/v1/foods,404"})
    void the_management_port_shows_its_own_and_nothing_else(String path, int status) {
        assertThat(RestAssured.given().port(managementPort).get(path).statusCode())
                .isEqualTo(status);
    }
}
