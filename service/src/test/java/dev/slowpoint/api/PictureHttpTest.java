package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tools.jackson.databind.JsonNode;

/** The same plan as a picture. Every picture is kept beside the reports of the tests, to be looked at. */
class PictureHttpTest extends HttpTest {

    private static final String SVG = "image/svg+xml";

    /** How much of a text lies before its place, by its anchor. */
    private static final Map<String, Double> SHARE_BEFORE = Map.of("middle", 0.5, "end", 1.0);

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            chicken  | {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab","thicknessMm":30},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":63}}}
            frozen   | {"food":{"id":"salmon"},"geometry":{"shape":"slab","thicknessMm":25},"start":{"temperatureC":-18},"surroundings":{"bath":{"setpointC":52}}}
            chuck    | {"food":{"id":"beef-chuck"},"geometry":{"shape":"brick","thicknessMm":76,"widthMm":120,"lengthMm":180},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":58.3}}}
            burger   | {"food":{"id":"beef-minced","form":"minced"},"geometry":{"shape":"slab","thicknessMm":25},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":60}}}
            steak    | {"food":{"id":"beef-sirloin"},"geometry":{"shape":"slab","thicknessMm":28},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":54}},"then":[{"step":"chill","medium":"iceWater","durationS":600},{"step":"sear","method":"pan","secondsPerSide":60},{"step":"rest","durationS":300}]}
            carrot   | {"food":{"id":"carrot"},"geometry":{"shape":"cylinder","diameterMm":25},"start":{"temperatureC":10},"surroundings":{"bath":{"setpointC":85}}}
            large    | {"food":{"id":"beef-sirloin","form":"rolled"},"geometry":{"shape":"cylinder","diameterMm":150},"start":{"temperatureC":5},"surroundings":{"bath":{"setpointC":55}}}
            """)
    void a_plan_is_answered_as_a_picture_that_says_the_same(String name, String request) throws Exception {
        byte[] svg = picture(name, PLANS, request);
        Element root = parsed(svg);
        JsonNode plan = READER.readTree(
                http().contentType(JSON).body(request).post(PLANS).asByteArray());
        List<String> texts = texts(root);
        String all = String.join("\n", texts);
        assertThat(root.getElementsByTagName("title").item(0).getTextContent())
                .contains(temperature(plan.at("/setpointC").asDouble()));
        assertThat(root.getElementsByTagName("desc").item(0).getTextContent())
                .contains(plan.at("/safety/rule").asString());
        for (String milestone : List.of("hotThrough", "safe", "tender", "goodUntil")) {
            JsonNode nominal = plan.at("/times/" + milestone + "/nominalS");
            if (!nominal.isMissingNode()) {
                assertThat(all).as(milestone).contains(time(nominal.asInt()));
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            under-way  | {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":40},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":60}},"soFar":{"elapsedS":3000}}
            power-cut  | {"food":{"id":"beef-chuck"},"geometry":{"shape":"brick","thicknessMm":76,"widthMm":120,"lengthMm":180},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":65}},"soFar":{"elapsedS":36000,"events":[{"event":"heaterOff","fromS":25200,"untilS":32400,"foundC":55}]}}
            lost       | {"food":{"id":"pork-shoulder"},"geometry":{"shape":"slab","thicknessMm":90},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":73.9}},"soFar":{"elapsedS":43200,"events":[{"event":"heaterOff","fromS":25200,"untilS":43200,"foundC":40}]}}
            logged     | {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab","thicknessMm":35},"start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":63}},"soFar":{"elapsedS":2400,"bathLog":[{"atS":0,"waterC":63},{"atS":300,"waterC":59},{"atS":900,"waterC":61},{"atS":1500,"waterC":62.8},{"atS":2400,"waterC":63}]}}
            """)
    void a_replan_is_answered_as_a_picture_that_says_the_same(String name, String request) throws Exception {
        byte[] svg = picture(name, "/v1/replans", request);
        Element root = parsed(svg);
        JsonNode plan = READER.readTree(
                http().contentType(JSON).body(request).post("/v1/replans").asByteArray());
        String all = String.join("\n", texts(root));
        assertThat(all).contains("now");
        JsonNode left = plan.at("/left/bestS");
        if (left.isMissingNode()) {
            assertThat(plan.at("/decision").asString()).isIn("discard", "getDecision", "changePlan");
        } else if (left.asInt() > 0) {
            assertThat(all).contains(time(left.asInt()));
        }
        JsonNode safe = plan.at("/times/safe/nominalS");
        if (!plan.at("/takeOut").isMissingNode()) {
            assertThat(all).contains(time(safe.asInt()));
        } else {
            assertThat(all)
                    .as("what it would have become is of no use")
                    .doesNotContain(time(safe.asInt()))
                    .contains(plan.at("/reason/text").asString().substring(0, 20));
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            chill-ice    | {"food":{"id":"beef-sirloin"},"geometry":{"shape":"slab","thicknessMm":40},"start":{"temperatureC":57},"chill":{"medium":"iceWater"}}
            chill-fridge | {"food":{"id":"pork-shoulder"},"geometry":{"shape":"slab","thicknessMm":80},"start":{"temperatureC":70},"chill":{"medium":"fridge"}}
            chill-frozen | {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab","thicknessMm":25},"start":{"temperatureC":63},"chill":{"medium":"blastAir","mediumC":-20,"durationS":7200}}
            """)
    void a_chill_is_answered_as_a_picture_that_says_the_same(String name, String request) throws Exception {
        byte[] svg = picture(name, "/v1/chill-plans", request);
        JsonNode plan = READER.readTree(
                http().contentType(JSON).body(request).post("/v1/chill-plans").asByteArray());
        String all = String.join("\n", texts(parsed(svg)));
        assertThat(all).contains(plan.at("/cooling/rule").asString());
        for (JsonNode limit : plan.at("/cooling/limits")) {
            assertThat(all).contains(time(limit.at("/longestS").asInt()));
            JsonNode taken = limit.at("/taken/lateS");
            if (!taken.isMissingNode()) {
                assertThat(all).contains(time(taken.asInt()));
            }
        }
    }

    @Test
    void json_remains_what_anyone_else_gets() {
        for (String accept : List.of("*/*", "application/json, image/svg+xml", "image/svg+xml;q=0.5, */*")) {
            Response answer = http().contentType(JSON).accept(accept).body(PORK).post(PLANS);
            assertThat(answer.contentType()).as(accept).isEqualTo("application/json");
        }
    }

    @Test
    void a_picture_that_cannot_be_drawn_is_a_problem_in_json() {
        Response answer = http().contentType(JSON)
                .accept(SVG)
                .body(PORK.replace("pork-loin", "no-such-food"))
                .post(PLANS);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.contentType()).isEqualTo(PROBLEM);
    }

    /** A picture as it must be whatever it shows, kept to be looked at. */
    private byte[] picture(String name, String path, String request) throws Exception {
        Response picture = http().contentType(JSON).accept(SVG).body(request).post(path);
        assertThat(picture.statusCode()).as(picture.asString()).isEqualTo(200);
        assertThat(picture.contentType()).isEqualTo(SVG);
        byte[] svg = picture.asByteArray();
        assertThat(picture.header("Content-Length")).isEqualTo(Integer.toString(svg.length));
        Path kept = Path.of("target", "pictures");
        Files.createDirectories(kept);
        Files.write(kept.resolve(name + ".svg"), svg);
        Element root = parsed(svg);
        assertThat(root.getTagName()).isEqualTo("svg");
        assertThat(root.getAttribute("role")).isEqualTo("img");
        assertThat(root.getElementsByTagName("title").item(0).getTextContent()).isNotBlank();
        assertThat(root.getElementsByTagName("desc").item(0).getTextContent()).isNotBlank();
        NodeList written = root.getElementsByTagName("text");
        for (int i = 0; i < written.getLength(); i++) {
            Element text = (Element) written.item(i);
            double length = (text.getAttribute("class").endsWith("small") ? 4.9 : 5.6)
                    * text.getTextContent().length();
            double x = Double.parseDouble(text.getAttribute("x"));
            double begin = x - length * SHARE_BEFORE.getOrDefault(text.getAttribute("text-anchor"), 0.0);
            assertThat(begin).as(text.getTextContent()).isGreaterThan(-1.0);
            if (!text.getAttribute("class").equals("title")) {
                assertThat(begin + length).as(text.getTextContent()).isLessThan(490.0);
            }
        }
        assertThat(new String(svg, java.nio.charset.StandardCharsets.UTF_8))
                .doesNotContain("NaN", "Infinity", "<script", "href", "url(");
        assertThat(http().contentType(JSON).accept(SVG).body(request).post(path).asByteArray())
                .as("the same request gives the same bytes")
                .isEqualTo(svg);
        return svg;
    }

    private static Element parsed(byte[] svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
        return document.getDocumentElement();
    }

    private static List<String> texts(Element root) {
        List<String> texts = new ArrayList<>();
        NodeList nodes = root.getElementsByTagName("text");
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(nodes.item(i).getTextContent());
        }
        return texts;
    }

    private static String temperature(double celsius) {
        return celsius == Math.rint(celsius)
                ? String.format(Locale.ROOT, "%.0f °C", celsius)
                : String.format(Locale.ROOT, "%.1f °C", celsius);
    }

    private static String time(int seconds) {
        int minutes = (seconds + 59) / 60;
        if (minutes < 60) {
            return minutes + " min";
        }
        return minutes % 60 == 0 ? minutes / 60 + " h" : minutes / 60 + " h " + minutes % 60 + " min";
    }
}
