package dev.slowpoint.situations;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** Situations about a choice of setpoint and time, as {@link SituationsTest} has them; the ranges are fixed. */
class WindowSituationsTest extends HttpTest {

    private JsonNode window(String food, String geometry, String more) {
        String request = "{\"food\":" + food + ",\"geometry\":" + geometry + "," + more + "}";
        return READER.readTree(
                http().contentType(JSON).body(request).post(WINDOWS).asByteArray());
    }

    private static double minutes(JsonNode seconds) {
        assertThat(seconds.isNumber()).isTrue();
        return seconds.asDouble() / 60.0;
    }

    @Test
    @DisplayName("S18: a chuck roast has a window of many hours, and safe comes long before tender")
    void a_chuck_roast_has_a_window_of_tenderness() {
        for (String block : List.of("76,\"widthMm\":120,\"lengthMm\":180", "100,\"widthMm\":100,\"lengthMm\":120")) {
            JsonNode window = window(
                    "{\"id\":\"beef-chuck\"}",
                    "{\"shape\":\"brick\",\"thicknessMm\":" + block + "}",
                    "\"start\":{\"temperatureC\":4},\"surroundings\":{\"bath\":{}},\"target\":{\"withinK\":1},"
                            + "\"lowestSetpointC\":58.3,\"highestSetpointC\":58.3");
            JsonNode at = window.at("/setpoints/0");
            assertThat(minutes(at.at("/hotThrough/nominalS"))).isBetween(205.0, 275.0);
            assertThat(minutes(at.at("/safe/nominalS"))).isLessThan(360.0);
            assertThat(minutes(at.at("/tender/nominalS")) / 60.0)
                    .as("12 h likely firm, tender by 24")
                    .isBetween(12.0, 24.0);
            assertThat(minutes(at.at("/takeOut/latestS")) / 60.0)
                    .as("tender through 36 h")
                    .isGreaterThan(36.0);
        }
    }

    @Test
    @DisplayName("S26: a round roast of 150 mm has no window, and a thinner one has")
    void a_large_round_roast_has_no_window() {
        JsonNode window = window(
                "{\"id\":\"beef-sirloin\"}",
                "{\"shape\":\"cylinder\",\"diameterMm\":150}",
                "\"start\":{\"temperatureC\":5},\"surroundings\":{\"bath\":{}},"
                        + "\"lowestSetpointC\":55,\"highestSetpointC\":57");
        assertThat(window.at("/region")).isEmpty();
        assertThat(window.at("/closed/barredBy").asString()).isEqualTo("WARM_UP_TOO_SLOW");
        assertThat(minutes(window.at("/setpoints/0/slowWarmUpS")) / 60.0).isBetween(6.0, 9.0);
        JsonNode thinner = window.at("/closed/openings")
                .valueStream()
                .filter(o -> o.at("/change").asString().equals("thinner"))
                .findFirst()
                .orElseThrow();
        // At most 110 mm for six hours; safe to the core within its texture asks for less.
        assertThat(thinner.at("/verdict").asString()).isEqualTo("met");
        assertThat(thinner.at("/thicknessMm").asDouble()).isBetween(40.0, 110.0);
    }

    @Test
    @DisplayName("S10: safe times of a minced patty fall strictly with the setpoint, and below 54.4 C there are none")
    void a_minced_patty_is_safe_sooner_in_a_hotter_bath() {
        JsonNode window = window(
                "{\"id\":\"beef-minced\",\"form\":\"minced\"}",
                "{\"shape\":\"slab\",\"thicknessMm\":25}",
                "\"start\":{\"temperatureC\":5},\"surroundings\":{\"bath\":{}},"
                        + "\"lowestSetpointC\":54,\"highestSetpointC\":60,\"stepK\":1");
        assertThat(window.at("/setpoints/0/barredBy").asString()).isEqualTo("NON_INTACT_TOO_COOL");
        double before = Double.POSITIVE_INFINITY;
        double[][] ranges = {{55, 121, 147}, {57, 72, 97}, {60, 43, 66}};
        int within = 0;
        for (int i = 1; i < window.at("/setpoints").size(); i++) {
            JsonNode at = window.at("/setpoints/" + i);
            double safe = minutes(at.at("/safe/nominalS"));
            assertThat(safe).isLessThan(before);
            before = safe;
            for (double[] range : ranges) {
                if (at.at("/setpointC").asDouble() == range[0]) {
                    assertThat(safe).isBetween(range[1], range[2]);
                    within++;
                }
            }
        }
        assertThat(within).isEqualTo(ranges.length);
    }
}
