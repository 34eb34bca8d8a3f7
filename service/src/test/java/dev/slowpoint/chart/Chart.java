package dev.slowpoint.chart;

import com.marcnuri.helm.Helm;
import com.marcnuri.helm.LintResult;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tools.jackson.core.type.TypeReference;
import tools.jackson.dataformat.yaml.YAMLMapper;

/**
 * A copy of the chart that may be changed, with alert rules and a dashboard of its own, so that what is checked is how the
 * templates carry them, not what the shipped ones say.
 */
final class Chart {

    /** The chart as it is shipped; tests run in the folder of their module. */
    static final Path SHIPPED = Path.of("..", "helm", "slowpoint");

    static final String RULES = """
            groups:
              - name: stand-in
                rules:
                  - record: slowpoint:asked:rate5m
                    expr: sum(rate(http_server_requests_seconds_count[5m]))
                  - alert: NothingAsked
                    expr: slowpoint:asked:rate5m == 0
                    for: 1h
                    labels:
                      severity: ticket
                    annotations:
                      summary: "{{ $labels.namespace }} is not asked"
                      runbook_url: /docs/guide/runbook#NothingAsked
            """;

    static final String DASHBOARD = "{\"title\": \"Stand-in\", \"panels\": [{\"legend\": \"{{pod}}\"}]}\n";

    private static final String TEST = "templates/tests/contract.yaml";

    private static final YAMLMapper YAML = YAMLMapper.builder().build();
    private static final TypeReference<Map<String, Object>> TREE = new TypeReference<>() {};

    private final Path folder;

    private Chart(Path folder) {
        this.folder = folder;
    }

    /** A copy in a folder that is still empty. */
    static Chart copy(Path folder) {
        try (Stream<Path> files = Files.walk(SHIPPED)) {
            for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
                Path copy = folder.resolve(SHIPPED.relativize(file).toString());
                Files.createDirectories(copy.getParent());
                Files.copy(file, copy);
            }
            Chart chart = new Chart(folder);
            chart.write("files/rules.yaml", RULES);
            chart.write("files/dashboards/stand-in.json", DASHBOARD);
            // Hooks are left out of what is rendered; as an ordinary object, the test of a release is looked at too.
            chart.write(TEST, chart.read(TEST).replace("helm.sh/hook:", "example.org/hook:"));
            return chart;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Puts a file into the copy. */
    void write(String name, String text) {
        try {
            Path file = folder.resolve(name);
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Text of a file of the copy. */
    String read(String name) {
        try {
            return Files.readString(folder.resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Takes a file out of the copy. */
    void delete(String name) {
        try {
            Files.delete(folder.resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The values that are shipped for a use, such as {@code production}. */
    Map<String, Object> values(String use) {
        return tree(read("ci/" + use + "-values.yaml"));
    }

    /** Values as YAML, as a person writes them. */
    static Map<String, Object> tree(String yaml) {
        Map<String, Object> tree = YAML.readValue(yaml, TREE);
        return tree == null ? Map.of() : tree;
    }

    /** What the templates say with these values over the chart's own. Throws with Helm's message if it refuses them. */
    String text(String release, Map<String, Object> values) {
        try {
            Path file = Files.createTempFile(folder.getParent(), "values", ".yaml");
            Files.writeString(file, YAML.writeValueAsString(values));
            return new Helm(folder)
                    .template()
                    .withName(release)
                    .withNamespace("canteen")
                    .withKubeVersion("1.32.0")
                    .withValuesFile(file)
                    .call();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The objects that the templates make, for a release named {@code plans}. */
    Rendered render(Map<String, Object> values) {
        return Rendered.of(text("plans", values));
    }

    /** Helm's own opinion of the chart with these values over its own. */
    LintResult lint(Map<String, Object> values) {
        String own = read("values.yaml");
        write("values.yaml", YAML.writeValueAsString(over(tree(own), values)));
        try {
            return new Helm(folder).lint().strict().call();
        } finally {
            write("values.yaml", own);
        }
    }

    /** Values over others, member by member. */
    static Map<String, Object> over(Map<String, Object> below, Map<String, Object> above) {
        Map<String, Object> merged = new LinkedHashMap<>(below);
        above.forEach((name, value) -> merged.merge(
                name,
                value,
                (old, recent) -> old instanceof Map<?, ?> oldTree && recent instanceof Map<?, ?> recentTree
                        ? over(named(oldTree), named(recentTree))
                        : recent));
        return merged;
    }

    /** A tree whose names are words, as those of YAML are. */
    static Map<String, Object> named(Map<?, ?> tree) {
        Map<String, Object> named = new LinkedHashMap<>();
        tree.forEach((name, value) -> named.put(String.valueOf(name), value));
        return named;
    }

    /** The uses that values are shipped for. */
    static List<String> uses() {
        try (Stream<Path> files = Files.list(SHIPPED.resolve("ci"))) {
            return files.map(file -> file.getFileName().toString().replace("-values.yaml", ""))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
