package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Sentences come in the language and units that are asked for, and nothing else changes with them. */
class LanguagesHttpTest extends HttpTest {

    /** Beef in a cool bath for a long time: many sentences with temperatures. */
    private static final String BEEF = """
            {"food":{"id":"beef-sirloin"},"geometry":{"shape":"slab","thicknessMm":45},
             "start":{"temperatureC":20},"surroundings":{"bath":{"setpointC":54}}}""";

    private RequestSpecification asking(@Nullable String languages) {
        RequestSpecification http = http().contentType(JSON);
        return languages == null ? http : http.header("Accept-Language", languages);
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '"', nullValues = "none", textBlock = """
            none                        | en
            en                          | en
            en-US                       | en
            de                          | de
            de-AT                       | de
            DE-ch-1996                  | de
            fr-CA                       | fr
            es-419                      | es
            pt                          | en
            pt, es;q=0.4                | es
            fr;q=0.3, de;q=0.8          | de
            it;q=0.9, fr;q=0.5, *;q=0.1 | fr
            *                           | en
            de;q=0, fr                  | fr
            de;q=0                      | en
            '                           | en
            de;q=five                   | en
            de;;                        | en
            de_AT                       | en
            """)
    @DisplayName("the language is looked up in the order of the client's wishes; English where none fits")
    void negotiation(@Nullable String header, String language) {
        Response response = asking(header).body(PORK).post(PLANS);
        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.header("Content-Language")).isEqualTo(language);
        assertThat(vary(response)).contains("accept-language");
    }

    @Test
    @DisplayName("a header that is too long to be meant is not read")
    void long_header() {
        Response response = asking("de" + ", de".repeat(1000)).body(PORK).post(PLANS);
        assertThat(response.header("Content-Language")).isEqualTo("en");
    }

    @ParameterizedTest
    @CsvSource({
        "de, 'Eine Schätzung, keine Garantie'",
        "fr, 'Une estimation, pas une garantie'",
        "es, 'Una estimación, no una garantía'"
    })
    @DisplayName("a plan says its sentences in another language and is otherwise the same")
    void plans(String language, String caution) {
        JsonNode english = READER.readTree(asking(null).body(BEEF).post(PLANS).asByteArray());
        JsonNode other = READER.readTree(asking(language).body(BEEF).post(PLANS).asByteArray());
        assertThat(texts(other)).hasSameSizeAs(texts(english)).doesNotContainAnyElementsOf(texts(english));
        assertThat(String.join(" ", texts(other))).contains(caution);
        assertThat(withoutTexts(other)).isEqualTo(withoutTexts(english));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "fr", "es"})
    @DisplayName("US units stand in sentences only")
    void us_units(String language) {
        JsonNode metric =
                READER.readTree(asking(language).body(BEEF).post(PLANS).asByteArray());
        Response response = asking(language).body(BEEF).post(PLANS + "?units=us");
        JsonNode us = READER.readTree(response.asByteArray());
        assertThat(response.header("Content-Language")).isEqualTo(language);
        assertThat(withoutTexts(us)).isEqualTo(withoutTexts(metric));
        assertThat(String.join(" ", texts(us))).contains("°F").doesNotContain("°C");
        assertThat(String.join(" ", texts(metric))).contains("°C").doesNotContain("°F");
        assertThat(asking(language).body(BEEF).post(PLANS + "?units=metric").asByteArray())
                .isEqualTo(asking(language).body(BEEF).post(PLANS).asByteArray());
    }

    @ParameterizedTest
    @ValueSource(strings = {"imperial", "US", "", "us&units=metric"})
    @DisplayName("unknown units are refused in the language that was asked for")
    void unknown_units(String sent) {
        Response response = asking("de").body(PORK).post(PLANS + "?units=" + sent);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        assertThat(response.header("Content-Language")).isEqualTo("de");
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/pointer").asString()).isEqualTo("?units");
        assertThat(fault.at("/code").asString()).isEqualTo("UNKNOWN_WORD");
        assertThat(fault.at("/allowed").toString()).isEqualTo("[\"metric\",\"us\"]");
        assertThat(fault.at("/detail").asString()).isEqualTo("units muss eines von diesen sein: metric, us.");
    }

    @Test
    @DisplayName("units are a parameter of what speaks, and of nothing else")
    void units_of_what_speaks() {
        assertThat(http().get("/v1/foods?units=us").statusCode()).isEqualTo(200);
        assertThat(http().get("/v1/parameter-sets?units=us").statusCode()).isEqualTo(400);
        assertThat(http().get("/v1/parameter-sets").header("Content-Language")).isNull();
        assertThat(http().get("/v1/foods").header("Content-Language")).isEqualTo("en");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', textBlock = """
            en | Out of range             | thicknessMm is 2, but must lie between 3 and 250 mm.             | This looks like centimetres
            de | Außerhalb der Grenzen    | thicknessMm ist 2, muss aber zwischen 3 und 250 mm liegen.       | Das sieht nach Zentimetern aus
            fr | Hors des limites         | thicknessMm est 2, mais doit se situer entre 3 et 250 mm.        | Cela ressemble à des centimètres
            es | Fuera de los límites     | thicknessMm es 2, pero debe estar entre 3 y 250 mm.              | Esto parece centímetros
            """)
    @DisplayName("a problem of a message is said in four languages")
    void problems(String language, String title, String detail, String hint) {
        Response response = asking(language).body(porkWith("45", "2")).post(PLANS);
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(response.header("Content-Language")).isEqualTo(language);
        assertThat(vary(response)).contains("accept-language");
        JsonNode problem = READER.readTree(response.asByteArray());
        assertThat(problem.at("/title").asString()).isEqualTo(title);
        assertThat(problem.at("/detail").asString()).isEqualTo(detail);
        assertThat(problem.at("/errors/0/hint").asString()).startsWith(hint);
        assertThat(problem.at("/code").asString()).isEqualTo("OUT_OF_RANGE");
        assertThat(problem.at("/errors/0/minimum").asDouble()).isEqualTo(3.0);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', textBlock = """
            en | metric | The food starts at 45.5 °C, not colder than the bath of 45 °C.
            en | us     | The food starts at 113.9 °F, not colder than the bath of 113 °F.
            de | metric | Das Lebensmittel beginnt bei 45,5 °C, nicht kälter als das Bad von 45 °C.
            fr | us     | L'aliment part de 113,9 °F, pas plus froid que le bain à 113 °F.
            es | metric | El alimento empieza a 45,5 °C, no más frío que el baño a 45 °C.
            """)
    @DisplayName("a refusal of the planner is said in the language and units asked for")
    void refusals(String language, String units, String detail) {
        Response response = asking(language)
                .body(porkWith("\"temperatureC\":4", "\"temperatureC\":45.5")
                        .replace("\"setpointC\":60", "\"setpointC\":45"))
                .post(PLANS + "?units=" + units);
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(response.header("Content-Language")).isEqualTo(language);
        List<String> details = new ArrayList<>();
        READER.readTree(response.asByteArray())
                .at("/errors")
                .forEach(fault -> details.add(fault.at("/detail").asString()));
        assertThat(details).contains(detail);
    }

    @Test
    @DisplayName("what the framework and the container refuse is said in the language asked for, too")
    void other_problems() {
        for (Response response : List.of(
                asking("fr").get("/v1/nothing"),
                asking("fr").get("/v1/foods/nothing"),
                asking("fr").delete("/v1/foods"),
                asking("fr").accept("image/png").get("/v1/foods"),
                asking("fr").get("/v1/foods?page=2"))) {
            assertThat(response.statusCode()).isBetween(400, 499);
            assertThat(response.header("Content-Language"))
                    .as(response.asString())
                    .isEqualTo("fr");
        }
        assertThat(asking("fr").get("/v1/foods/porc-loin").asString())
                .contains("Le catalogue des aliments n'a pas d'entrée porc-loin.");
        assertThat(asking("es").body("").post(PLANS).asString()).contains("El cuerpo está vacío");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/v1/foods", "/v1/foods/pork-loin", "/v1/warnings", "/v1/problems", "/problems/out-of-range"})
    @DisplayName("a catalogue is kept for each language and system of units by a tag of its own")
    void catalogues(String path) {
        Set<String> bodies = new HashSet<>();
        for (String language : List.of("en", "de", "fr", "es")) {
            Response first = asking(language).get(path);
            assertThat(first.statusCode()).isEqualTo(200);
            assertThat(first.header("Content-Language")).isEqualTo(language);
            assertThat(vary(first)).contains("accept", "accept-language", "accept-encoding");
            assertThat(bodies.add(first.asString()))
                    .as(path + " in " + language)
                    .isTrue();
            String tag = first.header("ETag");
            Response known = asking(language).header("If-None-Match", tag).get(path);
            assertThat(known.statusCode()).isEqualTo(304);
            assertThat(known.header("Content-Language")).isEqualTo(language);
            Response other = asking(language.equals("de") ? "fr" : "de")
                    .header("If-None-Match", tag)
                    .get(path);
            assertThat(other.statusCode())
                    .as("another language is another text")
                    .isEqualTo(200);
        }
    }

    @Test
    @DisplayName("the sentences of warnings are shown in US units, with their places left open")
    void warnings_in_us_units() {
        JsonNode warning = READER.readTree(
                asking("de").get("/v1/warnings/START_WARM?units=us").asByteArray());
        assertThat(warning.toString()).contains("beginnt bei {0} °F").contains("41 °F");
    }

    @Test
    @DisplayName("pictures speak the language and show the units asked for")
    void pictures() {
        String picture = asking("de")
                .accept("image/svg+xml")
                .body(PORK)
                .post(PLANS + "?units=us")
                .asString();
        assertThat(picture)
                .contains("lang=\"de\"", "Schweinelende, 1,77 in im Bad von 140 °F", "herausnehmen", ">120°<")
                .doesNotContain("°C", "hot through");
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "fr", "es"})
    @DisplayName("pictures in other languages are kept to be looked at")
    void kept_pictures(String language) throws IOException {
        Response picture = asking(language).accept("image/svg+xml").body(BEEF).post(PLANS);
        assertThat(picture.statusCode()).isEqualTo(200);
        assertThat(picture.header("Content-Language")).isEqualTo(language);
        Path kept = Path.of("target", "pictures");
        Files.createDirectories(kept);
        Files.write(kept.resolve("language-" + language + ".svg"), picture.asByteArray());
    }

    @Test
    @DisplayName("the page of a log is in the language asked for")
    void pages() {
        String log = "timeS,temperatureC\n0,4\n1800,40\n3600,57\n5400,61.6\n7200,62.4\n9000,62.6\n";
        String query = "?food=chicken-breast&place=core&longestGapS=1800";
        String german = http().contentType("text/csv")
                .header("Accept-Language", "de")
                .accept("text/html")
                .body(log)
                .post(LOGS + query)
                .asString();
        assertThat(german)
                .contains("<html lang=\"de\">", "Kritische Grenzwerte", "Hähnchenbrust, ohne Haut", "62,6 °C")
                .doesNotContain("Critical limits", "62.6 °C");
        String american = http().contentType("text/csv")
                .accept("text/html")
                .body(log)
                .post(LOGS + query + "&units=us")
                .asString();
        assertThat(american)
                .contains("<html lang=\"en\">", "144.7 °F", "Temperature (°F)", ">140<")
                .doesNotContain("°C");
    }

    private static List<String> vary(Response response) {
        return List.of(String.join(",", response.headers().getValues("Vary"))
                .toLowerCase(Locale.ROOT)
                .split("[, ]+", -1));
    }

    /** All sentences of an answer. */
    private static List<String> texts(JsonNode node) {
        List<String> texts = new ArrayList<>();
        if (node.has("text")) {
            texts.add(node.at("/text").asString());
        }
        node.forEach(child -> texts.addAll(texts(child)));
        return texts;
    }

    private static JsonNode withoutTexts(JsonNode node) {
        JsonNode copy = node.deepCopy();
        strip(copy);
        return copy;
    }

    private static void strip(JsonNode node) {
        if (node instanceof ObjectNode object) {
            object.remove("text");
        }
        node.forEach(LanguagesHttpTest::strip);
    }
}
