package dev.slowpoint.ops;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What operators are given, read from the places it is shipped from. */
final class Watching {

    static final Path RULES = Path.of("../helm/slowpoint/files/rules.yaml");

    private static final Path DASHBOARDS = Path.of("../helm/slowpoint/files/dashboards");
    private static final Path GUIDE = Path.of("src/main/guide");
    private static final JsonMapper READER = new JsonMapper();

    /** A name of a series with what it is chosen by, in a query. */
    private static final Pattern SELECTOR = Pattern.compile(
            "\\b(?:slowpoint[a-z_:]\\w*(?::\\w+)*|http_server\\w+|tomcat_\\w+|jvm_\\w+|process_\\w+|up)\\b(?:\\{[^}]*\\})?");

    private Watching() {}

    /**
     * A rule that fires.
     *
     * @param name of the alert
     * @param expression in PromQL
     */
    record Alert(String name, String expression, Map<String, String> labels, Map<String, String> annotations) {

        @Override
        public String toString() {
            return name + labels;
        }
    }

    static List<Alert> alerts() {
        return rules().stream()
                .filter(rule -> rule.containsKey("alert"))
                .map(rule -> new Alert(
                        text(rule, "alert"), text(rule, "expr"), texts(rule, "labels"), texts(rule, "annotations")))
                .toList();
    }

    /** Names of the series that rules record. */
    static List<String> recorded() {
        return rules().stream()
                .filter(rule -> rule.containsKey("record"))
                .map(rule -> text(rule, "record"))
                .toList();
    }

    /** All series that the rules look at. */
    static Set<String> selectors() {
        Set<String> found = new LinkedHashSet<>();
        for (Map<?, ?> rule : rules()) {
            SELECTOR.matcher(text(rule, "expr")).results().forEach(match -> found.add(match.group()));
        }
        return found;
    }

    static List<Path> dashboards() {
        try (Stream<Path> files = Files.list(DASHBOARDS)) {
            return files.sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All queries of all dashboards, as they are asked. */
    static Set<String> queries() {
        Set<String> found = new LinkedHashSet<>();
        for (Path dashboard : dashboards()) {
            for (JsonNode panel : json(dashboard).path("panels")) {
                for (JsonNode target : panel.path("targets")) {
                    found.add(target.path("expr")
                            .asString()
                            .replace("$__rate_interval", "1m")
                            .replace("$namespace", ".*"));
                }
            }
        }
        return found;
    }

    /** A page of the guide. */
    static String page(String name) {
        return read(GUIDE.resolve(name));
    }

    static JsonNode json(Path file) {
        return READER.readTree(read(file));
    }

    private static List<Map<?, ?>> rules() {
        Map<?, ?> file = new Yaml(new SafeConstructor(new LoaderOptions())).load(read(RULES));
        List<Map<?, ?>> rules = new ArrayList<>();
        for (Object group : (List<?>) Objects.requireNonNull(file.get("groups"))) {
            for (Object rule : (List<?>) Objects.requireNonNull(((Map<?, ?>) group).get("rules"))) {
                rules.add((Map<?, ?>) rule);
            }
        }
        return rules;
    }

    private static String text(Map<?, ?> rule, String member) {
        return String.valueOf(rule.get(member));
    }

    private static Map<String, String> texts(Map<?, ?> rule, String member) {
        Map<String, String> texts = new TreeMap<>();
        ((Map<?, ?>) Objects.requireNonNull(rule.get(member)))
                .forEach((key, value) -> texts.put(key.toString(), value.toString()));
        return texts;
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
