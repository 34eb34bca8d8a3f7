package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tools.jackson.databind.JsonNode;

/** Process windows over HTTP: JSON, CBOR, a table and a picture, and what is refused. */
class ProcessWindowHttpTest extends HttpTest {

    private static final String SVG = "image/svg+xml";

    /** A question about a slab of pork loin without a setpoint. */
    private static final String LOIN = """
            {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},
             "start":{"temperatureC":4},"surroundings":{"bath":{}}}""";

    private static String loin(String members) {
        return LOIN.substring(0, LOIN.length() - 1) + "," + members + "}";
    }

    private JsonNode window(String request) {
        Response response = http().contentType(JSON).body(request).post(WINDOWS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    @Test
    void the_lines_at_a_setpoint_are_those_of_a_cook_plan_at_it() {
        JsonNode window = window(loin("\"lowestSetpointC\":57,\"highestSetpointC\":67,\"stepK\":2.5"));
        assertThat(window.at("/setpoints")).hasSize(5);
        for (JsonNode at : window.at("/setpoints")) {
            String cook = LOIN.replace("\"bath\":{}", "\"bath\":{\"setpointC\":" + at.at("/setpointC") + "}");
            JsonNode plan = READER.readTree(
                    http().contentType(JSON).body(cook).post(PLANS).asByteArray());
            for (String line : List.of("hotThrough", "safe", "tender", "goodUntil", "softFrom")) {
                assertThat(at.at("/" + line)).as(line).isEqualTo(plan.at("/times/" + line));
            }
            assertThat(at.at("/takeOut")).isEqualTo(plan.at("/takeOut"));
            assertThat(at.at("/barredBy")).isEqualTo(plan.at("/noTakeOutReason/code"));
            assertThat(at.at("/verdict")).isEqualTo(plan.at("/safety/verdict"));
        }
        assertThat(window.at("/setpoints/4/barredBy").asString()).isEqualTo("TEXTURE_CLOSES_FIRST");
    }

    @Test
    void the_same_question_has_the_same_bytes_and_the_same_members_in_cbor() {
        byte[] once = http().contentType(JSON).body(LOIN).post(WINDOWS).asByteArray();
        byte[] again = http().contentType(JSON).body(LOIN).post(WINDOWS).asByteArray();
        assertThat(again).isEqualTo(once);
        Response binary = http().contentType(CBOR).accept(CBOR).body(cbor(LOIN)).post(WINDOWS);
        assertThat(binary.contentType()).isEqualTo(CBOR);
        assertThat(tree(binary.asByteArray(), CBOR).toString())
                .isEqualTo(READER.readTree(once).toString());
        assertThat(once).hasSizeLessThan(16_000);
    }

    @Test
    void the_warnings_are_those_of_a_cook_plan_at_the_recommended_point() {
        JsonNode window = window(LOIN);
        JsonNode point = window.at("/recommended");
        String cook = LOIN.replace("\"bath\":{}", "\"bath\":{\"setpointC\":" + point.at("/setpointC") + "}")
                .replace("\"surroundings\"", "\"target\":{\"serveAfterS\":" + point.at("/atS") + "},\"surroundings\"");
        JsonNode plan =
                READER.readTree(http().contentType(JSON).body(cook).post(PLANS).asByteArray());
        assertThat(window.at("/warnings")).isEqualTo(plan.at("/warnings"));
        assertThat(window.at("/cautions")).isEqualTo(plan.at("/cautions"));
        assertThat(window.at("/recommended/verdict")).isEqualTo(plan.at("/safety/verdict"));
        assertThat(window.at("/rule")).isEqualTo(plan.at("/safety/rule"));
        assertThat(window.at("/digest")).isEqualTo(plan.at("/digest"));
    }

    @Test
    void a_point_of_ones_own_is_judged_beside_the_recommended_one() {
        String own = LOIN.replace("\"bath\":{}", "\"bath\":{\"setpointC\":60}");
        JsonNode soon = window(own.replace("\"surroundings\"", "\"target\":{\"serveAfterS\":9000},\"surroundings\""));
        assertThat(soon.at("/own/inside").asBoolean()).isFalse();
        assertThat(soon.at("/own/verdict").asString()).isNotEqualTo("met");
        assertThat(soon.at("/own").has("spareTolerances")).isFalse();
        assertThat(soon.at("/own/nearestEdge").asString()).isIn("safe", "hotThrough");
        assertThat(soon.at("/recommended/inside").asBoolean()).isTrue();

        JsonNode best = window(own);
        JsonNode at60 = best.at("/setpoints")
                .valueStream()
                .filter(s -> s.at("/setpointC").asDouble() == 60.0)
                .findFirst()
                .orElseThrow();
        assertThat(best.at("/own/atS")).isEqualTo(at60.at("/takeOut/bestS"));
        assertThat(best.at("/own/inside").asBoolean()).isTrue();
    }

    @Test
    void a_bath_that_a_cook_plan_refuses_is_told_by_the_code_of_the_refusal() {
        JsonNode window = window("""
                {"food":{"id":"beef-minced","form":"minced"},"geometry":{"shape":"slab","thicknessMm":25},
                 "start":{"temperatureC":4},"surroundings":{"bath":{}},
                 "lowestSetpointC":52,"highestSetpointC":64,"stepK":1}""");
        JsonNode cool = window.at("/setpoints/0");
        assertThat(cool.at("/barredBy").asString()).isEqualTo("NON_INTACT_TOO_COOL");
        assertThat(cool.propertyNames()).containsExactlyInAnyOrder("setpointC", "barredBy");
        assertThat(window.at("/region")).hasSize(1);
        assertThat(window.at("/region/0/fromC").asDouble()).isGreaterThan(54.4);
        for (JsonNode reason : window.at("/reasons")) {
            assertThat(reason.at("/text").asString()).isNotBlank();
        }
    }

    @ParameterizedTest(name = "{1} at {0}")
    @CsvSource(delimiter = '|', textBlock = """
            /stepK                              | TOO_MANY_SETPOINTS   | "lowestSetpointC":40,"highestSetpointC":80,"stepK":0.1
            /lowestSetpointC                    | SETPOINTS_REVERSED   | "lowestSetpointC":70,"highestSetpointC":60
            /lowestSetpointC                    | SETPOINTS_REVERSED   | "lowestSetpointC":90
            /highestSetpointC                   | BATH_TOO_COOL        | "lowestSetpointC":25,"highestSetpointC":36
            /target/coreC                       | CORE_ABOVE_BATH      | "lowestSetpointC":55,"highestSetpointC":60,"target":{"coreC":63}
            /rule                               | UNKNOWN_RULE         | "rule":"no-such-rule"
            /target/purpose                     | PURPOSE_NEEDS_COOKED | "target":{"purpose":"reheat"}
            """)
    void what_no_setpoint_can_answer_is_refused_by_name(String pointer, String code, String members) {
        Response response = http().contentType(JSON).body(loin(members)).post(WINDOWS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(422);
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/code").asString()).isEqualTo(code);
        assertThat(fault.at("/pointer").asString()).isEqualTo("#" + pointer);
    }

    @ParameterizedTest(name = "{1} at {0}")
    @CsvSource(delimiter = '|', textBlock = """
            /stepK                              | OUT_OF_RANGE      | "stepK":0.01
            /lowestSetpointC                    | OUT_OF_RANGE      | "lowestSetpointC":135
            /availableS                         | NOT_WHOLE         | "availableS":3600.5
            /momentToleranceS                   | WRONG_TYPE        | "momentToleranceS":"300"
            /then                               | UNKNOWN_FIELD     | "then":[]
            /surroundings/bath/setpointC        | COMPANION_MISSING | "target":{"serveAfterS":7200}
            /availableS                         | NULL_VALUE        | "availableS":null
            """)
    void what_is_outside_the_schema_is_named(String pointer, String code, String members) {
        Response response = http().contentType(JSON).body(loin(members)).post(WINDOWS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/code").asString()).isEqualTo(code);
        assertThat(fault.at("/pointer").asString()).isEqualTo("#" + pointer);
    }

    @Test
    void a_point_of_ones_own_where_no_cook_is_planned_is_refused_at_its_place() {
        Response response = http().contentType(JSON)
                .body(LOIN.replace("\"bath\":{}", "\"bath\":{\"setpointC\":30}"))
                .post(WINDOWS);
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(READER.readTree(response.asByteArray())
                        .at("/errors/0/pointer")
                        .asString())
                .isEqualTo("#/surroundings/bath/setpointC");
    }

    @Test
    void a_table_has_a_line_for_each_setpoint_with_the_same_figures() {
        Response table = http().contentType(JSON).accept("text/csv").body(LOIN).post(WINDOWS);
        assertThat(table.contentType()).isEqualTo("text/csv");
        List<String> lines =
                new String(table.asByteArray(), StandardCharsets.UTF_8).lines().toList();
        List<String> header = List.of(lines.get(0).split(",", -1));
        JsonNode window = window(LOIN);
        assertThat(lines).hasSize(1 + window.at("/setpoints").size());
        for (int i = 1; i < lines.size(); i++) {
            List<String> cells = List.of(lines.get(i).split(",", -1));
            JsonNode at = window.at("/setpoints/" + (i - 1));
            assertThat(cells).hasSameSizeAs(header);
            assertThat(cells.get(0))
                    .isEqualTo(Double.toString(at.at("/setpointC").asDouble()));
            assertThat(cells.get(header.indexOf("safeLateS")))
                    .isEqualTo(at.at("/safe/lateS").asString(""));
            assertThat(cells.get(header.indexOf("goodUntilEarlyS")))
                    .isEqualTo(at.at("/goodUntil/earlyS").asString(""));
            assertThat(cells.get(header.indexOf("takeOutLatestS")))
                    .isEqualTo(at.at("/takeOut/latestS").asString(""));
            assertThat(cells.get(header.indexOf("barredBy")))
                    .isEqualTo(at.at("/barredBy").asString(""));
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            window-loin    | {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":63}},"target":{"serveAfterS":10800}}
            window-breast  | {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab","thicknessMm":30},"start":{"temperatureC":4},"surroundings":{"bath":{}},"availableS":12000}
            window-chuck   | {"food":{"id":"beef-chuck"},"geometry":{"shape":"brick","thicknessMm":76,"widthMm":120,"lengthMm":180},"start":{"temperatureC":4},"surroundings":{"bath":{}},"lowestSetpointC":54}
            window-steak   | {"food":{"id":"beef-sirloin"},"geometry":{"shape":"slab","thicknessMm":25},"start":{"temperatureC":4},"surroundings":{"bath":{}}}
            window-roast   | {"food":{"id":"beef-sirloin"},"geometry":{"shape":"cylinder","diameterMm":150},"start":{"temperatureC":5},"surroundings":{"bath":{}}}
            window-salmon  | {"food":{"id":"salmon"},"geometry":{"shape":"slab","thicknessMm":25},"start":{"temperatureC":4},"surroundings":{"bath":{}}}
            window-kept    | {"food":{"id":"chicken-thigh"},"geometry":{"shape":"slab","thicknessMm":25},"start":{"temperatureC":-18},"surroundings":{"bath":{}},"target":{"purpose":"keep"}}
            window-lone    | {"food":{"id":"carrot"},"geometry":{"shape":"cylinder","diameterMm":25},"start":{"temperatureC":10},"surroundings":{"bath":{}},"lowestSetpointC":85,"highestSetpointC":85}
            """)
    void a_picture_says_what_the_answer_says(String name, String request) throws Exception {
        Response response = http().contentType(JSON).accept(SVG).body(request).post(WINDOWS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.contentType()).isEqualTo(SVG);
        Path pictures = Files.createDirectories(Path.of("target/pictures"));
        Files.write(pictures.resolve(name + ".svg"), response.asByteArray());
        Element root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(response.asByteArray()))
                .getDocumentElement();
        JsonNode window = window(request);
        String description = root.getElementsByTagName("desc").item(0).getTextContent();
        List<String> texts = texts(root);
        if (window.has("recommended")) {
            PictureWords words = new PictureWords(new Languages().english());
            String point = words.temperature(window.at("/recommended/setpointC").asDouble()) + ", "
                    + words.time(window.at("/recommended/atS").asInt());
            assertThat(texts).contains(point);
        } else {
            assertThat(window.at("/region")).isEmpty();
            String why = window.at("/closed/barredBy").asString();
            window.at("/reasons")
                    .valueStream()
                    .filter(r -> r.at("/code").asString().equals(why))
                    .forEach(r -> assertThat(description).contains(r.at("/text").asString()));
        }
        assertThat(texts).contains("safe", "hot through");
        assertThat(description).doesNotContain("{", "null", "NaN", "Infinity");
        assertThat(texts).noneMatch(text -> text.isBlank() || text.contains("null"));
        assertThat(new String(response.asByteArray(), StandardCharsets.UTF_8)).doesNotContain("NaN", "Infinity");
    }

    private static List<String> texts(Element root) {
        List<String> texts = new ArrayList<>();
        NodeList nodes = root.getElementsByTagName("text");
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(nodes.item(i).getTextContent());
        }
        return texts;
    }
}
