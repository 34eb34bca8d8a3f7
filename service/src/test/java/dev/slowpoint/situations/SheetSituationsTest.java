package dev.slowpoint.situations;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** What those who print cards for kits ask, as sheets; numbered as elsewhere. Figures are nominal, cards are worst case. */
class SheetSituationsTest extends HttpTest {

    private static JsonNode card(JsonNode sheet, int portion, String kind) {
        int band = sheet.at("/portions/" + portion + "/band").asInt();
        for (JsonNode card : sheet.at("/bands/" + (band - 1) + "/cards")) {
            if (card.at("/card").asString().equals(kind)) {
                return card;
            }
        }
        throw new AssertionError("no card " + kind + " in " + sheet);
    }

    private JsonNode sheet(String terms, String food, String condition, double startC, double... thicknessesMm) {
        String portions = Arrays.stream(thicknessesMm)
                .mapToObj(mm -> String.format(
                        Locale.ROOT,
                        "{\"id\":\"p%s\",\"food\":{\"id\":\"%s\",\"condition\":\"%s\"},\"geometry\":{\"shape\":\"slab\","
                                + "\"thicknessMm\":%s},\"start\":{\"temperatureC\":%s}}",
                        mm,
                        food,
                        condition,
                        mm,
                        startC))
                .collect(Collectors.joining(","));
        String body = "{\"sheet\":" + terms + ",\"portions\":[" + portions + "]}";
        var answer = http().contentType(JSON).body(body).post(SHEETS);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return READER.readTree(answer.asByteArray());
    }

    /** Extra time grows about with the square of the thickness; frozen over thawed 1.2 to 1.8 (usual 1.30 to 1.50). */
    @Test
    void s04_how_much_longer_from_frozen() {
        JsonNode sheet = sheet(
                "{\"surroundings\":{\"bath\":{\"setpointC\":55}},\"cards\":[\"fridge\",\"frozen\"],\"fridgeC\":5}",
                "beef-sirloin",
                "raw",
                5,
                25,
                40,
                50);
        double[] extra = new double[3];
        for (int i = 0; i < 3; i++) {
            double fridge = card(sheet, i, "fridge").at("/hotThroughLateS").asDouble();
            double frozen = card(sheet, i, "frozen").at("/hotThroughLateS").asDouble();
            extra[i] = frozen - fridge;
            assertThat(frozen / fridge).isBetween(1.2, 1.8);
        }
        // +13 to 20 min at 25 mm and +47 to 62 at 50 mm: 2.35 to 4.8 times as much.
        assertThat(extra[2] / extra[0]).isBetween(2.35, 4.8);
        assertThat(extra[1]).isBetween(extra[0], extra[2]);
        assertThat(extra[0]).isGreaterThan(13 * 60.0);
        assertThat(extra[2]).isGreaterThan(47 * 60.0);
    }

    /** 14, 46, 166 and 623 min for 12.5, 25, 50 and 100 mm: 3.4 to 4.0 times for twice the thickness, from 50 to 100. */
    @Test
    void s12_time_grows_with_the_square_of_the_thickness() {
        JsonNode sheet = sheet(
                "{\"surroundings\":{\"bath\":{\"setpointC\":55}},\"tolerances\":{\"thicknessMm\":0}}",
                "beef-sirloin",
                "raw",
                5,
                25,
                50,
                100);
        double[] hot = new double[3];
        for (int i = 0; i < 3; i++) {
            hot[i] = card(sheet, i, "fridge").at("/hotThroughLateS").asDouble();
        }
        assertThat(hot[2] / hot[1]).isBetween(3.4, 4.0);
        // A known disagreement: 3.1 from 25 to 50 mm, below the range, which is of nominal times. A card counts with a
        // low
        // film, which weighs more on thin pieces; in proportion to the thickness it would be 2.
        assertThat(hot[1] / hot[0]).as("known to lie below 3.4").isBetween(2.5, 3.4);
        // Not sooner than the short end of the ranges, 0.75 of these times.
        assertThat(hot[0]).isGreaterThan(46 * 60.0 * 0.75);
        assertThat(hot[1]).isGreaterThan(166 * 60.0 * 0.75);
        assertThat(hot[2]).isGreaterThan(623 * 60.0 * 0.75);
    }

    /** 27, 40 and 86 min to 54 C for 20, 25 and 38 mm of cooked steak: no one time serves all. */
    @Test
    void s24_warming_up_takes_as_long_as_cooking_through() {
        JsonNode sheet =
                sheet("{\"surroundings\":{\"bath\":{\"setpointC\":55}}}", "beef-sirloin", "cooked", 4, 20, 25, 38);
        int[] nominalMin = {27, 40, 86};
        int before = 0;
        for (int i = 0; i < 3; i++) {
            JsonNode card = card(sheet, i, "fridge");
            int late = card.at("/hotThroughLateS").asInt();
            assertThat(late).isGreaterThan(nominalMin[i] * 60).isGreaterThan(before);
            assertThat(card.at("/title").asString()).contains("warm up");
            before = late;
        }
        assertThat(sheet.at("/bands")).hasSize(3);
    }

    /** 150 g and 250 g of the same thickness need the same 53 min (48 to 71); grown in all directions 65 (59 to 86). */
    @Test
    void s32_thickness_and_not_weight_sets_the_time() {
        String portions = """
                [{"id":"150 g","food":{"id":"chicken-breast"},"start":{"temperatureC":5},
                  "geometry":{"shape":"slab","thicknessMm":25,"massG":150}},
                 {"id":"250 g longer","food":{"id":"chicken-breast"},"start":{"temperatureC":5},
                  "geometry":{"shape":"slab","thicknessMm":25,"massG":250}},
                 {"id":"250 g thicker","food":{"id":"chicken-breast"},"start":{"temperatureC":5},
                  "geometry":{"shape":"slab","thicknessMm":29.6,"massG":250}},
                 {"id":"by weight","food":{"id":"chicken-breast"},"start":{"temperatureC":5},
                  "geometry":{"shape":"slab","massG":250}}]""";
        JsonNode sheet = READER.readTree(http().contentType(JSON)
                .body("{\"sheet\":{\"surroundings\":{\"bath\":{\"setpointC\":62}}},\"portions\":" + portions + "}")
                .post(SHEETS)
                .asByteArray());
        assertThat(sheet.at("/portions/1/band").asInt())
                .isEqualTo(sheet.at("/portions/0/band").asInt());
        double thin = card(sheet, 0, "fridge").at("/timeS").asDouble();
        double thick = card(sheet, 2, "fridge").at("/timeS").asDouble();
        assertThat(thin).isGreaterThanOrEqualTo(48 * 60.0);
        assertThat(thick / thin).isBetween(1.05, 250.0 / 150.0);
        assertThat(sheet.at("/portions/3/problems/0/code").asString()).isEqualTo("SIZE_MISSING");
        assertThat(sheet.at("/portions/3/problems/0/pointer").asString())
                .isEqualTo("#/portions/3/geometry/thicknessMm");
    }
}
