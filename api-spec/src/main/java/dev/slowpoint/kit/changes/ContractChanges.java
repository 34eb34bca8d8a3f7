package dev.slowpoint.kit.changes;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.dataformat.yaml.YAMLMapper;

/**
 * Tells what changed between two OpenAPI 3.1 documents, and what of it breaks clients of the older one. Requests may
 * only become looser and answers only tighter (Zalando RESTful API Guidelines, rule 107). It knows the part of the
 * standard that the contract uses: references inside the document, no unions, no callbacks. A keyword that it cannot
 * judge breaks when it changes, and never passes unseen.
 *
 * <p>What only explains (descriptions, examples, titles of schemas) is no change, but for the codes of problems: those
 * are the names of the examples of problems.
 */
public final class ContractChanges {

    private static final Set<String> METHODS =
            Set.of("get", "put", "post", "delete", "options", "head", "patch", "trace");
    private static final Set<String> OPERATION = Set.of(
            "operationId", "parameters", "requestBody", "responses", "deprecated", "security", "tags", "servers");
    private static final Set<String> PATH = Set.of("parameters", "servers");
    private static final Set<String> PARAMETER = Set.of(
            "name", "in", "required", "schema", "content", "style", "explode", "allowReserved", "deprecated", "$ref");
    private static final String PROBLEMS = "application/problem+json";

    private final Document released;
    private final Document current;
    private final Findings findings = new Findings();
    private final SchemaChanges schemas;

    private ContractChanges(JsonNode released, JsonNode current) {
        this.released = new Document(released);
        this.current = new Document(current);
        this.schemas = new SchemaChanges(this.released, this.current, findings);
    }

    /**
     * What changed, breaking changes first; empty if nothing did.
     *
     * @throws IllegalArgumentException if one of the two is no OpenAPI 3.1 document, or has a reference that leaves it
     *     or leads nowhere
     */
    public static List<ContractChange> between(JsonNode released, JsonNode current) {
        ContractChanges changes = new ContractChanges(released, current);
        changes.compareDocuments();
        return changes.findings.all();
    }

    /**
     * Reads a contract, in YAML or in JSON.
     *
     * @throws JacksonException if the file cannot be read, or says a member twice
     */
    public static JsonNode read(Path file) {
        return YAMLMapper.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build()
                .readTree(file);
    }

