package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

class LogReviewHttpTest extends HttpTest {

    private static final String HTML = "text/html";
    private static final String CSV = "text/csv";
    private static final String QUERY = "?food=pork-loin&place=core&errorK=0.5";

    /** From 4 C up to 61 C in two hours and there for another, read every two minutes. */
    private static double reading(int i) {
        return i < 60 ? 4.0 + 57.0 * i / 60.0 : 61.0;
    }

    private static String table() {
        StringBuilder table = new StringBuilder("timeS,temperatureC\n");
        for (int i = 0; i <= 90; i++) {
            table.append(120 * i).append(',').append(reading(i)).append('\n');
        }
        return table.toString();
    }

    private static String json(String more) {
        StringBuilder times = new StringBuilder();
        StringBuilder readings = new StringBuilder();
        for (int i = 0; i <= 90; i++) {
            times.append(i == 0 ? "" : ",").append(120 * i);
            readings.append(i == 0 ? "" : ",").append(reading(i));
        }
        return "{\"food\":{\"id\":\"pork-loin\"}," + more
                + "\"sensor\":{\"place\":\"core\",\"errorK\":0.5},\"timesS\":[" + times + "],\"temperaturesC\":["
                + readings + "]}";
    }

    private Response review(String body, String query, String accept) {
        return http().contentType(JSON).accept(accept).body(body).post(LOGS + query);
    }

    private JsonNode answer(String body) {
        Response response = review(body, "", JSON);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    @Test
    void a_review_has_its_length_and_is_not_to_be_stored() {
        Response response = review(json(""), "", JSON);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.contentType()).isEqualTo(JSON);
        assertThat(response.header("Content-Length")).isEqualTo(Integer.toString(response.asByteArray().length));
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        assertThat(review(json(""), "", JSON).asByteArray()).isEqualTo(response.asByteArray());
        assertThat(response.asByteArray()).hasSizeLessThan(2600);
    }

