package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Mark;
import io.restassured.response.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.MappingIterator;
import tools.jackson.dataformat.csv.CsvMapper;
import tools.jackson.dataformat.csv.CsvSchema;

/** The guide as people read it in a browser. */
class GuideHttpTest extends HttpTest {

    private static final Path GUIDE = Path.of("src/main/guide");
    private static final Path CONTRACT = Path.of("../api-spec/docs");
    private static final Path SET = Path.of("src/main/resources/parameters/2026.1");
    private static final Pattern LINK = Pattern.compile("href=\"([^\"]*)\"");
    private static final Pattern MARKDOWN_LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
    private static final Pattern HEADING = Pattern.compile("# (.+)");

    /** The files that pages are made of, by the names of the pages. */
    private static Map<String, Path> files() throws IOException {
        Map<String, Path> files = new TreeMap<>();
        files.put("device", CONTRACT.resolve("device-guide.md"));
        files.put("kit", CONTRACT.resolveSibling("README.md"));
        files.put("versions", CONTRACT.resolve("versioning.md"));
        try (Stream<Path> guide = Files.list(GUIDE)) {
            guide.filter(file -> file.toString().endsWith(".md")).forEach(file -> {
                String name = String.valueOf(file.getFileName());
                files.put(name.substring(0, name.length() - 3), file);
            });
        }
        return files;
    }

    /** All pages, and the one that has no file. */
    static List<String> pages() throws IOException {
        return Stream.concat(files().keySet().stream(), Stream.of("sources")).toList();
    }

    static List<Path> markdown() throws IOException {
        return List.copyOf(files().values());
    }

    private String html(String name) {
        Response page = http().get("/docs/guide/" + name);
        assertThat(page.statusCode()).as(name).isEqualTo(200);
        return page.asString();
    }

