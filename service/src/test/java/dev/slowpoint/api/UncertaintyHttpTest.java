package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

class UncertaintyHttpTest extends HttpTest {

    private byte[] plan(String request, String query) {
        return http().contentType(JSON).body(request).post(PLANS + query).asByteArray();
    }

    private JsonNode uncertainty(String request) {
        return READER.readTree(plan(request, "?include=uncertainty")).path("uncertainty");
    }

    @Test
    void the_sample_comes_only_when_asked_for_and_changes_nothing_else() {
        JsonNode plain = READER.readTree(plan(PORK, ""));
        JsonNode sampled = READER.readTree(plan(PORK, "?include=uncertainty"));
        assertThat(plain.has("uncertainty")).isFalse();
        assertThat(sampled.has("uncertainty")).isTrue();
        for (String member : plain.propertyNames()) {
            assertThat(sampled.get(member)).isEqualTo(plain.get(member));
        }
    }

    @Test
    void the_same_question_gives_the_same_bytes() {
        byte[] first = plan(PORK, "?include=uncertainty");
        for (int i = 0; i < 3; i++) {
            assertThat(plan(PORK, "?include=uncertainty")).isEqualTo(first);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"4", "-18"})
    void percentiles_are_in_order_and_within_what_the_corners_say(String start) {
        String request = PORK.replace("\"temperatureC\":4", "\"temperatureC\":" + start);
        JsonNode plan = READER.readTree(plan(request, "?include=uncertainty"));
        JsonNode found = plan.get("uncertainty");
        for (String milestone : List.of("hotThrough", "safe", "tender", "goodUntil", "softFrom")) {
            JsonNode time = found.get(milestone);
            assertThat(time.get("p5S").asInt())
                    .as(milestone)
                    .isLessThanOrEqualTo(time.get("p50S").asInt());
            assertThat(time.get("p50S").asInt())
                    .as(milestone)
                    .isLessThanOrEqualTo(time.get("p95S").asInt());
            assertThat(time.has("neverPercent")).isFalse();
        }
        assertThat(found.at("/hotThrough/p95S").asInt())
                .isLessThanOrEqualTo(plan.at("/times/hotThrough/lateS").asInt());
        assertThat(found.at("/safe/p95S").asInt())
                .isLessThanOrEqualTo(plan.at("/times/safe/lateS").asInt());
        assertThat(found.at("/goodUntil/p5S").asInt())
                .isGreaterThanOrEqualTo(plan.at("/times/goodUntil/earlyS").asInt());
        assertThat(found.at("/core/p5C").asDouble())
                .isLessThanOrEqualTo(found.at("/core/p50C").asDouble());
        assertThat(found.at("/core/p50C").asDouble())
                .isLessThanOrEqualTo(found.at("/core/p95C").asDouble());
        assertThat(found.at("/achieved/p5Log10").asDouble())
                .isBetween(
                        plan.at("/safety/achievedLog10").asDouble(),
                        found.at("/achieved/p50Log10").asDouble());
    }

    @Test
    void a_sample_without_a_miss_claims_no_more_than_it_can_tell() {
        JsonNode found = uncertainty(PORK);
        assertThat(found.get("missedPoints").asInt()).isZero();
        assertThat(found.has("missProbabilityPercent")).isFalse();
        assertThat(found.get("missProbabilityAtMostPercent").asDouble())
                .isBetween(
                        290.0 / found.get("points").asInt(),
                        300.0 / found.get("points").asInt() + 0.1);
        assertThat(found.get("sequence").asString()).isEqualTo("sobol-joe-kuo-2008");
        assertThat(found.get("sampled").toString())
                .isEqualTo(
                        "[\"thickness\",\"startTemperature\",\"bathTemperature\",\"filmCoefficient\",\"conductivity\","
                                + "\"coreReading\"]");
        assertThat(found.get("notSampled").toString())
                .contains("inactivationKinetics", "textureKinetics", "composition");
    }

    @Test
    void taken_out_too_soon_most_cooks_miss_the_rule_and_that_is_said() {
        JsonNode found = uncertainty(PORK.substring(0, PORK.lastIndexOf('}')) + ",\"target\":{\"serveAfterS\":3600}}");
        assertThat(found.get("missedPoints").asInt())
                .isEqualTo(found.get("points").asInt());
        assertThat(found.get("missProbabilityPercent").asDouble()).isEqualTo(100.0);
        assertThat(found.get("missProbabilityAtMostPercent").asDouble()).isEqualTo(100.0);
    }

    @Test
    void a_bath_on_the_lowest_row_of_the_table_is_safe_in_some_cooks_only() {
        JsonNode found = uncertainty(eightHours(porkWith("\"setpointC\":60", "\"setpointC\":54.5")));
        JsonNode safe = found.get("safe");
        assertThat(safe.get("neverPercent").asDouble()).isBetween(20.0, 80.0);
        assertThat(safe.has("p95S")).isFalse();
        assertThat(found.get("missProbabilityPercent").asDouble())
                .isGreaterThanOrEqualTo(safe.get("neverPercent").asDouble());
        assertThat(found.get("missProbabilityAtMostPercent").asDouble())
                .isGreaterThan(found.get("missProbabilityPercent").asDouble());
    }

    private static String eightHours(String request) {
        return request.substring(0, request.lastIndexOf('}')) + ",\"target\":{\"serveAfterS\":28800}}";
    }

    @Test
    void food_of_which_no_rule_asks_anything_has_no_miss() {
        JsonNode found = uncertainty("""
                {"food":{"id":"carrot"},"geometry":{"shape":"cylinder","diameterMm":25,"lengthMm":60},
                 "start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":85,"volumeL":10,"heaterW":1000}}}""");
        assertThat(found.path("hotThrough").has("p50S")).isTrue();
        assertThat(found.has("safe")).isEqualTo(found.has("missedPoints"));
        assertThat(found.get("sampled").toString()).contains("shapeError");
        assertThat(found.get("notSampled").toString()).contains("vessel");
    }
}
