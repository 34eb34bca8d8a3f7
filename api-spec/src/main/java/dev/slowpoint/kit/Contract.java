package dev.slowpoint.kit;

import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** A contract as it was published: its operations, its examples, and whether an answer keeps it. */
public final class Contract {

    /** The name under which the document is known to the validator; nothing is fetched from there. */
    private static final String PLACE = "https://slowpoint.invalid/openapi.yaml";

    private static final String PACKED = "/contract/openapi.yaml";

    /** The contract that the kit was packed with. */
    public static final Contract PUBLISHED = ofResource(PACKED);

    /** The newest contract that was released before it. */
    public static final Contract RELEASED = ofResource("/contract/released/" + newest() + "/openapi.yaml");

    /**
     * One operation.
     *
     * @param id its {@code operationId}
     * @param method of HTTP, in capitals
     * @param path a template, with the parameters of the path in braces
     * @param node what the contract says of it
     */
    public record Operation(String id, String method, String path, JsonNode node) {

        /** Whether requests of it have a body. */
        public boolean reads() {
            return node.has("requestBody");
        }

        boolean serves(String asked, String of) {
            return method.equals(asked) && of.matches(path.replaceAll("\\{[^}]+}", "[^/]+"));
        }

        @Override
        public String toString() {
            return id;
        }
    }

    /**
     * A request that the contract shows.
     *
     * @param operation whom it is sent to
     * @param name of the example
     * @param request its body
     * @param answer the answer that the contract shows for it; a missing node where it shows none
     */
    public record Example(Operation operation, String name, JsonNode request, JsonNode answer) {
        @Override
        public String toString() {
            return operation + " " + name;
        }
    }

    private final JsonNode document;
    private final List<Operation> operations;
    private final SchemaRegistry registry;
    private final Map<String, Schema> schemas = new ConcurrentHashMap<>();

    private Contract(String yaml) {
        this.document = new YAMLMapper().readTree(yaml);
        this.registry =
                SchemaRegistry.withDialect(Dialects.getOpenApi31(), builder -> builder.schemas(Map.of(PLACE, yaml)));
        List<Operation> found = new ArrayList<>();
        document.at("/paths")
                .properties()
                .forEach(path -> path.getValue()
                        .properties()
                        .forEach(method -> found.add(new Operation(
                                method.getValue().at("/operationId").asString(),
                                method.getKey().toUpperCase(Locale.ROOT),
                                path.getKey(),
                                method.getValue()))));
        this.operations = List.copyOf(found);
    }

    /** The last line of the list of releases, which grows at its end. */
    private static String newest() {
        List<String> lines = packed("/contract/released/versions.csv").lines().toList();
        return lines.get(lines.size() - 1).replaceFirst(",.*", "");
    }

    /** A contract that is packed with the kit. */
    static Contract ofResource(String name) {
        return new Contract(packed(name));
    }

