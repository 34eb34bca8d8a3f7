package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

class LookupTableHttpTest extends HttpTest {

    private static final String CSV = "text/csv";

    /** A coarse table, as near as asked for in any representation. */
    private static final String COARSE = """
            {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab"},"thickness":{"fromMm":20,"toMm":30},
             "setpoint":{"fromC":61,"toC":63},"start":{"fromC":3,"toC":5},"withinPercent":20,"longestBytes":20000}""";

    private static final String WIDE = """
            {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab"},"thickness":{"fromMm":10,"toMm":60},
             "setpoint":{"fromC":58,"toC":70},"start":{"fromC":1,"toC":10},"quantities":["hotThrough","safe"],
             "withinPercent":0.5,"longestBytes":4000}""";

    private Response asked(String body, String accept) {
        return http().contentType(JSON).accept(accept).body(body).post(TABLES);
    }

    private JsonNode answered(String body) {
        Response response = asked(body, JSON);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    @ParameterizedTest
    @CsvSource({JSON, CBOR, CSV})
    void an_answer_is_no_longer_than_asked_in_any_representation_and_uses_the_room(String type) {
        Response response = asked(WIDE, type);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.contentType()).startsWith(type);
        assertThat(response.header("Content-Length")).isEqualTo(Integer.toString(response.asByteArray().length));
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        assertThat(response.asByteArray().length).isBetween(2800, 4000);
    }

    @Test
    void text_binary_and_rows_say_the_same() {
        JsonNode table = answered(COARSE);
        assertThat(CBOR_READER.readTree(asked(COARSE, CBOR).asByteArray()).toString())
                .isEqualTo(table.toString());
        Response rows = asked(COARSE, CSV);
        assertThat(rows.header("Slowpoint-Table"))
                .contains(
                        table.at("/digest").asString(),
                        table.at("/parameterSet").asString());
        assertThat(rows.header("Slowpoint-Table-Errors"))
                .startsWith("hotThrough;greatestS="
                        + table.at("/columns/0/greatestErrorS").asInt() + ";");
        assertThat(rows.header("Slowpoint-Table-Notices")).contains("TABLE_CHECKED_NOT_PROVEN");
        List<String> lines = rows.asString().lines().toList();
        assertThat(lines.get(0)).isEqualTo("thicknessMm,setpointC,startC,hotThroughS,safeS,tenderS,goodUntilS");
        List<List<Double>> expected = new ArrayList<>();
        int node = 0;
        for (JsonNode thickness : table.at("/thicknessMm")) {
            for (JsonNode setpoint : table.at("/setpointC")) {
                for (JsonNode start : table.at("/startC")) {
                    List<Double> row =
                            new ArrayList<>(List.of(thickness.asDouble(), setpoint.asDouble(), start.asDouble()));
                    for (JsonNode column : table.at("/columns")) {
                        row.add(column.at("/timesS").get(node).asDouble());
                    }
                    expected.add(row);
                    node++;
                }
            }
        }
        assertThat(lines.stream()
                        .skip(1)
                        .map(line -> Arrays.stream(line.split(",", -1))
                                .map(Double::valueOf)
                                .toList()))
                .containsExactlyElementsOf(expected);
    }

    /** At a node of the grid the table is what the plan says, to the safe side. */
    @Test
    void at_its_nodes_a_table_is_near_the_plan_that_the_service_answers() {
        JsonNode table = answered(COARSE);
        String plan = """
                {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab","thicknessMm":20},
                 "start":{"temperatureC":3},"surroundings":{"bath":{"setpointC":61}}}""";
        JsonNode times = READER.readTree(
                        http().contentType(JSON).body(plan).post(PLANS).asByteArray())
                .at("/times");
        assertThat(table.at("/thicknessMm/0").asDouble()).isEqualTo(20.0);
        for (JsonNode column : table.at("/columns")) {
            String quantity = column.at("/quantity").asString();
            int told = column.at("/timesS/0").asInt();
            if (quantity.equals("goodUntil")) {
                int early = times.at("/goodUntil/earlyS").asInt();
                assertThat(told).isBetween(early - early / 5, early);
            } else {
                int late = times.at("/" + quantity + "/lateS").asInt();
                assertThat(told).isBetween(late, late + late / 5);
            }
        }
    }

