package dev.slowpoint.kit.layers;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Contract.Example;
import dev.slowpoint.kit.Contract.Operation;
import dev.slowpoint.kit.Kit;
import dev.slowpoint.kit.RawAsk;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Whether the subject keeps to HTTP, so that clients, proxies and caches in between can rely on it. */
@ExtendWith(Kit.class)
@DisplayNameGeneration(Kit.Names.class)
public class HttpLayer {

    private static final String COMPUTING = "dev.slowpoint.kit.layers.Examples#computing";
    private static final String CATALOGUES = "dev.slowpoint.kit.layers.Examples#catalogues";
    private static final String LISTS = "dev.slowpoint.kit.layers.Examples#lists";
    private static final int SHORT_PLAN = 2048;

    private final Subject subject;

    HttpLayer(Subject subject) {
        this.subject = subject;
    }

    private Answer ask(Operation operation) {
        subject.offers(operation.id());
        return operation.reads()
                ? subject.post(operation.path())
                        .body(Wire.JSON, Examples.shortest(operation).request())
                        .send()
                        .expect(200)
                : subject.get(first(operation))
                        .accept(Wire.JSON.mediaType())
                        .send()
                        .expect(200);
    }

    private String first(Operation operation) {
        subject.offers(operation.id());
        return Catalogues.paths(subject, operation).get(0);
    }

    @ParameterizedTest
    @MethodSource(COMPUTING)
    @Tag("R-070")
    void otherMethods(Operation operation) {
        subject.offers(operation.id());
        for (String method : List.of("GET", "DELETE", "PUT", "PATCH")) {
            Answer answer = subject.ask(method, operation.path())
                    .accept(Wire.JSON.mediaType())
                    .send()
                    .refused(405);
            assertThat(answer.header("Allow").orElse("")).as("Allow").contains("POST");
        }
    }

    @ParameterizedTest
    @MethodSource(CATALOGUES)
    @Tag("R-071")
    void otherMethodsOnCatalogues(Operation operation) {
        String path = first(operation);
        for (String method : List.of("POST", "DELETE", "PUT")) {
            Answer answer = subject.ask(method, path)
                    .body(Wire.JSON.mediaType(), "{}")
                    .send()
                    .refused(405);
            assertThat(answer.header("Allow").orElse("")).as("Allow").contains("GET");
        }
    }

    @ParameterizedTest
    @MethodSource(COMPUTING)
    @Tag("R-072")
    void otherRepresentations(Operation operation) {
        subject.offers(operation.id());
        subject.post(operation.path())
                .accept("application/x-nothing")
                .body(Wire.JSON, Examples.shortest(operation).request())
                .send()
                .refused(406);
    }

    @ParameterizedTest
    @MethodSource(COMPUTING)
    @Tag("R-073")
    void otherBodies(Operation operation) {
        subject.offers(operation.id());
        String request = Examples.shortest(operation).request().toString();
        for (String type : List.of("text/plain", "application/xml", "application/x-nothing")) {
            subject.post(operation.path())
                    .accept(Wire.JSON.mediaType())
                    .body(type, request)
                    .send()
                    .refused(415);
        }
    }

    @ParameterizedTest
    @MethodSource(CATALOGUES)
    @Tag("R-074")
    void heads(Operation operation) {
        String path = first(operation);
        Answer whole = subject.get(path).accept(Wire.JSON.mediaType()).send().expect(200);
        Answer head =
                subject.ask("HEAD", path).accept(Wire.JSON.mediaType()).send().expect(200);
        assertThat(head.bytes()).as("bytes of the body").isEmpty();
        for (String name : List.of("Content-Type", "Content-Length", "ETag", "Cache-Control")) {
            assertThat(head.header(name)).as(name).isEqualTo(whole.header(name));
        }
    }

