package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
        Response picture = http().contentType(JSON).accept(SVG).body(request).post(PLANS);
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
        for (int i = 0; i < root.getElementsByTagName("text").getLength(); i++) {
            Element text = (Element) root.getElementsByTagName("text").item(i);
            assertThat(Double.parseDouble(text.getAttribute("x")))
                    .as(text.getTextContent())
                    .isBetween(0.0, 480.0);
        }
        assertThat(new String(svg, java.nio.charset.StandardCharsets.UTF_8))
                .doesNotContain("NaN", "Infinity", "<script", "href", "url(");
        assertThat(http().contentType(JSON)
                        .accept(SVG)
                        .body(request)
                        .post(PLANS)
                        .asByteArray())
                .as("the same request gives the same bytes")
                .isEqualTo(svg);
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
