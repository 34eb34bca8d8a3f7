package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import tools.jackson.databind.JsonNode;

/** Load plans over HTTP. */
class LoadPlanHttpTest extends HttpTest {

    private static final String SVG = "image/svg+xml";

    private static final String PAIR = """
            {"items":[{"id":"chicken","count":2,"food":{"id":"chicken-breast"},
                       "geometry":{"shape":"slab","thicknessMm":30,"massG":180},"start":{"temperatureC":4}},
                      {"id":"pork","food":{"id":"pork-loin"},
                       "geometry":{"shape":"slab","thicknessMm":40,"massG":400},"start":{"temperatureC":4}}],
             "surroundings":{"bath":{"volumeL":12,"heaterW":900}}}""";

    private JsonNode plan(String body, String query) {
        Response response = http().contentType(JSON).body(body).post(LOADS + query);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    private Response refused(String body, int status) {
        Response response = http().contentType(JSON).body(body).post(LOADS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        assertThat(response.contentType()).isEqualTo(PROBLEM);
        return response;
    }

    @Test
    void an_answer_keeps_its_moments_in_order_and_its_size_small() {
        Response response = http().contentType(JSON).body(PAIR).post(LOADS);
        JsonNode plan = READER.readTree(response.asByteArray());
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        assertThat(response.asByteArray()).hasSizeLessThan(3500);
        assertThat(plan.at("/schedule").asString()).isEqualTo("together");
        assertThat(plan.at("/items/0/id").asString()).isEqualTo("chicken");
        for (JsonNode item : plan.at("/items")) {
            assertThat(item.at("/takeOut/earliestS").asInt())
                    .isLessThanOrEqualTo(item.at("/takeOut/bestS").asInt());
            assertThat(item.at("/takeOut/bestS").asInt())
                    .isEqualTo(plan.at("/readyAtS").asInt());
            assertThat(item.at("/safety/verdict").asString()).isEqualTo("met");
            assertThat(item.at("/safety/judgedAtS").asInt())
                    .isEqualTo(item.at("/takeOut/bestS").asInt()
                            - item.at("/entersAtS").asInt());
        }
        assertThat(plan.at("/phases/0/water/lowestC").asDouble())
                .isLessThan(plan.at("/phases/0/setpointC").asDouble());
        assertThat(plan.has("curve")).isFalse();
        assertThat(http().contentType(JSON).body(PAIR).post(LOADS).asByteArray())
                .as("the same request gives the same bytes")
                .isEqualTo(response.asByteArray());
    }

    @Test
    void so_many_packs_cool_the_water_as_one_of_their_mass_does() {
        String one = PAIR.replace("\"count\":2,", "").replace("\"massG\":180", "\"massG\":360");
        assertThat(plan(one, "").at("/phases")).isEqualTo(plan(PAIR, "").at("/phases"));
    }

    @Test
    void a_curve_and_sources_come_when_they_are_asked_for() {
        JsonNode plan = plan(PAIR, "?include=curve,sources");
        assertThat(plan.at("/curve/timesS").size())
                .isEqualTo(plan.at("/curve/waterC").size())
                .isGreaterThan(3);
        assertThat(plan.at("/items/1/curve/coreC").size()).isGreaterThan(20);
        assertThat(plan.at("/sources").size()).isGreaterThan(3);
    }

    @Test
    void cbor_says_the_same() {
        byte[] cbor = http().contentType(CBOR)
                .accept(CBOR)
                .body(cbor(PAIR))
                .post(LOADS)
                .asByteArray();
        assertThat(tree(cbor, CBOR)).isEqualTo(plan(PAIR, ""));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            unknown field    | 400 | "count":2,                | "counts":2,            | UNKNOWN_FIELD             | #/items/0/counts
            same ids         | 400 | "id":"pork",              | "id":"chicken",        | IDS_NOT_UNIQUE            | #/items/1/id
            mass missing     | 400 | ,"massG":400              |                        | COMPANION_MISSING         | #/items/1/geometry/massG
            other load       | 400 | "volumeL":12              | "volumeL":12,"otherLoadG":300 | FIELDS_EXCLUDE_EACH_OTHER | #/surroundings/bath/otherLoadG
            serve in an item | 400 | "count":2,                | "target":{"serveAfterS":7200}, | FIELDS_EXCLUDE_EACH_OTHER | #/items/0/target/serveAfterS
            count            | 400 | "count":2,                | "count":0,             | OUT_OF_RANGE              | #/items/0/count
            food             | 422 | chicken-breast            | no-such-food           | UNKNOWN_FOOD              | #/items/0/food/id
            boiling          | 422 | "volumeL":12              | "setpointC":99.9,"volumeL":12 | ABOVE_BOILING_POINT | #/surroundings/bath/setpointC
            face in air      | 422 | "thicknessMm":40,         | "thicknessMm":40,"arrangement":{"submerged":"oneFaceInAir","airC":22}, | LOAD_NEEDS_COVERED_FACES | #/items/1/geometry/arrangement
            warm start       | 422 | "start":{"temperatureC":4}}] | "start":{"temperatureC":45}}] | START_TOO_WARM | #/items/1/start
            """)
    void a_fault_is_named_at_its_place(String what, int status, String from, String to, String code, String pointer) {
        String changed = PAIR.replace(from, to == null ? "" : to);
        assertThat(changed).as(what).isNotEqualTo(PAIR);
        if (code.equals("ABOVE_BOILING_POINT")) {
            changed = changed.replace("\"surroundings\":{", "\"surroundings\":{\"altitudeM\":3000,");
        }
        JsonNode errors =
                READER.readTree(refused(changed, status).asByteArray()).at("/errors");
        List<String> found = new ArrayList<>();
        errors.forEach(
                e -> found.add(e.at("/code").asString() + " " + e.at("/pointer").asString()));
        assertThat(found).contains(code + " " + pointer);
    }

    @Test
    void one_food_is_a_matter_of_a_cook_plan_and_thirteen_are_too_many() {
        JsonNode tree = READER.readTree(PAIR);
        String one = tree.at("/items/0").toString();
        for (int count : new int[] {1, 13}) {
            List<String> items = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                items.add(one.replace("\"chicken\"", "\"i" + i + "\""));
            }
            refused(
                    "{\"items\":[" + String.join(",", items) + "],\"surroundings\":" + tree.at("/surroundings") + "}",
                    400);
        }
    }

    @Test
    void all_faults_are_told_at_once() {
        String bad = PAIR.replace("chicken-breast", "chiken-breast").replace("pork-loin", "pork-lion");
        JsonNode errors = READER.readTree(refused(bad, 422).asByteArray()).at("/errors");
        assertThat(errors.size()).isEqualTo(2);
        assertThat(errors.at("/1/hint").asString()).contains("pork-loin");
    }

    static Stream<Path> examples() throws IOException {
        Path here = Path.of("").toAbsolutePath();
        Path root = Files.exists(here.resolve("api-spec")) ? here : Objects.requireNonNull(here.getParent());
        try (Stream<Path> files = Files.list(root.resolve("api-spec/examples"))) {
            return files
                    .filter(f -> f.getFileName().toString().matches("load-plan-.*\\.request\\.json"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("examples")
    void a_load_is_answered_as_a_picture_that_says_the_same(Path example) throws Exception {
        String request = Files.readString(example);
        Response picture = http().contentType(JSON).accept(SVG).body(request).post(LOADS);
        assertThat(picture.statusCode()).as(picture.asString()).isEqualTo(200);
        assertThat(picture.contentType()).isEqualTo(SVG);
        byte[] svg = picture.asByteArray();
        Path kept = Path.of("target", "pictures");
        Files.createDirectories(kept);
        Files.write(kept.resolve(example.getFileName().toString().replace(".request.json", ".svg")), svg);

        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Element root = factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg))
                .getDocumentElement();
        JsonNode plan = plan(request, "");
        String title = root.getElementsByTagName("title").item(0).getTextContent();
        assertThat(title).startsWith(plan.at("/items").size() + " foods");
        String described = root.getElementsByTagName("desc").item(0).getTextContent();
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < root.getElementsByTagName("text").getLength(); i++) {
            Element text = (Element) root.getElementsByTagName("text").item(i);
            texts.add(text.getTextContent());
            assertThat(Double.parseDouble(text.getAttribute("x"))).isBetween(0.0, 480.0);
        }
        for (JsonNode item : plan.at("/items")) {
            assertThat(texts).contains(item.at("/id").asString());
            assertThat(described).contains(item.at("/id").asString() + ": ");
        }
        for (JsonNode conflict : plan.at("/conflicts")) {
            assertThat(String.join(" ", texts)).contains(conflict.at("/text").asString());
        }
        if (plan.has("lowering")) {
            assertThat(texts)
                    .anyMatch(
                            t -> t.contains(temperature(plan.at("/lowering/toC").asDouble())));
        }
        assertThat(new String(svg, StandardCharsets.UTF_8))
                .doesNotContain("NaN", "Infinity", "<script", "href", "url(");
    }

    /** Temperatures as pictures write them. */
    private static String temperature(double celsius) {
        return String.format(Locale.ROOT, celsius == Math.rint(celsius) ? "%.0f °C" : "%.1f °C", celsius);
    }
}