    @ParameterizedTest
    @MethodSource(CATALOGUES)
    @Tag("R-075")
    void conditions(Operation operation) {
        String path = first(operation);
        Answer whole = subject.get(path).accept(Wire.JSON.mediaType()).send().expect(200);
        String tag = whole.header("ETag").orElseThrow(() -> new AssertionError("There is no ETag"));
        assertThat(tag).as("a strong validator").startsWith("\"").endsWith("\"");
        assertThat(whole.header("Cache-Control").orElse("")).contains("max-age=");
        for (String known : List.of(tag, "\"another\", " + tag, "*")) {
            Answer answer = subject.get(path)
                    .accept(Wire.JSON.mediaType())
                    .header("If-None-Match", known)
                    .send()
                    .expect(304);
            assertThat(answer.bytes()).as("bytes of the body").isEmpty();
            assertThat(answer.header("ETag")).hasValue(tag);
        }
        subject.get(path)
                .accept(Wire.JSON.mediaType())
                .header("If-None-Match", "\"another\"")
                .send()
                .expect(200);
    }

    @ParameterizedTest
    @MethodSource(COMPUTING)
    @Tag("R-076")
    void notStored(Operation operation) {
        Answer answer = ask(operation);
        assertThat(answer.header("Cache-Control")).as("Cache-Control").hasValue("no-store");
        assertThat(answer.header("ETag")).as("ETag").isEmpty();
    }

    @ParameterizedTest
    @MethodSource(COMPUTING)
    @Tag("R-077")
    void conditionsOnPlans(Operation operation) {
        subject.offers(operation.id());
        subject.post(operation.path())
                .header("If-None-Match", "*")
                .body(Wire.JSON, Examples.shortest(operation).request())
                .send()
                .expect(200);
    }