    private static String packed(String name) {
        try (InputStream in = Objects.requireNonNull(Contract.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The whole document. */
    public JsonNode document() {
        return document;
    }

    /** Its semantic version. */
    public String version() {
        return document.at("/info/version").asString();
    }

    public List<Operation> operations() {
        return operations;
    }

    /** The operation of that name. */
    public Operation operation(String id) {
        return operations.stream()
                .filter(operation -> operation.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("The contract has no operation " + id));
    }

    /** The operation that answers a method at a path without its query. */
    public Optional<Operation> operation(String method, String path) {
        return operations.stream()
                .filter(operation -> operation.serves(method, path))
                .findFirst();
    }

    /** Every request that is shown, in the order of the document. */
    public List<Example> examples() {
        return operations.stream()
                .flatMap(operation -> examples(operation).stream())
                .toList();
    }

    /** The requests that are shown of one operation. */
    public List<Example> examples(Operation operation) {
        JsonNode answers = operation.node().at("/responses/200/content/application~1json/examples");
        return operation.node().at("/requestBody/content/application~1json/examples").properties().stream()
                .map(example -> new Example(
                        operation,
                        example.getKey(),
                        example.getValue().at("/value"),
                        answers.path(example.getKey()).path("value")))
                .toList();
    }

    /** The node itself, or what it refers to. */
    public JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? document.at(node.at("/$ref").asString().substring(1)) : node;
    }

    /** The schema of the requests of an operation. */
    public JsonNode requestSchema(Operation operation) {
        return resolved(operation.node().at("/requestBody/content/application~1json/schema"));
    }

    /** Media types that an operation answers with a status, without their parameters. */
    public List<String> answers(Operation operation, int status) {
        return response(operation, status).at("/content").propertyNames().stream()
                .map(type -> type.replaceFirst(";.*", ""))
                .toList();
    }

    /** What the contract says of answers with a status; a missing node where it knows none. */
    public JsonNode response(Operation operation, int status) {
        return resolved(operation.node().at("/responses").path(Integer.toString(status)));
    }

    /** In what way an answer of an operation breaks the contract: status, media type, headers, and the whole body. */
    public List<String> faults(Operation operation, Answer answer) {
        JsonNode response = response(operation, answer.status());
        if (response.isMissingNode()) {
            return List.of(operation + " is not said to answer " + answer.status());
        }
        List<String> faults = new ArrayList<>(headerFaults(response, answer));
        Optional<JsonNode> type = response.at("/content").properties().stream()
                .filter(entry -> entry.getKey().replaceFirst(";.*", "").equals(answer.mediaType()))
                .map(Map.Entry::getValue)
                .findFirst();
        if (type.isEmpty()) {
            if (!response.at("/content").isEmpty()) {
                faults.add(operation + " is not said to answer " + answer.status() + " as " + answer.mediaType());
            }
            return faults;
        }
        if (answer.mediaType().endsWith("json") || answer.mediaType().equals(Wire.CBOR.mediaType())) {
            faults.addAll(faults(type.get().at("/schema"), answer.tree()));
        }
        return faults;
    }

    private List<String> headerFaults(JsonNode response, Answer answer) {
        List<String> faults = new ArrayList<>();
        response.at("/headers").properties().forEach(entry -> {
            JsonNode header = resolved(entry.getValue());
            Optional<String> sent = answer.header(entry.getKey());
            if (sent.isEmpty() && header.at("/required").asBoolean(false)) {
                faults.add("The header " + entry.getKey() + " is missing");
            }
        });
        return faults;
    }

    /** In what way a tree breaks a schema of the contract that is referred to by name. */
    public List<String> faults(JsonNode reference, JsonNode tree) {
        String place = reference.at("/$ref").asString("");
        if (place.isEmpty()) {
            throw new IllegalArgumentException("Only schemas with a name are kept: " + reference);
        }
        return schemas
                .computeIfAbsent(place, unknown -> registry.getSchema(SchemaLocation.of(PLACE + place)))
                .validate(tree)
                .stream()
                .map(Error::toString)
                .toList();
    }

    /** Members of a tree that its schema does not name, as JSON pointers. */
    public List<String> unnamed(JsonNode schema, JsonNode tree) {
        List<String> found = new ArrayList<>();
        unnamed(resolved(schema), tree, "", found);
        return found;
    }

    private void unnamed(JsonNode schema, JsonNode tree, String pointer, List<String> found) {
        if (tree.isArray() && schema.has("items")) {
            for (int i = 0; i < tree.size(); i++) {
                unnamed(resolved(schema.at("/items")), tree.get(i), pointer + "/" + i, found);
            }
        } else if (tree.isObject() && schema.has("properties")) {
            tree.properties().forEach(member -> {
                JsonNode part = schema.at("/properties").path(member.getKey());
                if (part.isMissingNode()) {
                    found.add(pointer + "/" + member.getKey());
                } else {
                    unnamed(resolved(part), member.getValue(), pointer + "/" + member.getKey(), found);
                }
            });
        }
    }
}