    @ParameterizedTest
    @MethodSource("pages")
    void each_file_is_a_page_with_its_heading_as_title(String name) throws IOException {
        Response page = http().get("/docs/guide/" + name);
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.contentType()).isEqualTo("text/html;charset=UTF-8");
        Path file = files().get(name);
        Matcher heading = HEADING.matcher(
                file == null ? "# Sources" : Files.readAllLines(file).get(0));
        assertThat(heading.matches()).isTrue();
        assertThat(page.asString())
                .contains("<title>" + heading.group(1) + "</title>")
                .contains("</main>")
                .doesNotContain("<script")
                .doesNotContain("| --- |");
        assertThat(page.header("Content-Security-Policy")).startsWith("default-src 'none'; style-src 'sha256-");
        assertThat(page.header("X-Content-Type-Options")).isEqualTo("nosniff");
    }

    /** No link of a page is one from file to file: each names something that is served, and a heading where it says so. */
    @ParameterizedTest
    @MethodSource("pages")
    void each_link_leads_somewhere(String name) {
        Map<String, Response> seen = new TreeMap<>();
        Matcher links = LINK.matcher(html(name));
        while (links.find()) {
            String target = links.group(1);
            if (target.startsWith("https://")) {
                continue;
            }
            assertThat(target).matches("/|[/#].+");
            String[] parts = target.split("#", 2);
            String page = parts[0].isEmpty() ? "/docs/guide/" + name : parts[0];
            Response there = seen.computeIfAbsent(
                    page, path -> http().redirects().follow(true).get(path));
            assertThat(there.statusCode()).as(target).isEqualTo(200);
            if (parts.length > 1) {
                assertThat(there.asString()).as(target).contains("id=\"" + parts[1] + "\"");
            }
        }
        assertThat(seen).isNotEmpty();
    }

    /** Where the source is read, links lead from file to file. */
    @ParameterizedTest
    @MethodSource("markdown")
    void each_link_of_a_file_leads_to_a_file_of_the_tree(Path file) throws IOException {
        Matcher links = MARKDOWN_LINK.matcher(Files.readString(file));
        while (links.find()) {
            String target = links.group(1);
            if (!target.startsWith("https://") && !target.startsWith("/") && !target.startsWith("#")) {
                assertThat(file.resolveSibling(target.split("#", 2)[0]))
                        .as(target)
                        .exists();
            }
        }
    }

    @Test
    void links_to_what_is_not_served_become_the_paths_of_files() {
        assertThat(html("device"))
                .contains("in <code>api-spec/device</code>")
                .contains("vectors (<code>api-spec/vectors/README.md</code>)")
                .contains("countdown.c (<code>api-spec/device/countdown.c</code>)")
                .contains("<a href=\"/openapi.yaml\">contract</a>");
        assertThat(html("overlay")).contains("<code>service/src/main/guide/overlay-example</code>");
        assertThat(html("index"))
                .contains("<a href=\"/docs/guide/device\">Guide for devices</a>")
                .contains("<a href=\"/openapi.yaml\">openapi.yaml</a>");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void each_page_lists_all_pages_and_says_which_it_is(String name) throws IOException {
        String html = html(name);
        String list = html.substring(html.indexOf("<nav"), html.indexOf("</nav>"));
        for (String page : pages()) {
            String address = page.equals("index") ? "/docs/guide" : "/docs/guide/" + page;
            assertThat(list)
                    .contains("<a href=\"" + address + (page.equals(name) ? "\" aria-current=\"page\">" : "\">"));
        }
        assertThat(list.split("aria-current", -1)).hasSize(2);
    }

    @Test
    void the_first_page_leads_to_every_other() throws IOException {
        String first = http().get("/docs/guide").asString();
        String main = first.substring(first.indexOf("<main>"));
        for (String page : pages()) {
            if (!page.equals("index")) {
                assertThat(main).contains("href=\"/docs/guide/" + page + "\"");
            }
        }
    }

    @Test
    void the_page_about_trust_says_what_each_mark_means() {
        String trust = html("trust");
        for (Mark mark : Mark.values()) {
            assertThat(trust)
                    .contains(
                            "<td><code>" + mark.name() + "</code></td>\n<td><code>" + Words.of(mark) + "</code></td>");
        }
    }

    /** The page about numbers explains a plan that the contract shows too. */
    @Test
    void the_example_of_the_numbers_is_that_of_the_contract() throws IOException {
        String numbers = html("numbers");
        JsonNode plan =
                READER.readTree(Files.readString(Path.of("../api-spec/examples/cook-plan-pork-loin.answer.json")));
        for (String moment : List.of("hotThrough", "safe", "tender", "goodUntil", "softFrom")) {
            for (String side : List.of("earlyS", "nominalS", "lateS")) {
                assertThat(numbers).contains("<td>" + spaced(plan.at("/times/" + moment + "/" + side)) + " s");
            }
        }
        assertThat(numbers)
                .contains("Take it out after " + spaced(plan.at("/takeOut/bestS")) + " s, not before "
                        + spaced(plan.at("/takeOut/earliestS")) + " s, not after "
                        + spaced(plan.at("/takeOut/latestS")) + " s.")
                .contains("<td>" + plan.at("/safety/marginLog10").asString() + "</td>")
                .contains("<td>" + spaced(plan.at("/safety/tableMarginS")) + " s</td>")
                .contains("<td>" + spaced(plan.at("/safety/marginS")) + " s</td>")
                .contains("<td>" + plan.at("/safety/marginK").asString() + " K</td>")
                .contains("<td>" + plan.at("/safety/marginMm").asString() + " mm</td>")
                .contains("Here " + spaced(plan.at("/safety/growthRangeS")) + " s.")
                .contains("Here " + spaced(plan.at("/safety/warmUpS")) + " s.")
                .contains("Here " + spaced(plan.at("/safety/warmUpLeftS")) + " s.")
                .contains("Here from " + spaced(plan.at("/texture/windowS/opensS")) + " to "
                        + spaced(plan.at("/texture/windowS/closesS")) + " s.");
    }

    private static String spaced(JsonNode seconds) {
        return String.format(Locale.ROOT, "%,d", seconds.asInt()).replace(',', ' ');
    }

    private static List<Map<String, String>> rows(Path file) {
        try (MappingIterator<Map<String, String>> lines = new CsvMapper()
                .readerForMapOf(String.class)
                .with(CsvSchema.emptySchema().withHeader())
                .readValues(Files.readString(file))) {
            return lines.readAll();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String cell(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    private static List<Path> tables() throws IOException {
        try (Stream<Path> files = Files.list(SET)) {
            return files.filter(file -> rows(file).get(0).containsKey("source"))
                    .sorted()
                    .toList();
        }
    }

    /** The columns of marks, which go with a column of sources each. */
    private static List<String> marks(Map<String, String> row) {
        return row.keySet().stream()
                .filter(column -> column.equals("mark") || column.endsWith("_mark"))
                .toList();
    }

    @Test
    void every_row_with_a_source_is_told() throws IOException {
        String page = html("sources");
        assertThat(tables()).hasSize(21);
        for (Path file : tables()) {
            String name = String.valueOf(file.getFileName());
            int from = page.indexOf(">" + name + "</h2>");
            assertThat(from).as(name).isPositive();
            int until = page.indexOf("<h2", from);
            String[] told =
                    page.substring(from, until < 0 ? page.length() : until).split("<tr>", -1);
            int marked = 0;
            for (Map<String, String> row : rows(file)) {
                List<String> marks = marks(row);
                for (String mark : marks) {
                    if (!cell(row, mark).isBlank()) {
                        marked++;
                        String first =
                                "\n<td>" + escaped(row.values().iterator().next());
                        String known = "<td><code>" + cell(row, mark) + "</code></td>\n<td>"
                                + escaped(cell(row, mark.replaceAll("mark$", "source"))) + "</td>";
                        assertThat(Arrays.stream(told).anyMatch(line -> line.startsWith(first) && line.contains(known)))
                                .as("%s: %s, %s", name, first, mark)
                                .isTrue();
                    }
                }
                if (marks.size() == 1) {
                    List<String> cells = row.values().stream()
                            .filter(cell -> !cell.isBlank() && !cell.equals("id") && !cell.equals("-"))
                            .map(GuideHttpTest::escaped)
                            .toList();
                    assertThat(Arrays.stream(told)
                                    .anyMatch(line -> cells.stream().allMatch(line::contains)))
                            .as("%s: %s", name, row)
                            .isTrue();
                }
            }
            // Before the first row stand the heading and the names of the columns.
            assertThat(told).as(name).hasSize(marked + 2);
        }
    }

    @Test
    void the_values_are_counted_by_their_marks() throws IOException {
        Map<String, Integer> counts = new TreeMap<>();
        for (Path file : tables()) {
            for (Map<String, String> row : rows(file)) {
                for (String column : marks(row)) {
                    if (!cell(row, column).isBlank()) {
                        counts.merge(cell(row, column), 1, Integer::sum);
                    }
                }
            }
        }
        String page = html("sources");
        Matcher told = Pattern.compile("<td><code>([A-Z_]+)</code></td>\n<td>(\\d+)</td>\n</tr>")
                .matcher(page.substring(0, page.indexOf(">Files</h2>")));
        Map<String, Integer> found = new TreeMap<>();
        while (told.find()) {
            found.put(told.group(1), Integer.parseInt(told.group(2)));
        }
        assertThat(found).isEqualTo(counts);
        assertThat(found.keySet())
                .isSubsetOf(Arrays.stream(Mark.values()).map(Mark::name).toList());
    }

    @Test
    void the_sources_are_those_of_the_current_set() {
        Response sets = http().get("/v1/parameter-sets");
        assertThat(html("sources"))
                .contains("<code>" + sets.jsonPath().getString("parameterSets[0].version") + "</code>")
                .contains("<code>" + sets.jsonPath().getString("parameterSets[0].digest") + "</code>");
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