    /** Prints the changes between the contracts in two files. Exits with 1 if one of them breaks, 2 if it cannot tell. */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
        System.exit(run(List.of(arguments), out, err));
    }

    static int run(List<String> arguments, PrintStream out, PrintStream err) {
        if (arguments.size() != 2) {
            err.println("Usage: ContractChanges <released contract> <current contract>");
            return 2;
        }
        List<ContractChange> changes;
        try {
            changes = between(read(Path.of(arguments.get(0))), read(Path.of(arguments.get(1))));
        } catch (JacksonException | IllegalArgumentException e) {
            err.println("The contracts cannot be compared: " + e.getMessage());
            return 2;
        }
        changes.forEach(out::println);
        long breaking = changes.stream()
                .filter(change -> change.severity() == Severity.BREAKING)
                .count();
        out.println(breaking + " breaking, " + (changes.size() - breaking) + " compatible");
        return breaking == 0 ? 0 : 1;
    }

    private void compareDocuments() {
        Pointer title = Pointer.ROOT.to("info", "title");
        JsonNode was = released.document().at("/info/title");
        JsonNode is = current.document().at("/info/title");
        if (!was.equals(is)) {
            findings.breaking("title-changed", title, was + " becomes " + is + "; it names types in generated clients");
        }
        compareServers(released.document(), current.document(), Pointer.ROOT);
        JsonNode paths = released.document().path("paths");
        JsonNode nowPaths = current.document().path("paths");
        for (String path : paths.propertyNames()) {
            Pointer where = Pointer.ROOT.to("paths", path);
            if (nowPaths.has(path)) {
                comparePaths(paths.path(path), nowPaths.path(path), where);
            } else {
                findings.breaking("path-removed", where, path + " is gone");
            }
        }
        for (String path : nowPaths.propertyNames()) {
            if (!paths.has(path)) {
                findings.compatible("path-added", Pointer.ROOT.to("paths", path), path + " is new");
            }
        }
        compareLooseSchemas();
    }

    /** Schemas that no operation refers to are met in words only: lines of a stream, say. Each side may mean them. */
    private void compareLooseSchemas() {
        Pointer place = Pointer.ROOT.to("components", "schemas");
        JsonNode nowSchemas = current.document().at("/components/schemas");
        Set<String> referred = released.referredByOperations();
        for (String name : released.document().at("/components/schemas").propertyNames()) {
            Pointer where = place.to(name);
            if (!referred.contains(where.text())) {
                if (nowSchemas.has(name)) {
                    JsonNode reference = JsonNodeFactory.instance.objectNode().put("$ref", where.text());
                    schemas.compare(reference, reference, where, Side.REQUEST);
                    schemas.compare(reference, reference, where, Side.ANSWER);
                } else {
                    findings.breaking("schema-removed", where, name + " is gone");
                }
            }
        }
    }

    private void compareServers(JsonNode before, JsonNode after, Pointer where) {
        Set<String> was = addresses(before);
        Set<String> is = addresses(after);
        for (String gone : without(was, is)) {
            findings.breaking("server-removed", where.to("servers"), gone + " is gone");
        }
        for (String added : without(is, was)) {
            findings.compatible("server-added", where.to("servers"), added + " is new");
        }
    }

    private static Set<String> addresses(JsonNode node) {
        Set<String> addresses = new TreeSet<>();
        node.path("servers").forEach(server -> addresses.add(server.path("url").asString()));
        return addresses;
    }

    private void comparePaths(JsonNode before, JsonNode after, Pointer where) {
        compareServers(before, after, where);
        for (String method : before.propertyNames()) {
            if (METHODS.contains(method)) {
                Pointer at = where.to(method);
                if (after.has(method)) {
                    compareOperations(before, after, method, at);
                } else {
                    findings.breaking("operation-removed", at, told(before.path(method)) + " is gone");
                }
            }
        }
        for (String method : after.propertyNames()) {
            if (METHODS.contains(method) && !before.has(method)) {
                findings.compatible("operation-added", where.to(method), told(after.path(method)) + " is new");
            }
        }
        Set<String> known = new TreeSet<>(PATH);
        known.addAll(METHODS);
        compareUnknown(before, after, known, where);
    }

    private static String told(JsonNode operation) {
        return operation.path("operationId").asString("the operation");
    }

    private void compareOperations(JsonNode pathBefore, JsonNode pathAfter, String method, Pointer where) {
        JsonNode before = pathBefore.path(method);
        JsonNode after = pathAfter.path(method);
        String was = before.path("operationId").asString("");
        String is = after.path("operationId").asString("");
        if (!was.equals(is)) {
            findings.breaking("operation-id-changed", where.to("operationId"), was + " becomes " + is);
        }
        if (!before.path("tags").equals(after.path("tags"))) {
            findings.breaking(
                    "tags-changed",
                    where.to("tags"),
                    before.path("tags") + " becomes " + after.path("tags") + "; they group generated clients");
        }
        if (!before.path("deprecated").asBoolean(false)
                && after.path("deprecated").asBoolean(false)) {
            findings.compatible("operation-deprecated", where, was + " is going to be removed");
        }
        compareServers(before, after, where);
        compareSecurity(before, after, where);
        compareParameters(parameters(released, pathBefore, before), parameters(current, pathAfter, after), where);
        compareBodies(before.path("requestBody"), after.path("requestBody"), where.to("requestBody"));
        compareAnswers(before.path("responses"), after.path("responses"), where.to("responses"));
        compareUnknown(before, after, OPERATION, where);
    }

    /** A client that was let in before must be let in with the same credentials. */
    private void compareSecurity(JsonNode before, JsonNode after, Pointer where) {
        List<JsonNode> ways = ways(released, before);
        List<JsonNode> nowWays = ways(current, after);
        Pointer at = where.to("security");
        for (JsonNode way : ways) {
            if (nowWays.stream().noneMatch(nowWay -> asksNoMore(way, nowWay))) {
                findings.breaking("security-added", at, "what let a client in is no longer enough: " + way);
            }
        }
        for (JsonNode nowWay : nowWays) {
            if (ways.stream().noneMatch(way -> asksNoMore(nowWay, way))) {
                findings.compatible("security-loosened", at, "this lets a client in as well: " + nowWay);
            }
        }
        for (String scheme : new TreeSet<>(schemes(ways))) {
            JsonNode was = released.document()
                    .path("components")
                    .path("securitySchemes")
                    .path(scheme);
            JsonNode is = current.document()
                    .path("components")
                    .path("securitySchemes")
                    .path(scheme);
            if (schemes(nowWays).contains(scheme)) {
                Pointer place = Pointer.ROOT.to("components", "securitySchemes", scheme);
                compareUnknown(was, is, Set.of(), place);
            }
        }
    }

    private static Set<String> schemes(List<JsonNode> ways) {
        Set<String> names = new TreeSet<>();
        ways.forEach(way -> names.addAll(way.propertyNames()));
        return names;
    }

    private static List<JsonNode> ways(Document contract, JsonNode operation) {
        JsonNode security = operation.has("security")
                ? operation.path("security")
                : contract.document().path("security");
        return security.isEmpty()
                ? List.of(JsonNodeFactory.instance.objectNode())
                : List.copyOf(security.valueStream().toList());
    }

    /** Whether credentials that satisfy the one way satisfy the other. */
    private static boolean asksNoMore(JsonNode way, JsonNode other) {
        return other.properties().stream()
                .allMatch(scheme -> way.has(scheme.getKey())
                        && way.path(scheme.getKey())
                                .valueStream()
                                .toList()
                                .containsAll(scheme.getValue().valueStream().toList()));
    }

    /** The parameters of an operation and its path, resolved, by place and name. */
    private static Map<String, JsonNode> parameters(Document contract, JsonNode path, JsonNode operation) {
        Map<String, JsonNode> parameters = new TreeMap<>();
        for (JsonNode level : List.of(path, operation)) {
            level.path("parameters").forEach(entry -> {
                JsonNode parameter = contract.resolve(entry);
                parameters.put(
                        parameter.path("in").asString() + " "
                                + parameter.path("name").asString(),
                        parameter);
            });
        }
        return parameters;
    }

    private void compareParameters(Map<String, JsonNode> before, Map<String, JsonNode> after, Pointer operation) {
        Map<String, JsonNode> added = new LinkedHashMap<>(after);
        before.forEach((key, was) -> {
            String name = was.path("name").asString();
            Pointer where = operation.to("parameters", name);
            JsonNode is = added.remove(key);
            if (is != null) {
                compareParameter(was, is, where);
                return;
            }
            String moved = after.keySet().stream()
                    .filter(other -> other.endsWith(" " + name) && !before.containsKey(other))
                    .findFirst()
                    .orElse("");
            if (moved.isEmpty()) {
                findings.breaking("parameter-removed", where, key + " is gone");
            } else {
                added.remove(moved);
                findings.breaking("parameter-moved", where, key + " becomes " + moved);
            }
        });
        added.forEach((key, is) -> {
            Pointer where = operation.to("parameters", is.path("name").asString());
            if (required(is)) {
                findings.breaking("parameter-required", where, key + " is new and must be sent");
            } else {
                findings.compatible("parameter-added", where, key + " is new");
            }
        });
    }

    private static boolean required(JsonNode node) {
        return node.path("required").asBoolean(false);
    }

    private void compareParameter(JsonNode was, JsonNode is, Pointer where) {
        if (!required(was) && required(is)) {
            findings.breaking("parameter-required", where, "it must now be sent");
        } else if (required(was) && !required(is)) {
            findings.compatible("parameter-optional", where, "it need no longer be sent");
        }
        if (!style(was).equals(style(is))) {
            findings.breaking("parameter-style-changed", where, style(was) + " becomes " + style(is));
        }
        deprecated(was, is, where);
        schemas.compare(was.path("schema"), is.path("schema"), where.to("schema"), Side.REQUEST);
        compareContent(was.path("content"), is.path("content"), where.to("content"), Side.REQUEST);
        compareUnknown(was, is, PARAMETER, where);
    }

    private void deprecated(JsonNode was, JsonNode is, Pointer where) {
        if (!was.path("deprecated").asBoolean(false) && is.path("deprecated").asBoolean(false)) {
            findings.compatible("deprecated", where, "it is going to be removed");
        }
    }

    /** How a parameter is written, with the defaults of OpenAPI 3.1.1, section 4.8.12. */
    private static String style(JsonNode parameter) {
        String place = parameter.path("in").asString();
        String style =
                parameter.path("style").asString(place.equals("query") || place.equals("cookie") ? "form" : "simple");
        boolean explode = parameter.path("explode").asBoolean(style.equals("form"));
        boolean reserved = parameter.path("allowReserved").asBoolean(false);
        return "style " + style + (explode ? ", exploded" : ", in one") + (reserved ? ", reserved as is" : "");
    }

    private void compareBodies(JsonNode before, JsonNode after, Pointer where) {
        if (before.isMissingNode() && after.isMissingNode()) {
            return;
        }
        if (after.isMissingNode()) {
            findings.breaking("body-removed", where, "no body is read any more");
            return;
        }
        JsonNode is = current.resolve(after);
        if (before.isMissingNode()) {
            if (required(is)) {
                findings.breaking("body-required", where, "a body must now be sent");
            } else {
                findings.compatible("body-added", where, "a body may now be sent");
            }
            return;
        }
        JsonNode was = released.resolve(before);
        if (!required(was) && required(is)) {
            findings.breaking("body-required", where, "the body must now be sent");
        } else if (required(was) && !required(is)) {
            findings.compatible("body-optional", where, "the body need no longer be sent");
        }
        compareContent(was.path("content"), is.path("content"), where.to("content"), Side.REQUEST);
    }

    private void compareContent(JsonNode before, JsonNode after, Pointer where, Side side) {
        for (String type : before.propertyNames()) {
            Pointer at = where.to(type);
            if (after.has(type)) {
                compareMedia(before.path(type), after.path(type), type, at, side);
            } else {
                findings.breaking(side.rule("media-type-removed"), at, type + " is gone");
            }
        }
        for (String type : after.propertyNames()) {
            if (!before.has(type)) {
                findings.compatible(side.rule("media-type-added"), where.to(type), type + " is new");
            }
        }
    }

    private void compareMedia(JsonNode before, JsonNode after, String type, Pointer where, Side side) {
        schemas.compare(before.path("schema"), after.path("schema"), where.to("schema"), side);
        if (type.equals(PROBLEMS)) {
            Set<String> was = new TreeSet<>(before.path("examples").propertyNames());
            Set<String> is = new TreeSet<>(after.path("examples").propertyNames());
            for (String gone : without(was, is)) {
                findings.breaking("problem-code-removed", where.to("examples", gone), gone + " is gone");
            }
            for (String added : without(is, was)) {
                findings.compatible("problem-code-added", where.to("examples", added), added + " is new");
            }
        }
        compareUnknown(before, after, Set.of("schema"), where);
    }

    private void compareAnswers(JsonNode before, JsonNode after, Pointer where) {
        for (String status : before.propertyNames()) {
            Pointer at = where.to(status);
            if (!after.has(status)) {
                findings.breaking("status-removed", at, status + " is gone");
                continue;
            }
            JsonNode was = released.resolve(before.path(status));
            JsonNode is = current.resolve(after.path(status));
            Pointer place = current.placeOf(after.path(status), at);
            compareContent(was.path("content"), is.path("content"), place.to("content"), Side.ANSWER);
            compareHeaders(was.path("headers"), is.path("headers"), place.to("headers"));
            compareUnknown(was, is, Set.of("content", "headers", "$ref"), place);
        }
        for (String status : after.propertyNames()) {
            if (!before.has(status)) {
                boolean success = status.startsWith("2") || status.startsWith("3");
                if (success) {
                    findings.breaking("success-status-added", where.to(status), status + " is new, and no failure");
                } else {
                    findings.compatible("status-added", where.to(status), status + " is new");
                }
            }
        }
    }

    private void compareHeaders(JsonNode before, JsonNode after, Pointer where) {
        for (String header : before.propertyNames()) {
            Pointer at = where.to(header);
            if (!after.has(header)) {
                findings.breaking("header-removed", at, header + " is gone");
                continue;
            }
            JsonNode was = released.resolve(before.path(header));
            JsonNode is = current.resolve(after.path(header));
            Pointer place = current.placeOf(after.path(header), at);
            if (required(was) && !required(is)) {
                findings.breaking("header-optional", place, header + " may now be absent");
            } else if (!required(was) && required(is)) {
                findings.compatible("header-required", place, header + " is now always there");
            }
            if (!style(was).equals(style(is))) {
                findings.breaking("header-style-changed", place, style(was) + " becomes " + style(is));
            }
            deprecated(was, is, place);
            schemas.compare(was.path("schema"), is.path("schema"), place.to("schema"), Side.ANSWER);
            compareContent(was.path("content"), is.path("content"), place.to("content"), Side.ANSWER);
            compareUnknown(was, is, PARAMETER, place);
        }
        for (String header : after.propertyNames()) {
            if (!before.has(header)) {
                findings.compatible("header-added", where.to(header), header + " is new");
            }
        }
    }

    /** What nobody said how to judge breaks when it changes. */
    private void compareUnknown(JsonNode before, JsonNode after, Set<String> known, Pointer where) {
        Set<String> keywords = new TreeSet<>();
        keywords.addAll(before.propertyNames());
        keywords.addAll(after.propertyNames());
        keywords.removeIf(keyword ->
                known.contains(keyword) || Document.EXPLAINING.contains(keyword) || keyword.startsWith("x-"));
        for (String keyword : keywords) {
            if (!before.path(keyword).equals(after.path(keyword))) {
                findings.breaking(
                        "keyword-not-judged",
                        where.to(keyword),
                        before.path(keyword) + " becomes " + after.path(keyword));
            }
        }
    }

    private static Set<String> without(Set<String> some, Set<String> others) {
        Set<String> left = new TreeSet<>(some);
        left.removeAll(others);
        return left;
    }
}
