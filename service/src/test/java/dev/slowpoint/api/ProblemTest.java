package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.ops.Refusing;
import io.restassured.response.Response;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import tools.jackson.databind.JsonNode;

/** Whatever goes wrong, and wherever, is answered as a problem document. */
@ExtendWith(OutputCaptureExtension.class)
class ProblemTest extends HttpTest {

    private static JsonNode problem(Response response, int status, ProblemCode code) {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        assertThat(response.contentType()).isEqualTo(PROBLEM);
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        assertThat(response.header("Content-Length")).isNotNull();
        JsonNode problem = READER.readTree(response.asByteArray());
        assertThat(problem.at("/status").asInt()).isEqualTo(status);
        assertThat(problem.at("/code").asString()).isEqualTo(code.name());
        assertThat(problem.at("/type").asString()).isEqualTo(code.type());
        assertThat(problem.at("/errors").isArray()).isTrue();
        return problem;
    }

    private Response post(String food) {
        return http().contentType(JSON).body(porkWith("pork-loin", food)).post(PLANS);
    }

    @ParameterizedTest
    @CsvSource({
        "GET,/index.html",
        "GET,/v1",
        "GET,/v1/cook-plan",
        "POST,/v1/nothing",
        "GET,/error",
        "GET,/actuator/health"
    })
    void an_unknown_path_is_not_found(String method, String path) {
        problem(http().request(method, path), 404, ProblemCode.NOT_FOUND);
    }

    @Test
    void a_method_that_is_not_allowed_names_those_that_are() {
        Response response = http().get(PLANS);
        problem(response, 405, ProblemCode.METHOD_NOT_ALLOWED);
        assertThat(response.header("Allow")).isEqualTo("POST");
        assertThat(http().delete("/v1/problems").header("Allow")).contains("GET");
    }

    @ParameterizedTest
    @CsvSource({"text/html", "image/png", "application/xml", "nonsense"})
    void an_answer_in_another_representation_is_not_acceptable(String accept) {
        problem(http().contentType(JSON).accept(accept).body(PORK).post(PLANS), 406, ProblemCode.NOT_ACCEPTABLE);
        problem(http().accept(accept).get("/v1/problems"), 406, ProblemCode.NOT_ACCEPTABLE);
    }

    @ParameterizedTest
    @CsvSource({"text/plain", "application/xml", "application/x-www-form-urlencoded", "multipart/form-data", "x/y/z"})
    void a_body_in_another_representation_is_not_supported(String type) {
        RawHttp answer = RawHttp.exchange(
                port,
                "POST /v1/cook-plans HTTP/1.1\r\nHost: a\r\nConnection: close\r\nContent-Type: " + type
                        + "\r\nContent-Length: " + PORK.length() + "\r\n\r\n" + PORK);
        assertThat(answer.status()).isEqualTo(415);
        assertThat(answer.head()).contains(PROBLEM).contains("Accept: application/json, application/cbor");
        assertThat(answer.body()).contains("UNSUPPORTED_MEDIA_TYPE");
    }

    @Test
    void a_body_without_a_type_is_not_supported() {
        RawHttp answer = RawHttp.exchange(
                port, "POST /v1/cook-plans HTTP/1.1\r\nHost: a\r\nConnection: close\r\nContent-Length: 2\r\n\r\n{}");
        assertThat(answer.status()).isEqualTo(415);
        assertThat(answer.head()).contains(PROBLEM);
    }

    @ParameterizedTest
    @CsvSource({
        "application/json;charset=ISO-8859-1",
        "application/json;charset=utf-16",
        "application/cbor;charset=ISO-8859-1"
    })
    void another_charset_is_not_supported(String type) {
        byte[] body = type.startsWith(CBOR) ? cbor(PORK) : PORK.getBytes(StandardCharsets.UTF_8);
        problem(http().header("Content-Type", type).body(body).post(PLANS), 415, ProblemCode.UNSUPPORTED_MEDIA_TYPE);
    }

    @Test
    void utf_8_may_be_named() {
        Response response = http().header("Content-Type", "application/json; charset=\"UTF-8\"")
                .body(PORK.getBytes(StandardCharsets.UTF_8))
                .post(PLANS);
        assertThat(response.statusCode()).isEqualTo(200);
    }

    @Test
    void a_compressed_body_is_not_supported() {
        problem(
                http().header("Content-Encoding", "gzip")
                        .contentType(JSON)
                        .body(new byte[] {31, -117})
                        .post(PLANS),
                415,
                ProblemCode.UNSUPPORTED_MEDIA_TYPE);
    }

