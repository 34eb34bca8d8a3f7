package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

class CookPlanHttpTest extends HttpTest {

    private Response plan(String query) {
        return http().contentType(JSON).body(PORK).post(PLANS + query);
    }

    @Test
    void a_plan_has_its_length_and_is_not_to_be_stored() {
        Response response = plan("");
        byte[] body = response.asByteArray();
        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.contentType()).isEqualTo(JSON);
        assertThat(response.header("Content-Length")).isEqualTo(Integer.toString(body.length));
        assertThat(response.header("Transfer-Encoding")).isNull();
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        assertThat(response.header("ETag")).isNull();
        assertThat(response.header("Server")).isNull();
        assertThat(response.header("X-Content-Type-Options")).isEqualTo("nosniff");
    }

    /** Small controllers fail on answers of a few kilobytes. */
    @Test
    void a_plan_with_every_member_stays_under_two_kilobytes() {
        assertThat(plan("").asByteArray()).hasSizeLessThan(2048);
    }

    @Test
    void the_same_request_gives_the_same_bytes_over_many_threads() {
        Set<String> bodies = new HashSet<>(IntStream.range(0, 32)
                .parallel()
                .mapToObj(i -> plan("?include=curve").asString())
                .toList());
        assertThat(bodies).hasSize(1);
    }

    @Test
    void a_device_with_a_wrong_clock_gets_the_same_plan() {
        byte[] plan = http().header("Date", "Thu, 01 Jan 1970 00:00:00 GMT")
                .contentType(JSON)
                .body(PORK)
                .post(PLANS)
                .asByteArray();
        assertThat(plan).isEqualTo(plan("").asByteArray());
    }

    @Test
    void members_stand_in_a_fixed_order_and_absent_ones_are_left_out() {
        JsonNode plan = READER.readTree(plan("").asByteArray());
        assertThat(List.copyOf(plan.propertyNames()))
                .containsExactly(
                        "parameterSet",
                        "digest",
                        "setpointC",
                        "times",
                        "takeOut",
                        "safety",
                        "texture",
                        "warnings",
                        "cautions");
        assertThat(plan.toString()).doesNotContain("null");
    }

    /** UK line: 70 C for 2 min, z 7.5 K, so 43 min at 60 C; FSIS table 2: 12 min. */
    @Test
    void the_other_rules_come_only_when_asked_for_and_say_from_when_on_they_are_met() {
        assertThat(READER.readTree(plan("").asByteArray()).has("otherRules")).isFalse();
        JsonNode plan = READER.readTree(plan("?include=rules").asByteArray());
        assertThat(plan.at("/otherRules").valueStream().map(o -> o.at("/rule").asString()))
                .containsExactly(
                        "uk-fsa",
                        "us-food-code-2022",
                        "eu-food-hygiene",
                        "ca-cfia",
                        "au-fsanz",
                        "au-nsw-2012",
                        "au-vic",
                        "nz-mpi");
        JsonNode british = plan.at("/otherRules/0");
        assertThat(british.at("/basis").asString()).isEqualTo("own");
        assertThat(british.at("/organism").asString()).isEqualTo("listeriaMonocytogenes");
        assertThat(british.at("/requiredLog10").asDouble()).isEqualTo(6.0);
        assertThat(british.at("/marginLog10").asDouble())
                .isLessThan(plan.at("/safety/marginLog10").asDouble());
        assertThat(plan.at("/otherRules/2/basis").asString()).isEqualTo("fallback");
        assertThat(plan.toString()).doesNotContain("null");
        for (JsonNode other : plan.at("/otherRules")) {
            boolean met = other.at("/verdict").asString().equals("met");
            assertThat(met)
                    .as(other.toString())
                    .isEqualTo(other.has("safeLateS")
                            && other.at("/safeLateS").asInt()
                                    <= plan.at("/safety/judgedAtS").asInt());
        }
    }

    @Test
    void numbers_are_rounded_and_never_in_favour_of_safety() {
        SafetyVerdict safety = new SafetyVerdict(
                "met",
                "us-fsis-2021",
                "salmonella",
                6.5,
                7.129999,
                9.4,
                0.629999,
                "thin",
                0.401,
                0.229,
                300,
                360,
                0.4099,
                1.89,
                2400,
                3100,
                18500,
                8100);
        assertThat(safety.achievedLog10()).isEqualTo(7.12);
        assertThat(safety.marginLog10()).isEqualTo(0.62);
        assertThat(safety.growthLog10()).isEqualTo(0.41);
        assertThat(safety.adaptedMarginLog10()).isEqualTo(0.22);
        assertThat(safety.marginK()).isEqualTo(0.4);
        assertThat(safety.marginMm()).isEqualTo(1.8);
        assertThat(new CookPlanAnswer.AtServe(7200, 58.91234567, 59.4, 57.96, 59.95).coreC())
                .isEqualTo(58.91);
    }

    @ParameterizedTest
    @ValueSource(strings = {"curve,organisms,sources", "curve&include=organisms&include=sources"})
    void details_come_when_asked_for(String words) {
        JsonNode plan = READER.readTree(plan("?include=" + words).asByteArray());
        assertThat(plan.has("curve")).isTrue();
        assertThat(plan.has("organisms")).isTrue();
        assertThat(plan.has("sources")).isTrue();
    }

    @Test
    void further_views_of_the_margin_come_when_asked_for() {
        JsonNode plan = READER.readTree(plan("?include=margins").asByteArray());
        assertThat(plan.at("/margins/table/table").asString()).isEqualTo("fsis-meat-6.5");
        assertThat(plan.at("/margins/table/marginS").asInt())
                .isEqualTo(plan.at("/margins/table/dwelledS").asInt()
                        - plan.at("/margins/table/requiredS").asInt());
        assertThat(plan.at("/margins/noProbabilityReason/code").asString()).isEqualTo("NO_CENTRAL_KINETICS");
        assertThat(plan.at("/margins").has("missProbability")).isFalse();
        assertThat(plan.at("/margins/warmUpGrowth/0/organism").asString()).isEqualTo("sAureus");
        assertThat(plan.has("organisms")).isFalse();
        assertThat(READER.readTree(plan("").asByteArray()).has("margins")).isFalse();
    }

    @Test
    void one_detail_comes_alone() {
        JsonNode plan = READER.readTree(plan("?include=organisms").asByteArray());
        assertThat(plan.has("organisms")).isTrue();
        assertThat(plan.has("curve")).isFalse();
    }

    @Test
    void binary_and_text_say_the_same_in_every_combination() {
        JsonNode expected = READER.readTree(plan("").asByteArray());
        for (String sent : List.of(JSON, CBOR)) {
            for (String accepted : List.of(JSON, CBOR)) {
                Response response = http().contentType(sent)
                        .accept(accepted)
                        .body(sent.equals(CBOR) ? cbor(PORK) : PORK.getBytes(StandardCharsets.UTF_8))
                        .post(PLANS);
                assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
                assertThat(response.contentType()).isEqualTo(accepted);
                assertThat(READER.readTree(
                                tree(response.asByteArray(), accepted).toString()))
                        .isEqualTo(expected);
            }
        }
    }

    @Test
    void a_client_that_accepts_compression_gets_it() {
        // The client of the test unpacks by itself and takes the header away, so the wire is looked at.
        String head = RawHttp.exchange(
                        port,
                        "GET /v1/problems HTTP/1.1\r\nHost: localhost\r\nAccept-Encoding: gzip\r\nConnection: close\r\n\r\n")
                .head();
        // A strong tag names these bytes and no others (RFC 9110, section 8.8.3.3), so what has one is sent as it is.
        assertThat(head).contains("ETag: \"").doesNotContainIgnoringCase("content-encoding");
        String plan = RawHttp.exchange(
                        port,
                        "POST /v1/cook-plans HTTP/1.1\r\nHost: localhost\r\nAccept-Encoding: gzip\r\n"
                                + "Content-Type: application/json\r\nContent-Length: " + PORK.length()
                                + "\r\nConnection: close\r\n\r\n" + PORK)
                .head();
        assertThat(plan).containsIgnoringCase("content-encoding: gzip");
    }

    @Test
    void other_methods_are_told_what_is_allowed() {
        for (String method : List.of("GET", "PUT", "DELETE", "PATCH", "HEAD", "QUERY")) {
            Response response = http().request(method, PLANS);
            assertThat(response.statusCode()).as(method).isEqualTo(405);
            assertThat(response.header("Allow")).as(method).contains("POST");
        }
        Response options = http().options(PLANS);
        assertThat(options.statusCode()).isEqualTo(200);
        assertThat(options.header("Allow")).contains("POST").contains("OPTIONS");
    }
}
