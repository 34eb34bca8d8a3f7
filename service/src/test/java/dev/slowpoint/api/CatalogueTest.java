package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Catalogues behave as things that seldom change: they are tagged, kept and not sent twice. */
class CatalogueTest extends HttpTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/foods",
                "/v1/foods/pork-loin",
                "/v1/rules",
                "/v1/rules/us-fsis-2021",
                "/v1/rules/au-vic",
                "/v1/parameter-sets",
                "/v1/parameter-sets/2026.1",
                "/v1/warnings",
                "/v1/warnings/FROM_FROZEN",
                "/v1/problems",
                "/v1/problems/OUT_OF_RANGE",
                "/problems/out-of-range",
                "/openapi.yaml",
                "/openapi.json"
            })
    void an_entry_is_tagged_and_answered_with_304_when_it_is_known(String path) {
        Response first = http().get(path);
        assertThat(first.statusCode()).isEqualTo(200);
        String tag = first.header("ETag");
        assertThat(tag).matches("\"[0-9a-f]{24}\"");
        assertThat(first.header("Cache-Control")).isEqualTo("max-age=3600");
        assertThat(String.join(",", first.headers().getValues("Vary")).split("[, ]+", -1))
                .as("one field or several")
                .contains("Accept", "Accept-Encoding");
        assertThat(first.header("Content-Length")).isEqualTo(Integer.toString(first.asByteArray().length));

        for (String known : List.of(tag, "\"other\", " + tag, "W/" + tag, "*")) {
            Response second = http().header("If-None-Match", known).get(path);
            assertThat(second.statusCode()).as(known).isEqualTo(304);
            assertThat(second.asByteArray()).isEmpty();
            assertThat(second.header("ETag")).isEqualTo(tag);
            assertThat(second.header("Cache-Control")).isEqualTo("max-age=3600");
        }
        assertThat(http().header("If-None-Match", "\"other\"").get(path).statusCode())
                .isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/v1/foods", "/v1/problems", "/openapi.yaml"})
    void the_head_of_an_entry_is_that_of_its_body(String path) {
        Response get = http().get(path);
        Response head = http().head(path);
        assertThat(head.statusCode()).isEqualTo(200);
        assertThat(head.asByteArray()).isEmpty();
        for (String header : List.of("Content-Length", "Content-Type", "ETag", "Cache-Control")) {
            assertThat(head.header(header)).as(header).isEqualTo(get.header(header));
        }
    }

    @Test
    void each_representation_has_its_tag_and_they_say_the_same() {
        Response text = http().accept(JSON).get("/v1/foods");
        Response binary = http().accept(CBOR).get("/v1/foods");
        assertThat(text.contentType()).isEqualTo(JSON);
        assertThat(binary.contentType()).isEqualTo(CBOR);
        assertThat(text.header("ETag")).isNotEqualTo(binary.header("ETag"));
        assertThat(READER.readTree(tree(binary.asByteArray(), CBOR).toString()))
                .isEqualTo(tree(text.asByteArray(), JSON));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "*/*|application/json",
                "application/*|application/json",
                "application/cbor, application/json|application/json",
                "application/cbor, application/json;q=0.9|application/cbor",
                "application/json;q=0.1, */*|application/cbor",
                "text/html, */*;q=0.8|application/json"
            })
    void the_preferred_representation_is_chosen(String accept, String expected) {
        assertThat(http().accept(accept).get("/v1/problems").contentType()).isEqualTo(expected);
    }

    @Test
    void an_unknown_entry_is_not_found_and_the_nearest_is_named() {
        Response response = http().get("/v1/foods/porkloin");
        assertThat(response.statusCode()).isEqualTo(404);
        assertThat(response.contentType()).isEqualTo(PROBLEM);
        assertThat(READER.readTree(response.asByteArray()).at("/detail").asString())
                .isEqualTo("The catalogue of foods has no entry porkloin. Maybe pork-loin?");
    }

    /** FDA Food Code 2022, 3-501.14(A). */
    @Test
    void cooling_rules_are_listed_with_their_limits() {
        JsonNode rules = READER.readTree(http().get("/v1/rules").asByteArray()).at("/rules");
        assertThat(rules.valueStream()
                        .filter(rule -> rule.at("/kind").asString().equals("cooling"))
                        .map(rule -> rule.at("/id").asString())
                        .toList())
                .contains("FC-COOL", "S-OPT1");
        JsonNode rule = READER.readTree(http().get("/v1/rules/FC-COOL").asByteArray());
        assertThat(rule.at("/coolingLimits/0/fromC").asDouble()).isEqualTo(57.0);
        assertThat(rule.at("/coolingLimits/0/toC").asDouble()).isEqualTo(21.0);
        assertThat(rule.at("/coolingLimits/0/longestS").asInt()).isEqualTo(7200);
        assertThat(rule.at("/requirements")).isEmpty();
        assertThat(READER.readTree(http().get("/v1/rules/us-fsis-2021").asByteArray())
                        .at("/kind")
                        .asString())
                .isEqualTo("cooking");
    }

    private JsonNode topic(String rule, String topic) {
        return READER.readTree(http().get("/v1/rules/" + rule).asByteArray())
                .at("/topics")
                .valueStream()
                .filter(t -> t.at("/topic").asString().equals(topic))
                .findFirst()
                .orElseThrow();
    }

    /** FDA Food Code 2022, 3-501.16(A)(1); Food Hygiene (Wales) Regulations 2006 Sch. 4; Victoria supplement. */
    @Test
    void a_rule_shows_every_topic_with_mark_and_source() {
        for (JsonNode rule :
                READER.readTree(http().get("/v1/rules").asByteArray()).at("/rules")) {
            if (rule.at("/kind").asString().equals("cooling")) {
                assertThat(rule.at("/topics")).isEmpty();
                continue;
            }
            assertThat(rule.at("/topics").valueStream().map(t -> t.at("/topic").asString()))
                    .as(rule.at("/id").asString())
                    .containsExactly(
                            "cooking",
                            "warmUp",
                            "holding",
                            "cooling",
                            "storage",
                            "reheating",
                            "parasites",
                            "eaters",
                            "labels");
            for (JsonNode topic : rule.at("/topics")) {
                for (JsonNode clause : topic.at("/clauses")) {
                    assertThat(clause.at("/origin/mark").asString()).isNotEmpty();
                    assertThat(clause.at("/origin/source").asString()).isNotEmpty();
                }
            }
        }
        JsonNode hot = topic("uk-fsa", "holding");
        assertThat(hot.at("/coverage").asString()).isEqualTo("read");
        assertThat(hot.at("/planLimit/id").asString()).isEqualTo("UK-HOT63");
        assertThat(hot.at("/planLimit/own").asBoolean()).isTrue();
        assertThat(hot.at("/planLimit/fromC").asDouble()).isEqualTo(63.0);
        JsonNode kept = topic("au-vic", "storage");
        assertThat(kept.at("/planLimit/longestS").asInt()).isEqualTo(5 * 86400);
        assertThat(kept.at("/clauses/0/limit").asDouble()).isEqualTo(5.0);
        assertThat(kept.at("/clauses/0/unit").asString()).isEqualTo("d");
        assertThat(kept.at("/clauses/0/origin/mark").asString()).isEqualTo("readSecondary");
    }

    /** Nothing was read of the warm-up in EU law, and nothing of labels in New Zealand. */
    @Test
    void a_topic_that_was_not_read_says_so_and_names_what_counts_instead() {
        JsonNode warmUp = topic("eu-food-hygiene", "warmUp");
        assertThat(warmUp.at("/coverage").asString()).isEqualTo("notRead");
        assertThat(warmUp.at("/clauses")).isEmpty();
        assertThat(warmUp.at("/planLimit/id").asString()).isEqualTo("A-CUT-6H");
        assertThat(warmUp.at("/planLimit/own").asBoolean()).isFalse();
        assertThat(warmUp.at("/planLimit/longestS").asInt()).isEqualTo(6 * 3600);
        JsonNode labels = topic("nz-mpi", "labels");
        assertThat(labels.at("/coverage").asString()).isEqualTo("notRead");
        assertThat(labels.has("planLimit")).isFalse();
        assertThat(READER.readTree(http().get("/v1/rules/eu-food-hygiene").asByteArray())
                        .at("/requirements")
                        .valueStream()
                        .filter(r -> r.at("/id").asString().equals("EU-LM"))
                        .map(r -> r.at("/basis").asString()))
                .containsExactly("fallback");
    }

    @Test
    void the_catalogue_of_problems_is_that_of_the_code() {
        JsonNode problems =
                READER.readTree(http().get("/v1/problems").asByteArray()).at("/problems");
        assertThat(problems).hasSize(ProblemCode.values().length);
        assertThat(problems.valueStream()
                        .map(problem -> problem.at("/status").asInt())
                        .toList())
                .isSorted();
    }
}