    @Test
    void a_body_of_more_than_64_kib_is_too_large() {
        String padded = PORK + " ".repeat(WireConverter.LONGEST_BODY - PORK.length());
        assertThat(http().contentType(JSON).body(padded).post(PLANS).statusCode())
                .isEqualTo(200);
        problem(http().contentType(JSON).body(padded + " ").post(PLANS), 413, ProblemCode.BODY_TOO_LARGE);
        problem(http().contentType(JSON).body(padded.repeat(10)).post(PLANS), 413, ProblemCode.BODY_TOO_LARGE);
    }

    @Test
    void a_body_of_unknown_length_is_counted_while_it_is_read() {
        String chunk = "1000\r\n" + " ".repeat(0x1000) + "\r\n";
        RawHttp answer = RawHttp.exchange(
                port,
                "POST /v1/cook-plans HTTP/1.1\r\nHost: a\r\nConnection: close\r\nContent-Type: application/json\r\n"
                        + "Transfer-Encoding: chunked\r\n\r\n" + chunk.repeat(17) + "0\r\n\r\n");
        assertThat(answer.status()).isEqualTo(413);
        assertThat(answer.body()).contains("BODY_TOO_LARGE");
    }

    @Test
    void an_unknown_query_parameter_is_named() {
        JsonNode problem = problem(
                http().contentType(JSON).body(PORK).post(PLANS + "?inclde=curve&x=1"),
                400,
                ProblemCode.UNKNOWN_PARAMETER);
        assertThat(problem.at("/errors/0/pointer").asString()).isEqualTo("?inclde");
        assertThat(problem.at("/errors/0/hint").asString()).isEqualTo("Maybe include?");
        assertThat(problem.at("/errors/1/pointer").asString()).isEqualTo("?x");
        problem(http().get("/v1/foods?page=2"), 400, ProblemCode.UNKNOWN_PARAMETER);
    }

    @Test
    void an_unknown_detail_is_named_with_those_that_there_are() {
        JsonNode problem = problem(
                http().contentType(JSON).body(PORK).post(PLANS + "?include=curve,curves"),
                400,
                ProblemCode.UNKNOWN_WORD);
        assertThat(problem.at("/errors/0/pointer").asString()).isEqualTo("?include");
        assertThat(problem.at("/errors/0/allowed").toString())
                .isEqualTo("[\"curve\",\"organisms\",\"margins\",\"sources\",\"rules\",\"uncertainty\"]");
        assertThat(problem.at("/errors/0/hint").asString()).isEqualTo("Maybe curve?");
    }

    @Test
    void a_refusal_of_the_planner_is_422_with_its_code() {
        JsonNode problem = problem(post("porc-loin"), 422, ProblemCode.UNKNOWN_FOOD);
        assertThat(problem.at("/errors/0").toString())
                .isEqualTo("{\"pointer\":\"#/food/id\",\"code\":\"UNKNOWN_FOOD\",\"detail\":\"There is no food of"
                        + " this id.\",\"hint\":\"Did you mean pork-loin? All foods stand at /v1/foods.\","
                        + "\"value\":\"porc-loin\"}");
        assertThat(problem.at("/retryable").asBoolean()).isFalse();
    }

    @Test
    void a_refusal_that_the_catalogue_lacks_keeps_its_faults() {
        JsonNode problem = problem(post(TroubledKitchen.UNLISTED_REFUSAL), 422, ProblemCode.REQUEST_REFUSED);
        assertThat(problem.at("/errors/0/code").asString()).isEqualTo("NOT_IN_THE_CATALOGUE");
        assertThat(problem.at("/errors/0/minimum").asDouble()).isEqualTo(54.0);
        assertThat(problem.at("/errors/1/maximum").asDouble()).isEqualTo(20.0);
        assertThat(problem.at("/errors/1/unit").asString()).isEqualTo("Cel");
    }

    @Test
    void a_failure_of_the_service_gives_nothing_away_and_is_found_in_the_log(CapturedOutput output) {
        Response response = post(TroubledKitchen.BUG);
        problem(response, 500, ProblemCode.INTERNAL_ERROR);
        assertThat(response.asString())
                .doesNotContain(TroubledKitchen.SECRET)
                .doesNotContain("Exception")
                .doesNotContain("dev.slowpoint");
        String incident = response.header("Slowpoint-Incident");
        assertThat(incident).hasSize(36);
        // Where it happened and of what kind it was; its words may quote what was asked.
        assertThat(output.getOut())
                .contains(incident, "IllegalStateException", "TroubledKitchen.java")
                .doesNotContain(TroubledKitchen.SECRET);
    }

    @Test
    void the_same_failure_gives_the_same_body() {
        assertThat(post(TroubledKitchen.BUG).asByteArray())
                .isEqualTo(post(TroubledKitchen.BUG).asByteArray());
    }

    @Test
    void a_problem_is_json_even_when_binary_was_asked_for() {
        Response response =
                http().contentType(CBOR).accept(CBOR).body(cbor("{}")).post(PLANS);
        problem(response, 400, ProblemCode.MISSING_FIELD);
    }

