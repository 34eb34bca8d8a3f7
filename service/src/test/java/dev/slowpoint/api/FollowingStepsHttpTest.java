package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** What follows the bath, over HTTP. */
class FollowingStepsHttpTest extends HttpTest {

    private static final String START = "\"start\":{\"temperatureC\":4}";

    private Response send(String steps) {
        return http().contentType(JSON)
                .body(porkWith(START, START + ",\"then\":[" + steps + "]"))
                .post(PLANS);
    }

    private JsonNode plan(String steps) {
        Response response = send(steps);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    @Test
    void a_plan_without_steps_is_the_one_with_an_empty_list() {
        byte[] plain = http().contentType(JSON).body(PORK).post(PLANS).asByteArray();
        assertThat(send("").asByteArray()).isEqualTo(plain);
        assertThat(READER.readTree(plain).has("then")).isFalse();
        assertThat(READER.readTree(plain).has("textureAtEnd")).isFalse();
        assertThat(READER.readTree(plain).has("bath")).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"step\":\"bath\",\"setpointC\":58,\"durationS\":3600}|holding",
                "{\"step\":\"unheated\",\"durationS\":900}|interruption",
                "{\"step\":\"sear\",\"method\":\"pan\",\"secondsPerSide\":45}|sear",
                "{\"step\":\"rest\",\"durationS\":300}|",
                "{\"step\":\"chill\",\"medium\":\"iceWater\"}|cooling",
                "{\"step\":\"store\",\"temperatureC\":3,\"days\":1}|cooling keeping",
                "{\"step\":\"reheat\",\"setpointC\":62}|reheating"
            })
    void each_step_is_answered_with_its_part(String step, String parts) {
        JsonNode plan = plan(step);
        assertThat(plan.at("/then")).hasSize(1);
        JsonNode outcome = plan.at("/then/0");
        assertThat(outcome.at("/step")).isEqualTo(READER.readTree(step).at("/step"));
        assertThat(List.of("holding", "swapWater", "interruption", "sear", "cooling", "keeping", "reheating").stream()
                        .filter(outcome::has)
                        .toList())
                .isEqualTo(parts == null ? List.of() : List.of(parts.split(" ")));
        assertThat(outcome.at("/begins/nominalS")).isEqualTo(plan.at("/takeOut/bestS"));
        assertThat(plan.has("textureAtEnd")).isTrue();
        OpenApiTest.assertValid("CookPlanAnswer", plan);
    }

    @Test
    void steps_are_answered_in_their_order_and_each_begins_where_the_last_ended() {
        JsonNode then = plan("{\"step\":\"chill\",\"medium\":\"iceWater\"},"
                        + "{\"step\":\"store\",\"temperatureC\":3,\"days\":3},"
                        + "{\"step\":\"reheat\",\"setpointC\":58},"
                        + "{\"step\":\"sear\",\"method\":\"torch\",\"secondsPerSide\":30}")
                .at("/then");
        assertThat(then.valueStream().map(o -> o.at("/step").asString()).toList())
                .containsExactly("chill", "store", "reheat", "sear");
        for (int i = 1; i < then.size(); i++) {
            assertThat(then.get(i).at("/begins")).isEqualTo(then.get(i - 1).at("/ends"));
        }
        assertThat(then.at("/1/ends/nominalS").asInt()
                        - then.at("/1/begins/nominalS").asInt())
                .isBetween(3 * 86_400 - 1, 3 * 86_400 + 1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"step\":\"rest\",\"durationS\":60},{\"step\":\"unheated\",\"durationS\":60}"
                        + "|UNHEATED_WITHOUT_BATH|#/then/1",
                "{\"step\":\"unheated\",\"foundC\":60}|FOUND_NOT_BELOW_BATH|#/then/0/foundC",
                "{\"step\":\"bath\",\"setpointC\":37,\"durationS\":60}|BATH_TOO_COOL|#/then/0/setpointC",
                "{\"step\":\"reheat\",\"setpointC\":30}|BATH_TOO_COOL|#/then/0/setpointC"
            })
    void a_step_that_cannot_be_is_refused_by_name(String steps, String code, String pointer) {
        Response response = send(steps);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(422);
        JsonNode problem = READER.readTree(response.asByteArray());
        assertThat(problem.at("/code").asString()).isEqualTo(code);
        assertThat(problem.at("/errors/0/pointer").asString()).isEqualTo(pointer);
    }

    @Test
    void a_field_of_another_step_is_refused_with_those_it_takes() {
        Response response = send("{\"step\":\"rest\",\"durationS\":60,\"days\":1}");
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(READER.readTree(response.asByteArray())
                        .at("/errors/0/allowed")
                        .toString())
                .isEqualTo("[\"durationS\"]");
    }
}
