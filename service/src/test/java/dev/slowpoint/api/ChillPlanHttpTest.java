package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

class ChillPlanHttpTest extends HttpTest {

    private Response chill(String query) {
        return http().contentType(JSON).body(WARM_PORK).post(CHILLS + query);
    }

    private JsonNode plan(String from, String to) {
        String body = WARM_PORK.replace(from, to);
        Response response = http().contentType(JSON).body(body).post(CHILLS);
        assertThat(response.statusCode()).as(body + response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    @Test
    void a_plan_has_its_length_and_is_not_to_be_stored() {
        Response response = chill("");
        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.contentType()).isEqualTo(JSON);
        assertThat(response.header("Content-Length")).isEqualTo(Integer.toString(response.asByteArray().length));
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        assertThat(response.header("ETag")).isNull();
        assertThat(chill("").asByteArray()).isEqualTo(response.asByteArray());
        assertThat(response.asByteArray()).hasSizeLessThan(2048);
    }

    @Test
    void members_stand_in_a_fixed_order_and_absent_ones_are_left_out() {
        JsonNode plan = READER.readTree(chill("").asByteArray());
        assertThat(List.copyOf(plan.propertyNames()))
                .containsExactly(
                        "parameterSet",
                        "digest",
                        "mediumC",
                        "ends",
                        "coreC",
                        "coreLowC",
                        "coreHighC",
                        "cooling",
                        "warnings",
                        "cautions");
        assertThat(plan.toString()).doesNotContain("null");
    }

    @Test
    void binary_and_text_say_the_same_in_every_combination() {
        JsonNode expected = READER.readTree(chill("").asByteArray());
        for (String sent : List.of(JSON, CBOR)) {
            for (String accepted : List.of(JSON, CBOR)) {
                Response response = http().contentType(sent)
                        .accept(accepted)
                        .body(sent.equals(CBOR) ? cbor(WARM_PORK) : WARM_PORK.getBytes(StandardCharsets.UTF_8))
                        .post(CHILLS);
                assertThat(response.contentType()).isEqualTo(accepted);
                assertThat(READER.readTree(
                                tree(response.asByteArray(), accepted).toString()))
                        .isEqualTo(expected);
            }
        }
    }

    @Test
    void details_come_when_asked_for() {
        JsonNode plan = READER.readTree(chill("?include=curve,sources").asByteArray());
        assertThat(plan.at("/curve/timesS")).hasSameSizeAs(plan.at("/curve/coreC"));
        assertThat(plan.at("/sources").toString()).contains("FDA Food Code");
    }

    @Test
    void a_detail_that_chills_do_not_have_is_refused_by_name() {
        Response response = chill("?include=organisms");
        assertThat(response.statusCode()).isEqualTo(400);
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/code").asString()).isEqualTo("UNKNOWN_WORD");
        assertThat(fault.at("/allowed").toString()).isEqualTo("[\"curve\",\"sources\"]");
    }

    @Test
    void ice_water_keeps_the_rule_where_a_fridge_breaks_it() {
        JsonNode ice = plan("\"thicknessMm\":45", "\"thicknessMm\":60");
        JsonNode fridge = READER.readTree(http().contentType(JSON)
                .body(WARM_PORK.replace("iceWater", "fridge").replace("45", "60"))
                .post(CHILLS)
                .asByteArray());
        assertThat(ice.at("/cooling/kept").asBoolean()).isTrue();
        assertThat(fridge.at("/cooling/kept").asBoolean()).isFalse();
        assertThat(fridge.at("/cooling/limits/0/taken/nominalS").asInt())
                .isGreaterThan(ice.at("/cooling/limits/0/taken/nominalS").asInt());
    }

    /** FDA Food Code 2022, 3-501.14(A): from 57 to 21 C within 2 h, and to 5 C within 6 h in all. */
    @Test
    void the_limits_of_the_food_code_stand_in_the_answer() {
        JsonNode limits = plan("45", "45").at("/cooling/limits");
        assertThat(limits).hasSize(2);
        assertThat(limits.at("/0/fromC").asDouble()).isEqualTo(57.0);
        assertThat(limits.at("/0/toC").asDouble()).isEqualTo(21.0);
        assertThat(limits.at("/0/longestS").asInt()).isEqualTo(7200);
        assertThat(limits.at("/1/toC").asDouble()).isEqualTo(5.0);
        assertThat(limits.at("/1/longestS").asInt()).isEqualTo(21_600);
    }

    @Test
    void another_rule_may_be_asked_for() {
        JsonNode plan = plan("\"chill\"", "\"rule\":\"S-OPT1\",\"chill\"");
        assertThat(plan.at("/cooling/rule").asString()).isEqualTo("S-OPT1");
        assertThat(plan.at("/cooling/limits/0/fromC").asDouble()).isEqualTo(54.4);
    }

    @Test
    void a_store_is_long_only_after_a_cook_that_is_known_to_be_fit_for_it() {
        String store = "\"store\":{\"temperatureC\":3,\"days\":5},";
        JsonNode unknown = plan("\"chill\"", store + "\"chill\"").at("/keeping");
        JsonNode fit = plan("\"chill\"", store + "\"fitToKeep\":true,\"chill\"").at("/keeping");
        assertThat(unknown.at("/kept").asBoolean()).isFalse();
        assertThat(unknown.at("/basis").asString()).isEqualTo("listeriaNotKilled");
        assertThat(fit.at("/kept").asBoolean()).isTrue();
        assertThat(fit.at("/longestDays").asDouble()).isEqualTo(7.0);
    }

    @Test
    void a_time_in_the_medium_may_be_fixed() {
        JsonNode plan = plan("\"iceWater\"", "\"iceWater\",\"mediumC\":2,\"durationS\":1800");
        assertThat(plan.at("/mediumC").asDouble()).isEqualTo(2.0);
        assertThat(plan.at("/ends/nominalS").asInt()).isEqualTo(1800);
        assertThat(plan.at("/coreC").asDouble()).isBetween(5.0, 60.0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"temperatureC\":60|\"temperatureC\":101|400|OUT_OF_RANGE|#/start/temperatureC",
                "\"temperatureC\":60|\"coreC\":60|400|COMPANION_MISSING|#/start/surfaceC",
                "\"temperatureC\":60||400|ONE_OF_REQUIRED|#/start",
                "\"iceWater\"|\"snow\"|400|UNKNOWN_WORD|#/chill/medium",
                "\"medium\":\"iceWater\"||400|MISSING_FIELD|#/chill/medium",
                "\"iceWater\"|\"iceWater\",\"durationS\":0|400|OUT_OF_RANGE|#/chill/durationS",
                "\"chill\"|\"store\":{\"temperatureC\":3},\"chill\"|400|MISSING_FIELD|#/store/days",
                "\"chill\"|\"then\":[],\"chill\"|400|UNKNOWN_FIELD|#/then",
                "\"chill\"|\"tolerances\":{\"bathK\":1},\"chill\"|400|UNKNOWN_FIELD|#/tolerances/bathK",
                "\"chill\"|\"rule\":\"us-fsis-2021\",\"chill\"|422|UNKNOWN_RULE|#/rule",
                "\"chill\"|\"parameterSet\":\"1999.1\",\"chill\"|422|UNKNOWN_PARAMETER_SET|#/parameterSet",
                "\"pork-loin\"|\"no-such\"|422|UNKNOWN_FOOD|#/food/id",
                "\"thicknessMm\":45|\"thicknessMm\":45,\"arrangement\":{\"submerged\":\"oneFaceInAir\",\"airC\":20}"
                        + "|422|CHILL_NEEDS_COVERED_FACES|#/geometry/arrangement"
            })
    void a_fault_is_named_in_text_and_in_binary(String from, String to, int status, String code, String pointer) {
        String body = WARM_PORK.replace(from, to == null ? "" : to);
        Response text = http().contentType(JSON).body(body).post(CHILLS);
        assertThat(text.statusCode()).as(text.asString()).isEqualTo(status);
        assertThat(text.contentType()).isEqualTo(PROBLEM);
        JsonNode problem = READER.readTree(text.asByteArray());
        assertThat(problem.at("/errors/0/code").asString()).isEqualTo(code);
        assertThat(problem.at("/errors/0/pointer").asString()).isEqualTo(pointer);
        assertThat(http().contentType(CBOR).body(cbor(body)).post(CHILLS).asString())
                .isEqualTo(text.asString());
    }

    @Test
    void other_methods_are_told_what_is_allowed() {
        assertThat(http().get(CHILLS).statusCode()).isEqualTo(405);
        assertThat(http().get(CHILLS).header("Allow")).contains("POST");
    }
}
