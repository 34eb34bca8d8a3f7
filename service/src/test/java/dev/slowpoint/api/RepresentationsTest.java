package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** Each operation answers in every representation that the contract names, and refuses the others by name. */
class RepresentationsTest extends HttpTest {

    private static final String EXAMPLES = "dev.slowpoint.api.ExamplesTest#requests";

    /** Sheets come in these as streams alone, which answer no request in JSON. */
    private static final List<String> STREAMED = List.of("text/csv", "application/x-ndjson");

    private static final int COMPRESSED_FROM = 1024;

    private static String sentTo(Path request) {
        return operation(request.getFileName().toString());
    }

    private List<String> answered(String operation) {
        JsonNode contract = READER.readTree(http().get("/docs/openapi").asByteArray());
        JsonNode content = contract.at("/paths/" + operation.replace("/", "~1") + "/post/responses/200/content");
        assertThat(content).as(operation).isNotEmpty();
        return content.propertyNames().stream()
                .filter(type -> !operation.equals(SHEETS) || !STREAMED.contains(type))
                .toList();
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    void each_representation_of_the_contract_is_served_with_its_length(Path request) throws IOException {
        String body = Files.readString(request);
        String operation = sentTo(request);
        for (String type : answered(operation)) {
            Response answer = http().contentType(JSON).accept(type).body(body).post(operation);
            assertThat(answer.statusCode()).as(type + answer.asString()).isEqualTo(200);
            assertThat(answer.contentType()).isEqualToIgnoringCase(type);
            assertThat(answer.header("Content-Length"))
                    .as(type)
                    .isEqualTo(Integer.toString(answer.asByteArray().length));
        }
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    void each_representation_is_compressed_for_who_accepts_that(Path request) throws IOException {
        String body = Files.readString(request);
        String operation = sentTo(request);
        for (String type : answered(operation)) {
            int length = http().contentType(JSON)
                    .accept(type)
                    .body(body)
                    .post(operation)
                    .asByteArray()
                    .length;
            // The client of the test unpacks by itself and takes the header away, so the wire is looked at.
            String head = RawHttp.exchange(
                            port,
                            "POST " + operation + " HTTP/1.1\r\nHost: localhost\r\nAccept-Encoding: gzip\r\nAccept: "
                                    + type
                                    + "\r\nContent-Type: application/json\r\nContent-Length: "
                                    + body.getBytes(StandardCharsets.UTF_8).length + "\r\nConnection: close\r\n\r\n"
                                    + body)
                    .head()
                    .toLowerCase(Locale.ROOT);
            assertThat(head.contains("content-encoding: gzip")).as(type + head).isEqualTo(length >= COMPRESSED_FROM);
        }
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    void the_same_question_in_binary_gets_the_same_answer(Path request) throws IOException {
        String body = Files.readString(request);
        String operation = sentTo(request);
        JsonNode text = READER.readTree(
                http().contentType(JSON).accept(JSON).body(body).post(operation).asByteArray());
        Response binary = http().contentType(CBOR).accept(JSON).body(cbor(body)).post(operation);
        assertThat(binary.statusCode()).as(binary.asString()).isEqualTo(200);
        assertThat(READER.readTree(binary.asByteArray())).isEqualTo(text);
    }

    @ParameterizedTest
    @MethodSource(EXAMPLES)
    void other_representations_are_refused_by_name(Path request) throws IOException {
        String body = Files.readString(request);
        String operation = sentTo(request);
        Map<Integer, Response> refused = Map.of(
                406,
                        http().contentType(JSON)
                                .accept("application/pdf")
                                .body(body)
                                .post(operation),
                415,
                        http().contentType("application/xml")
                                .accept(JSON)
                                .body(body)
                                .post(operation));
        refused.forEach((status, response) -> {
            assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
            assertThat(response.contentType()).isEqualTo(PROBLEM);
            assertThat(READER.readTree(response.asByteArray()).at("/code").asString())
                    .isEqualTo(status == 406 ? "NOT_ACCEPTABLE" : "UNSUPPORTED_MEDIA_TYPE");
        });
    }
}
