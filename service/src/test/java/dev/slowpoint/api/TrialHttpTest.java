package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The page to try the service on, as it is served. What it does in a browser is tested there. */
class TrialHttpTest extends HttpTest {

    private static final Path FILES = Path.of("src/main/page");

    static List<String> loaded() throws IOException {
        try (Stream<Path> files = Files.list(FILES)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> !name.equals("page.html"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "'de-AT,en;q=0.5', , de, Frage",
        "fr, , fr, question",
        "fr, es, es, pregunta",
        "ja, , en, question",
        "en, xx, en, question"
    })
    void the_page_is_spoken_in_the_language_that_is_asked_for(
            String accepted, String chosen, String language, String word) {
        Response page = http().header("Accept-Language", accepted).get(chosen == null ? "/" : "/?language=" + chosen);
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.contentType()).isEqualTo("text/html;charset=UTF-8");
        assertThat(page.header("Content-Language")).isEqualTo(language);
        assertThat(page.headers().getValues("Vary")).anyMatch(vary -> vary.contains("Accept-Language"));
        assertThat(page.asString())
                .contains("<html lang=\"" + language + "\">")
                .contains(word)
                .doesNotContain("{{");
    }

    @Test
    void nothing_but_files_of_the_service_may_run_on_it_or_frame_it() {
        Response page = http().get("/");
        assertThat(page.header("Content-Security-Policy"))
                .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'")
                .contains("require-trusted-types-for 'script'")
                .doesNotContain("unsafe");
        assertThat(page.header("Referrer-Policy")).isEqualTo("no-referrer");
        assertThat(page.header("X-Content-Type-Options")).isEqualTo("nosniff");
        // Style and script stand in files alone.
        assertThat(page.asString()).doesNotContain(" style=", "<style", " onclick", "javascript:");
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "fr", "es"})
    void what_the_scripts_know_beforehand_can_be_read_and_ends_no_element(String language) {
        String page = http().get("/?language=" + language).asString();
        String begin = "<script type=\"application/json\" id=\"words\">";
        String words =
                page.substring(page.indexOf(begin) + begin.length(), page.indexOf("</script>", page.indexOf(begin)));
        assertThat(words).doesNotContain("<");
        JsonNode read = new JsonMapper().readTree(words);
        assertThat(read.path("language").asString()).isEqualTo(language);
        assertThat(read.path("organisms").path("salmonella").asString()).contains("almonel");
        // FDA Food Code 2022, 3-501.16; FSIS-GD-2021-14, table 2, lowest row (130 F).
        assertThat(read.path("growthC").path("from").asDouble()).isEqualTo(5.0);
        assertThat(read.path("growthC").path("to").asDouble()).isEqualTo(54.444);
    }

    @ParameterizedTest
    @MethodSource("loaded")
    void each_file_is_served_with_its_type_and_checked_for_news(String name) throws IOException {
        Response file = http().get("/trial/" + name);
        assertThat(file.statusCode()).isEqualTo(200);
        assertThat(file.contentType())
                .startsWith(
                        switch (name.substring(name.lastIndexOf('.'))) {
                            case ".js" -> "text/javascript";
                            case ".css" -> "text/css";
                            default -> "image/svg+xml";
                        });
        assertThat(file.asByteArray()).isEqualTo(Files.readAllBytes(FILES.resolve(name)));
        assertThat(file.header("Cache-Control")).isEqualTo("no-cache");
        assertThat(http().header("If-None-Match", file.header("ETag"))
                        .get("/trial/" + name)
                        .statusCode())
                .isEqualTo(304);
    }

    @Test
    void a_file_that_there_is_not_is_a_problem() {
        Response missing = http().get("/trial/pages.js");
        assertThat(missing.statusCode()).isEqualTo(404);
        assertThat(missing.contentType()).isEqualTo("application/problem+json");
        assertThat(missing.asString()).contains("page.js");
    }

    /** The fields are named as members of the request, or of a process window. */
    @Test
    void each_field_is_a_member_of_the_contract() throws IOException {
        TreeSet<String> known =
                new TreeSet<>(FlatMembers.of(CookPlanRequest.class).names());
        known.addAll(FlatMembers.of(ProcessWindowRequest.class).names());
        List<String> fields = Pattern.compile("<(?:input|select)[^>]* name=\"([^\"]+)\"")
                .matcher(Files.readString(FILES.resolve("page.html")))
                .results()
                .map((MatchResult found) -> found.group(1))
                .filter(name -> !name.equals("units"))
                .toList();
        assertThat(fields).hasSizeGreaterThan(30).allMatch(known::contains);
    }
}