    @ParameterizedTest
    @MethodSource("dev.slowpoint.kit.layers.Examples#all")
    @Tag("R-078")
    void compressed(Example example) throws IOException {
        subject.offers(example.operation().id());
        Answer plain = subject.post(example.operation().path())
                .body(Wire.JSON, example.request())
                .send()
                .expect(200);
        Answer answer = subject.post(example.operation().path())
                .header("Accept-Encoding", "gzip")
                .body(Wire.JSON, example.request())
                .send()
                .expect(200);
        if (answer.header("Content-Encoding").orElse("").equals("gzip")) {
            try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(answer.bytes()))) {
                assertThat(in.readAllBytes()).as("what was compressed").isEqualTo(plain.bytes());
            }
            assertThat(answer.header("Vary").orElse("").toLowerCase(Locale.ROOT))
                    .as("Vary")
                    .contains("accept-encoding");
        } else {
            assertThat(answer.bytes()).isEqualTo(plain.bytes());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"/v1", "/v1/nothing", "/v1/foods/no-such-food", "/v1/problems/NO_SUCH", "/nothing"})
    @Tag("R-079")
    void notFound(String path) {
        subject.get(path).accept(Wire.JSON.mediaType()).send().refused(404);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/foods/%",
                "/v1/foods/%zz",
                "/v1/foods/%00",
                "/v1/foods/..%2f..%2fetc",
                "/v1/foods/%c0%af",
                "/v1/foods?units=%ff%fe",
                "/v1/foods;a=b",
                "//v1//foods"
            })
    @Tag("R-080")
    void crookedPaths(String path) throws IOException {
        String answer = RawAsk.exchange(subject, "GET", subject.address().getRawPath() + path);
        assertThat(answer).as("status line").matches("(?s)HTTP/1\\.1 (2|3|4)\\d\\d.*");
        if (answer.startsWith("HTTP/1.1 4")) {
            assertThat(answer.toLowerCase(Locale.ROOT)).contains("content-type: " + Answer.PROBLEM);
        }
    }

    @ParameterizedTest
    @MethodSource(COMPUTING)
    @Tag("R-081")
    void lengths(Operation operation) {
        Answer answer = ask(operation);
        assertThat(answer.header("Content-Length"))
                .as("Content-Length")
                .hasValue(Integer.toString(answer.bytes().length));
    }

    @Test
    @Tag("R-082")
    void charset() {
        subject.offers("planCook");
        String request = Examples.cookPlan().request().toString();
        subject.post("/v1/cook-plans")
                .body("application/json;charset=utf-8", request)
                .send()
                .expect(200);
        subject.post("/v1/cook-plans")
                .accept(Wire.JSON.mediaType())
                .body("application/json;charset=utf-16", request)
                .send()
                .refused(415);
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "fr", "es"})
    @Tag("R-083")
    void languages(String language) {
        subject.offers("planCook");
        JsonNode request = Examples.cookPlan().request();
        JsonNode english =
                subject.post("/v1/cook-plans").body(Wire.JSON, request).send().tree();
        Answer answer = subject.post("/v1/cook-plans")
                .header("Accept-Language", language)
                .body(Wire.JSON, request)
                .send()
                .expect(200);
        assertThat(answer.header("Content-Language")).hasValue(language);
        assertThat(answer.header("Vary").orElse("").toLowerCase(Locale.ROOT)).contains("accept-language");
        assertThat(otherThanText(english, answer.tree()))
                .as("what differs and is no text")
                .isEmpty();
    }

    @Test
    @Tag("R-084")
    void units() {
        subject.offers("planCook");
        JsonNode request = Examples.cookPlan().request();
        JsonNode metric =
                subject.post("/v1/cook-plans").body(Wire.JSON, request).send().tree();
        JsonNode us = subject.post("/v1/cook-plans")
                .query("units", "us")
                .body(Wire.JSON, request)
                .send()
                .expect(200)
                .tree();
        assertThat(otherThanText(metric, us)).as("what differs and is no text").isEmpty();
    }

    private static List<String> otherThanText(JsonNode one, JsonNode other) {
        List<String> texts = List.of("/text", "/noTakeOutReason", "/setpointReason", "/detail", "/title", "/hint");
        return Trees.difference(one, other, "").stream()
                .filter(miss -> texts.stream().noneMatch(text -> miss.split(":", 2)[0].endsWith(text)))
                .toList();
    }

    @Test
    @Tag("R-085")
    void shortPlans() {
        subject.offers("planCook");
        for (Example example : Examples.all()
                .filter(shown -> shown.operation().id().equals("planCook"))
                .filter(shown -> !shown.request().has("then"))
                .toList()) {
            Answer answer = subject.post("/v1/cook-plans")
                    .body(Wire.JSON, example.request())
                    .send()
                    .expect(200);
            assertThat(answer.bytes().length).as(example.name()).isLessThan(SHORT_PLAN);
        }
    }

    @ParameterizedTest
    @MethodSource(COMPUTING)
    @Tag("R-086")
    void sameBytes(Operation operation) {
        byte[] first = ask(operation).bytes();
        for (int again = 0; again < 3; again++) {
            assertThat(ask(operation).bytes()).as("bytes of the same question").isEqualTo(first);
        }
    }

    @ParameterizedTest
    @MethodSource("dev.slowpoint.kit.layers.NegativeLayer#operations")
    @Tag("R-087")
    void deprecation(Operation operation) {
        Answer answer = ask(operation);
        Optional<String> deprecated = answer.header("Deprecation");
        Optional<String> sunset = answer.header("Sunset");
        deprecated.ifPresent(
                date -> assertThat(date).as("Deprecation (RFC 9745)").matches("@-?\\d+"));
        if (sunset.isPresent()) {
            Instant end = ZonedDateTime.parse(sunset.get(), DateTimeFormatter.RFC_1123_DATE_TIME)
                    .toInstant();
            deprecated.ifPresent(date -> assertThat(end)
                    .as("Sunset, which is never before the deprecation")
                    .isAfterOrEqualTo(Instant.ofEpochSecond(Long.parseLong(date.substring(1)))));
        }
        assertThat(deprecated.isPresent())
                .as("a Deprecation header, where the contract marks the operation")
                .isEqualTo(operation.node().path("deprecated").asBoolean(false));
    }

    @ParameterizedTest
    @MethodSource(LISTS)
    @Tag("R-088")
    void variants(Operation operation) {
        String path = first(operation);
        List<String> tags = new ArrayList<>();
        for (Wire wire : Wire.values()) {
            Answer answer = subject.get(path).accept(wire.mediaType()).send().expect(200);
            tags.add(answer.header("ETag").orElse(""));
            assertThat(answer.header("Vary").orElse("").toLowerCase(Locale.ROOT))
                    .as("Vary")
                    .contains("accept");
        }
        assertThat(tags).as("tags of representations").doesNotHaveDuplicates();
    }
}
