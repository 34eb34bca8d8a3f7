package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.parameters.Overlay;
import dev.slowpoint.parameters.ParameterSets;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.mock.web.MockHttpServletResponse;

/** What the page of sources tells of an overlay. */
class SourcesPageTest {

    private static final Path EXAMPLE = Path.of("src/main/guide/overlay-example");

    @TempDir
    static Path folder;

    /** The overlay of the guide, which says of itself what a page must not take for its own. */
    @BeforeAll
    static void writeOverlay() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLE)) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(String.valueOf(file.getFileName())));
            }
        }
        Files.writeString(
                folder.resolve("overlay.csv"),
                "name,base,note\nhochmoor,2026.1,\"<script>alert(1)</script> & [a](javascript:b) | *c*\"\n");
        Path foods = folder.resolve("foods.csv");
        Files.writeString(foods, Files.readString(foods).replace(",invented\n", ",[a](javascript:b) | *c*\n"));
    }

    private static String page(String access) {
        HttpServletResponse response = new MockHttpServletResponse();
        byte[] body = new GuideController(ParameterSets.released().with(Overlay.read(folder)), access)
                .page("sources", response)
                .getBody();
        return new String(Objects.requireNonNull(body), StandardCharsets.UTF_8);
    }

    @Test
    void rows_of_an_overlay_are_told_and_marked_as_own() {
        assertThat(page("open"))
                .contains("<code>2026.1+hochmoor</code>")
                .contains("<td>own-hut-terrine, Terrine of the hut <code>own</code></td>")
                .contains("<td>own-house-rule, House rule: 6 log Listeria in every food <code>own</code></td>")
                .contains("<td>own-house-listeria <code>own</code></td>")
                .contains("<td>apple, Apple with skin</td>");
    }

    @Test
    void what_an_overlay_says_is_text_and_nothing_more() {
        assertThat(page("open"))
                .doesNotContain("<script")
                .doesNotContain("href=\"javascript")
                .doesNotContain("<em>c</em>")
                .contains("of which it says: &lt;script&gt;alert(1)&lt;/script&gt; &amp; [a](javascript:b) | *c*</p>")
                .contains("<td>[a](javascript:b) | *c*</td>");
    }

    /** The catalogues ask for a key there, and the pages of the documentation do not. */
    @Test
    void nothing_of_an_overlay_is_told_where_callers_have_to_show_who_they_are() {
        for (String access : new String[] {"keys", "jwt"}) {
            assertThat(page(access))
                    .doesNotContain("own-")
                    .doesNotContain("hochmoor")
                    .doesNotContain("alert")
                    .contains("foods or rules of their own")
                    .contains("<td>apple, Apple with skin</td>");
        }
    }
}