    /** Refused by the connector, before any of our code is asked. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "400|GET /v1/problems?x=<> HTTP/1.1~Host: a",
                "400|GET /v1/problems\\x HTTP/1.1~Host: a",
                "400|GET /v1/%zz HTTP/1.1~Host: a",
                "400|GET /v1/../../etc/passwd HTTP/1.1~Host: a",
                "400|GET /v1/%2e%2e%2f HTTP/1.1~Host: a",
                "400|GET /v1/%00 HTTP/1.1~Host: a",
                "400|GET /v1/problems HTTP/1.1",
                "400|GET /v1/problems HTTP/1.1~Host: a~Host: b",
                "400|GET /v1/problems HTTP/1.1~Host: a:b:c",
                "400|GET /v1/problems?%zz=1 HTTP/1.1~Host: a",
                "400|POST /v1/cook-plans HTTP/1.1~Host: a~Content-Length: x",
                "400|POST /v1/cook-plans HTTP/1.1~Host: a~Content-Length: 1~Content-Length: 2",
                "501|POST /v1/cook-plans HTTP/1.1~Host: a~Transfer-Encoding: nonsense",
                "400|nonsense",
                "405|TRACE /v1/problems HTTP/1.1~Host: a",
                "405|BREW /v1/problems HTTP/1.1~Host: a",
                "505|GET /v1/problems HTTP/9.9~Host: a",
            })
    void what_the_container_refuses_is_a_problem_too(int status, String lines) {
        RawHttp answer = RawHttp.exchange(port, lines.replace("~", "\r\n") + "\r\nConnection: close\r\n\r\n");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(status);
        assertThat(answer.head()).contains("Content-Type: " + PROBLEM).doesNotContain("Server:");
        JsonNode problem = READER.readTree(answer.body());
        assertThat(problem.at("/status").asInt()).isEqualTo(status);
        assertThat(problem.at("/code").asString())
                .isEqualTo(ProblemCode.ofStatus(status).name());
    }

    @Test
    void an_address_or_headers_beyond_all_measure_are_a_problem() {
        RawHttp address = RawHttp.exchange(
                port, "GET /" + "a".repeat(20_000) + " HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n");
        assertThat(address.status()).isIn(400, 414);
        assertThat(address.head()).contains(PROBLEM);
        RawHttp headers =
                RawHttp.exchange(port, "GET /v1/problems HTTP/1.1\r\nHost: a\r\nX: " + "a".repeat(20_000) + "\r\n\r\n");
        assertThat(headers.status()).isIn(400, 431);
        assertThat(headers.head()).contains(PROBLEM);
    }

    @ParameterizedTest
    @EnumSource(ProblemCode.class)
    void every_problem_is_explained_at_its_type(ProblemCode code) {
        for (String path : List.of(code.type(), "/v1/problems/" + code.name(), "/v1/problems/" + code.slug())) {
            Response response = http().get(path);
            assertThat(response.statusCode()).isEqualTo(200);
            JsonNode entry = READER.readTree(response.asByteArray());
            assertThat(entry.at("/code").asString()).isEqualTo(code.name());
            assertThat(entry.at("/type").asString()).isEqualTo(code.type());
            assertThat(entry.at("/cause").asString()).endsWith(".");
            assertThat(entry.at("/remedy").asString()).endsWith(".");
        }
    }

    /** What is left unread of a request that was refused must not cost the next one its connection. */
    @Test
    void a_connection_that_is_kept_goes_on_after_a_refusal() throws Exception {
        HttpClient client =
                HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
        for (int i = 0; i < 100; i++) {
            for (String path : List.of("/v1/none", "/v1/foods/none", "/v1/cook-plans?inclde=curve")) {
                HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                        .header("Content-Type", "application/json")
                        .POST(HttpRequest.BodyPublishers.ofString("{}"))
                        .build();
                assertThat(client.send(request, HttpResponse.BodyHandlers.discarding())
                                .statusCode())
                        .as(path)
                        .isBetween(400, 499);
            }
        }
    }

    /** Else the status alone would say what it was. */
    @ParameterizedTest
    @EnumSource(Refusing.class)
    void what_is_refused_before_an_operation_is_a_problem_of_the_contract(Refusing refusing) {
        assertThat(ProblemCode.find(refusing.name())).isPresent();
    }

    @Test
    void only_what_may_pass_later_is_worth_a_retry() {
        assertThat(Arrays.stream(ProblemCode.values()).filter(ProblemCode::retryable))
                .containsExactly(
                        ProblemCode.REQUEST_TIMEOUT,
                        ProblemCode.TOO_MANY_REQUESTS,
                        ProblemCode.OVERLOADED,
                        ProblemCode.OUT_OF_TIME,
                        ProblemCode.ISSUER_UNREACHABLE);
    }
}