    @Test
    void members_stand_in_a_fixed_order_and_nothing_is_null() {
        JsonNode table = answered(COARSE);
        assertThat(List.copyOf(table.propertyNames()))
                .containsExactly(
                        "parameterSet",
                        "digest",
                        "thicknessMm",
                        "setpointC",
                        "startC",
                        "columns",
                        "checkedPoints",
                        "rounds",
                        "warnings",
                        "cautions");
        assertThat(table.toString()).doesNotContain("null");
        assertThat(asked(COARSE, JSON).asByteArray())
                .isEqualTo(asked(COARSE, JSON).asByteArray());
        for (JsonNode column : table.at("/columns")) {
            assertThat(column.at("/greatestErrorPercent").asDouble()).isLessThan(20.0);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"fromMm\":20 | \"fromMm\":31 | RANGE_REVERSED | #/thickness/fromMm | 400",
                "\"fromC\":61 | \"fromC\":64 | RANGE_REVERSED | #/setpoint/fromC | 400",
                "\"fromC\":3 | \"fromC\":6 | RANGE_REVERSED | #/start/fromC | 400",
                "\"slab\" | \"brick\" | SIZE_MISSING | #/geometry/widthMm | 400",
                "\"slab\" | \"slab\",\"lengthMm\":90 | SIZE_NOT_OF_SHAPE | #/geometry/lengthMm | 400",
                "\"slab\" | \"cylinder\",\"lengthMm\":25 | SIZES_CONTRADICT | #/geometry/lengthMm | 400",
                "\"slab\" | \"slab\",\"thicknessMm\":25 | UNKNOWN_FIELD | #/geometry/thicknessMm | 400",
                "\"longestBytes\":20000 | \"longestBytes\":100 | OUT_OF_RANGE | #/longestBytes | 400",
                "\"longestBytes\":20000 | \"quantities\":[\"done\"] | UNKNOWN_WORD | #/quantities/0 | 400",
                "\"longestBytes\":20000 | \"longestBytes\":600 | BUDGET_TOO_SMALL | #/longestBytes | 422",
                "\"longestBytes\":20000 | \"target\":{\"coreC\":62} | CORE_ABOVE_BATH | #/target/coreC | 422",
                "\"fromC\":3 | \"fromC\":-9 | START_ACROSS_FREEZING | #/start | 422",
                "\"fromC\":61 | \"fromC\":30 | BATH_TOO_COOL | #/setpoint/fromC | 422",
                "chicken-breast | chicken-breath | UNKNOWN_FOOD | #/food/id | 422",
            })
    void what_cannot_be_answered_is_refused_by_name_and_place(
            String from, String to, String code, String pointer, int status) {
        String body = COARSE.replace(from, to);
        assertThat(body).isNotEqualTo(COARSE);
        // Rows alone are so short that no budget is too small for the least of them.
        Response response = asked(body, code.equals("BUDGET_TOO_SMALL") ? JSON : CSV);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        assertThat(response.contentType()).startsWith(PROBLEM);
        assertThat(READER.readTree(response.asByteArray())
                        .at("/errors")
                        .valueStream()
                        .anyMatch(fault -> fault.at("/code").asString().equals(code)
                                && fault.at("/pointer").asString().equals(pointer)))
                .as(response.asString())
                .isTrue();
    }

    @Test
    void without_sentences_codes_are_left_and_there_is_room_for_more_times() {
        String small = WIDE.replace("4000", "2600");
        JsonNode spoken = answered(small);
        JsonNode silent = answered(small.replace("2600", "2600,\"sentences\":false"));
        assertThat(silent.at("/columns/0/timesS").size())
                .isGreaterThan(2 * spoken.at("/columns/0/timesS").size());
        assertThat(silent.at("/cautions").findValues("code"))
                .isEqualTo(spoken.at("/cautions").findValues("code"));
        assertThat(silent.findValues("text")).isEmpty();
        assertThat(spoken.at("/cautions").findValues("text")).hasSize(3);
    }

    @Test
    void ends_that_cannot_be_told_exactly_are_taken_wider() {
        JsonNode table =
                answered(COARSE.replace("\"fromMm\":20", "\"fromMm\":20.123").replace("\"toC\":63", "\"toC\":62.999"));
        assertThat(table.at("/thicknessMm/0").asDouble()).isEqualTo(20.12);
        JsonNode setpoints = table.at("/setpointC");
        assertThat(setpoints.get(setpoints.size() - 1).asDouble()).isEqualTo(63.0);
    }
}
