package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.TestPropertySource;
import tools.jackson.databind.JsonNode;

/** A service with the overlay of the guide. */
@TestPropertySource(properties = "slowpoint.overlay.directory=src/main/guide/overlay-example")
@DirtiesContext
class OverlayHttpTest extends HttpTest {

    private static final String TERRINE = """
            {%s"food":{"id":"own-hut-terrine","form":"minced"},"geometry":{"shape":"slab","thicknessMm":40},
             "start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":68}}%s}""";

    private Response asked(String body) {
        return http().contentType(JSON).body(body).post(PLANS);
    }

    private JsonNode answered(String body) {
        Response response = asked(body);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    @Test
    void an_own_food_is_planned_by_a_published_rule_and_by_an_own_one() {
        JsonNode published = answered(TERRINE.formatted("", ""));
        assertThat(published.at("/parameterSet").asString()).isEqualTo("2026.1+hochmoor");
        assertThat(published.at("/safety/rule").asString()).isEqualTo("us-fsis-2021");
        assertThat(published.at("/safety/verdict").asString()).isEqualTo("met");
        JsonNode own = answered(TERRINE.formatted("", ",\"rule\":\"own-house-rule\""));
        assertThat(own.at("/safety/rule").asString()).isEqualTo("own-house-rule");
        // 6 log of Listeria, D 20 s at 70 C and z 7.5 K (FSA/ACMSF), where Salmonella asks less.
        assertThat(own.at("/safety/requiredLog10").asDouble()).isEqualTo(6.0);
        assertThat(own.at("/safety/organism").asString()).isEqualTo("listeriaMonocytogenes");
    }

    @Test
    void the_base_still_answers_where_it_is_pinned_and_knows_nothing_of_it() {
        String pinned = "\"parameterSet\":\"2026.1\",";
        Response unknown = asked(TERRINE.formatted(pinned, ""));
        assertThat(unknown.statusCode()).isEqualTo(422);
        assertThat(unknown.asString()).contains("UNKNOWN_FOOD");
        JsonNode plan = answered("""
                {"parameterSet":"2026.1","food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},
                 "start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":60}}}""");
        assertThat(plan.at("/parameterSet").asString()).isEqualTo("2026.1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es", "fr"})
    void its_name_is_said_as_it_stands_in_every_language(String language) {
        Response entry = http().header("Accept-Language", language).get("/v1/foods/own-hut-terrine");
        assertThat(entry.statusCode()).isEqualTo(200);
        assertThat(entry.jsonPath().getString("name")).isEqualTo("Terrine of the hut");
        Response picture = http().contentType(JSON)
                .accept("image/svg+xml")
                .header("Accept-Language", language)
                .body(TERRINE.formatted("", ""))
                .post(PLANS);
        assertThat(picture.statusCode()).isEqualTo(200);
        assertThat(picture.asString()).contains("Terrine of the hut");
    }

    @Test
    void both_sets_are_listed_and_what_differs_is_told() {
        Response sets = http().get("/v1/parameter-sets");
        assertThat(sets.jsonPath().getList("parameterSets.version")).containsExactly("2026.1+hochmoor", "2026.1");
        assertThat(sets.jsonPath().getList("parameterSets.status")).containsExactly("current", "available");
        Response differences = http().get("/v1/parameter-sets/2026.1+hochmoor/differences?from=2026.1");
        assertThat(differences.statusCode()).as(differences.asString()).isEqualTo(200);
        assertThat(differences.asString()).contains("own-hut-terrine", "overlay/foods.csv", "added");
        assertThat(http().get("/v1/rules/own-house-rule").statusCode()).isEqualTo(200);
    }

    @Test
    void the_page_of_sources_tells_of_it() {
        Response page = http().get("/docs/guide/sources");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.asString())
                .contains("<code>2026.1+hochmoor</code>")
                .contains("<td>own-hut-terrine, Terrine of the hut <code>own</code></td>");
    }
}