    @Test
    void a_review_says_verdict_rule_limits_and_readings() throws Exception {
        JsonNode review = answer(json("\"label\":\"Cook log 17\",\"batch\":\"Batch 4\","));
        assertThat(review.at("/verdict").asString()).isEqualTo("met");
        assertThat(review.at("/rule/id").asString()).isEqualTo("us-fsis-2021");
        assertThat(review.at("/rule/edition").asString()).isEqualTo("December 2021");
        assertThat(review.at("/label").asString()).isEqualTo("Cook log 17");
        assertThat(review.at("/readings/received").asInt()).isEqualTo(91);
        assertThat(review.at("/readings/excluded").asInt()).isZero();
        assertThat(review.at("/readings/errorK").asDouble()).isEqualTo(0.5);
        assertThat(review.at("/limits").toString()).contains("\"what\":\"warmUp\"", "\"what\":\"lethality\"");
        ByteBuffer bytes = ByteBuffer.allocate(16 * 91);
        for (int i = 0; i <= 90; i++) {
            bytes.putDouble(120.0 * i).putDouble(reading(i));
        }
        assertThat(review.at("/readings/sha256").asString())
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(bytes.array())));
    }

    @Test
    void text_binary_and_table_give_the_same_review() {
        byte[] expected = review(json(""), "?include=curve,sources", JSON).asByteArray();
        Response table = http().contentType(CSV).body(table()).post(LOGS + QUERY + "&include=curve,sources");
        assertThat(table.statusCode()).as(table.asString()).isEqualTo(200);
        assertThat(table.asByteArray()).isEqualTo(expected);
        Response marked = http().contentType("text/csv; charset=utf-8; header=present")
                .body(("\uFEFF" + table().replace("\n", "\r\n")).getBytes(StandardCharsets.UTF_8))
                .post(LOGS + QUERY + "&include=curve,sources");
        assertThat(marked.asByteArray()).isEqualTo(expected);
        for (String accepted : List.of(JSON, CBOR)) {
            Response response = http().contentType(CBOR)
                    .accept(accepted)
                    .body(cbor(json("")))
                    .post(LOGS + "?include=curve,sources");
            assertThat(response.contentType()).isEqualTo(accepted);
            assertThat(READER.readTree(tree(response.asByteArray(), accepted).toString()))
                    .isEqualTo(READER.readTree(expected));
        }
        assertThat(READER.readTree(expected).at("/curve/timesS").size()).isBetween(2, 200);
    }

    @Test
    void a_page_can_be_printed_and_holds_nothing_that_runs() {
        Response page = review(json("\"label\":\"Cook log 17\","), "", HTML);
        assertThat(page.statusCode()).as(page.asString()).isEqualTo(200);
        assertThat(page.contentType().toLowerCase(Locale.ROOT)).isEqualTo("text/html;charset=utf-8");
        assertThat(page.header("Content-Security-Policy"))
                .startsWith("default-src 'none'; style-src 'sha256-")
                .doesNotContain("unsafe");
        assertThat(page.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(page.header("Cache-Control")).isEqualTo("no-store");
        assertThat(page.header("Content-Length")).isEqualTo(Integer.toString(page.asByteArray().length));
        String text = new String(page.asByteArray(), StandardCharsets.UTF_8);
        assertThat(text)
                .startsWith("<!DOCTYPE html>")
                .contains(
                        "<svg ",
                        "polyline",
                        "@media print",
                        "Signature",
                        "Critical limits",
                        "Place of the sensor",
                        "Cook log 17",
                        "Met")
                .doesNotContain("<script", "http://", "https://", "style=", "NaN", "Infinity");
        assertThat(review(json("\"label\":\"Cook log 17\","), "", HTML).asByteArray())
                .isEqualTo(page.asByteArray());
        assertThat(http().contentType(CSV)
                        .accept("text/html,application/xhtml+xml,*/*;q=0.8")
                        .body(table())
                        .post(LOGS + QUERY)
                        .contentType())
                .startsWith(HTML);
    }

    @Test
    void the_policy_names_the_style_of_the_page() throws Exception {
        Response page = review(json(""), "", HTML);
        String text = new String(page.asByteArray(), StandardCharsets.UTF_8);
        String style = text.substring(text.indexOf("<style>") + 7, text.indexOf("</style>"));
        String hash = Base64.getEncoder()
                .encodeToString(MessageDigest.getInstance("SHA-256").digest(style.getBytes(StandardCharsets.UTF_8)));
        assertThat(page.header("Content-Security-Policy")).contains("'sha256-" + hash + "'");
    }

    @Test
    void what_a_caller_writes_stays_text_on_the_page() {
        String label = "<script>alert(1)</script> \\\"x\\\" 'y' & <img src=q onerror=w>";
        String text = review(json("\"label\":\"" + label + "\",\"batch\":\"</title><b>\","), "", HTML)
                .asString();
        assertThat(text)
                .doesNotContain("<script", "<img", "<b>")
                .contains("&lt;script&gt;alert(1)&lt;/script&gt; &quot;x&quot; &#39;y&#39; &amp; &lt;img")
                .contains("&lt;/title&gt;&lt;b&gt;");
    }

    @ParameterizedTest
    @CsvSource({"\\u0000", "\\u202e", "\\u2028", "\\ud800", "\\n"})
    void text_that_could_show_a_record_as_another_is_refused(String escape) {
        Response response = review(json("\"label\":\"a" + escape + "b\","), "", JSON);
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(READER.readTree(response.asByteArray())
                        .at("/errors/0/pointer")
                        .asString())
                .isEqualTo("#/label");
    }

    @Test
    void gaps_and_faults_stand_in_the_answer_and_on_the_page() {
        String table = table().replaceAll("(?m)^(7200|7320|7440|7560),.*\n", "")
                .replaceFirst("(?m)^9000,.*$", "9000,NaN")
                .replaceFirst("(?m)^9600,.*$", "9600,-127");
        Response response = http().contentType(CSV).body(table).post(LOGS + QUERY);
        JsonNode review = READER.readTree(response.asByteArray());
        assertThat(review.at("/deviations")).hasSize(3);
        assertThat(review.at("/deviations/0/code").asString()).isEqualTo("GAP");
        assertThat(review.at("/deviations/0/fromS").asInt()).isEqualTo(7080);
        assertThat(review.at("/deviations/0/text").asString()).contains("600 seconds");
        assertThat(review.at("/deviations/1/code").asString()).isEqualTo("NO_READING");
        assertThat(review.at("/deviations/2/code").asString()).isEqualTo("FAULT_VALUE");
        assertThat(review.at("/readings/excluded").asInt()).isEqualTo(2);
        String page = http().contentType(CSV)
                .accept(HTML)
                .body(table)
                .post(LOGS + QUERY)
                .asString();
        assertThat(page.split("class=\"unread\"", -1)).hasSize(4);
        assertThat(page.split("<polyline", -1)).hasSize(5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "timeS,temperatureC|time,temp|MALFORMED_BODY|#row=1",
                "240,|240;|MALFORMED_BODY|#row=4",
                "240,|240,5,|MALFORMED_BODY|#row=4",
                "240,|100,|TIMES_NOT_ASCENDING|#cell=4,1",
                "240,|120,|TIMES_NOT_ASCENDING|#cell=4,1",
                "240,|x,|WRONG_TYPE|#cell=4,1",
                "240,|NaN,|WRONG_TYPE|#cell=4,1",
                "240,|+240,|WRONG_TYPE|#cell=4,1",
                "240,|0240,|WRONG_TYPE|#cell=4,1",
                "240,|-240,|OUT_OF_RANGE|#cell=4,1",
                "240,5.9|240,|WRONG_TYPE|#cell=4,2",
                "240,5.9|240,\"5.9\"|WRONG_TYPE|#cell=4,2",
                "240,5.9|240,1e400|OUT_OF_RANGE|#cell=4,2",
                "240,5.9|240,500|OUT_OF_RANGE|#cell=4,2"
            })
    void a_fault_in_a_table_is_named_by_its_cell(String from, String to, String code, String pointer) {
        String table = table().replaceFirst("(?m)^" + Pattern.quote(from), to);
        assertThat(table).isNotEqualTo(table());
        Response response = http().contentType(CSV).body(table).post(LOGS + QUERY);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/code").asString()).as(response.asString()).isEqualTo(code);
        assertThat(fault.at("/pointer").asString()).isEqualTo(pointer);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "place=core|MISSING_FIELD|?food",
                "food=pork-loin|MISSING_FIELD|?place",
                "food=pork-loin&place=core&errorK=x|WRONG_TYPE|?errorK",
                "food=pork-loin&place=core&errorK=9|OUT_OF_RANGE|?errorK",
                "food=pork-loin&place=core&place=bath|DUPLICATE_FIELD|?place",
                "food=pork-loin&place=corr|UNKNOWN_WORD|?place",
                "food=pork-loin&place=core&aspects=cooking,nap|UNKNOWN_WORD|?aspects/1",
                "food=pork-loin&place=core&thicknessMm=4|UNKNOWN_PARAMETER|?thicknessMm"
            })
    void a_fault_in_the_query_of_a_table_is_named(String query, String code, String pointer) {
        Response response = http().contentType(CSV).body(table()).post(LOGS + "?" + query);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/code").asString()).isEqualTo(code);
        assertThat(fault.at("/pointer").asString()).isEqualTo(pointer);
    }

    @Test
    void a_query_belongs_to_tables_alone() {
        Response response = review(json(""), "?food=pork-loin", JSON);
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(response.asString()).contains("UNKNOWN_PARAMETER");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "[0,120,|[0,0,|400|TIMES_NOT_ASCENDING|#/timesS/1",
                "[0,120,|[0,121,120,|400|LENGTHS_DIFFER|#/temperaturesC",
                "[0,120,|[0,\"120\",|400|WRONG_TYPE|#/timesS/1",
                "[0,120,|[0,null,|400|NULL_VALUE|#/timesS/1",
                "[0,120,|[0,[120],|400|WRONG_TYPE|#/timesS/1",
                "[0,120,|[-1,120,|400|OUT_OF_RANGE|#/timesS/0",
                "[4.0,|[NaN,|400|NOT_FINITE|#/temperaturesC/0",
                "[4.0,|[1e400,|400|NOT_FINITE|#/temperaturesC/0",
                "[4.0,|[-300,|400|OUT_OF_RANGE|#/temperaturesC/0",
                "\"core\"|\"oven\"|400|UNKNOWN_WORD|#/sensor/place",
                "\"sensor\"|\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":30},\"sensor\"|400|FIELDS_EXCLUDE_EACH_OTHER|#/geometry",
                "\"sensor\"|\"aspects\":[\"cooling\"],\"sensor\"|200||",
                "\"core\"|\"bath\"|200||",
                "\"sensor\"|\"rule\":\"FC-COOL\",\"sensor\"|422|UNKNOWN_RULE|#/rule",
                "\"sensor\"|\"coolingRule\":\"us-fsis-2021\",\"sensor\"|422|UNKNOWN_RULE|#/coolingRule",
                "\"sensor\"|\"purpose\":\"reheat\",\"sensor\"|422|PURPOSE_NEEDS_COOKED|#/purpose",
                "pork-loin|no-such|422|UNKNOWN_FOOD|#/food/id"
            })
    void a_fault_is_named_by_its_place(String from, String to, int status, String code, String pointer) {
        Response response = review(json("").replace(from, to), "", JSON);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        if (code != null) {
            JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
            assertThat(fault.at("/code").asString()).as(response.asString()).isEqualTo(code);
            assertThat(fault.at("/pointer").asString()).isEqualTo(pointer);
        }
    }

    @Test
    void a_bath_log_with_a_piece_computes_its_core() {
        String body = json("\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":20},\"start\":{\"temperatureC\":4},")
                .replace("\"core\"", "\"bath\"");
        JsonNode review = answer(body);
        assertThat(review.at("/verdict").asString()).isEqualTo("met");
        assertThat(review.at("/computedCore/endsC").asDouble()).isBetween(59.0, 61.0);
        assertThat(review.at("/warnings").toString()).doesNotContain("LOG_SHOWS_NO_CORE");
    }

    @Test
    void other_representations_and_methods_are_refused() {
        assertThat(review(json(""), "", "image/png").statusCode()).isEqualTo(406);
        assertThat(http().contentType("text/plain").body("x").post(LOGS).statusCode())
                .isEqualTo(415);
        assertThat(http().contentType(CSV)
                        .header("Content-Encoding", "gzip")
                        .body(table())
                        .post(LOGS + QUERY)
                        .statusCode())
                .isEqualTo(415);
        assertThat(http().get(LOGS).statusCode()).isEqualTo(405);
        assertThat(http().contentType(CSV).body("").post(LOGS + QUERY).statusCode())
                .isEqualTo(400);
    }

    @Test
    void a_hundred_thousand_readings_are_taken_and_one_more_is_not() {
        for (int n : new int[] {100_000, 100_001}) {
            StringBuilder table = new StringBuilder("timeS,temperatureC\n");
            StringBuilder times = new StringBuilder("[");
            StringBuilder readings = new StringBuilder("[");
            for (int i = 0; i < n; i++) {
                String reading =
                        String.format(Locale.ROOT, "%.2f", 60.0 - 55.0 * Math.exp(-i / 1800.0) + 0.01 * (i % 3));
                table.append(i).append(',').append(reading).append('\n');
                times.append(i == 0 ? "" : ", ").append(i);
                readings.append(i == 0 ? "" : ", ").append(reading);
            }
            String body = "{\"food\":{\"id\":\"pork-loin\"},\"sensor\":{\"place\":\"core\"},\"timesS\":" + times
                    + "],\"temperaturesC\":" + readings + "]}";
            int status = n == 100_000 ? 200 : 400;
            assertThat(review(body, "", JSON).statusCode()).isEqualTo(status);
            assertThat(http().contentType(CSV)
                            .body(table.toString())
                            .post(LOGS + QUERY)
                            .statusCode())
                    .isEqualTo(status);
        }
    }

    @Test
    void a_body_may_be_long_here_and_nowhere_else() {
        String padding = " ".repeat(70_000);
        assertThat(review(json("") + padding, "", JSON).statusCode()).isEqualTo(200);
        assertThat(http().contentType(JSON).body(PORK + padding).post(PLANS).statusCode())
                .isEqualTo(413);
        assertThat(review(json("") + " ".repeat(LogReviewRequest.LONGEST_BODY), "", JSON)
                        .statusCode())
                .isEqualTo(413);
    }
}
