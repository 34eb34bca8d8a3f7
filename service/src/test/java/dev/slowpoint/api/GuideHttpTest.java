package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The guide as people read it in a browser. */
class GuideHttpTest extends HttpTest {

    private static final Path FILES = Path.of("src/main/guide");
    private static final Pattern LINK = Pattern.compile("href=\"([^\"]+)\"");

    static List<String> pages() throws IOException {
        try (Stream<Path> files = Files.list(FILES)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> name.endsWith(".md"))
                    .map(name -> name.substring(0, name.length() - 3))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void each_file_is_a_page_with_its_heading_as_title(String name) throws IOException {
        Response page = http().get("/docs/guide/" + name);
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.contentType()).isEqualTo("text/html;charset=UTF-8");
        String heading = Files.readAllLines(FILES.resolve(name + ".md")).get(0);
        assertThat(heading).startsWith("# ");
        assertThat(page.asString())
                .contains("<title>" + heading.substring(2) + "</title>")
                .contains("</main>")
                .doesNotContain("<script")
                .doesNotContain("| --- |");
        assertThat(page.header("Content-Security-Policy")).startsWith("default-src 'none'; style-src 'sha256-");
        assertThat(page.header("X-Content-Type-Options")).isEqualTo("nosniff");
    }

    /** A link within the guide names a page, and a heading on it; all others lead out of it, and are files of the tree. */
    @ParameterizedTest
    @MethodSource("pages")
    void each_link_leads_somewhere(String name) {
        Matcher links = LINK.matcher(http().get("/docs/guide/" + name).asString());
        while (links.find()) {
            String target = links.group(1);
            if (target.startsWith("http://") || target.startsWith("https://")) {
                continue;
            }
            if (target.startsWith("/") || target.startsWith("#")) {
                String[] parts = target.split("#", 2);
                String page = parts[0].isEmpty() ? "/docs/guide/" + name : parts[0];
                Response there = http().redirects().follow(true).get(page);
                assertThat(there.statusCode()).as(target).isEqualTo(200);
                if (parts.length > 1) {
                    assertThat(there.asString()).as(target).contains("id=\"" + parts[1] + "\"");
                }
            } else {
                assertThat(FILES.resolve(target.split("#", 2)[0])).as(target).exists();
            }
        }
    }

    @Test
    void the_first_page_leads_to_every_other() throws IOException {
        String first = http().get("/docs/guide").asString();
        for (String page : pages()) {
            if (!page.equals("index")) {
                assertThat(first).contains("href=\"/docs/guide/" + page + "\"");
            }
        }
    }

    @Test
    void a_page_that_there_is_not_is_a_problem_that_names_the_nearest() {
        Response missing = http().get("/docs/guide/overlays");
        assertThat(missing.statusCode()).isEqualTo(404);
        assertThat(missing.contentType()).isEqualTo("application/problem+json");
        assertThat(missing.asString()).contains("overlay");
    }

    @Test
    void what_a_browser_has_is_not_sent_again() {
        String tag = http().get("/docs/guide/overlay").header("ETag");
        assertThat(http().header("If-None-Match", tag)
                        .get("/docs/guide/overlay")
                        .statusCode())
                .isEqualTo(304);
    }
}
