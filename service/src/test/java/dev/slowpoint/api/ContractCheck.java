package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;
import io.restassured.http.Header;
import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.springframework.http.MediaType;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Holds an answer against the contract that is served: its status, its media type, all its headers and its body. Remembers
 * which members it saw of each schema.
 */
final class ContractCheck {

    private static final String PLACE = "https://slowpoint.invalid/openapi.json";
    private static final String SCHEMAS = "#/components/schemas/";

    /** Headers of HTTP itself, of which the contract tells in its text. */
    private static final Set<String> OF_HTTP = Set.of(
            "date",
            "connection",
            "keep-alive",
            "content-type",
            "content-length",
            "content-encoding",
            "transfer-encoding",
            "content-disposition");

    private final JsonNode contract;
    private final SchemaRegistry registry;
    private final Map<String, Schema> schemas = new HashMap<>();
    private final Map<String, Integer> objects = new TreeMap<>();
    private final Map<String, Map<String, Integer>> members = new TreeMap<>();

    ContractCheck(byte[] served) {
        this.contract = JsonMapper.shared().readTree(served);
        Map<String, String> files = Map.of(PLACE, contract.toString());
        this.registry = SchemaRegistry.withDialect(Dialects.getOpenApi31(), builder -> builder.schemas(files));
    }

    JsonNode contract() {
        return contract;
    }

    /** Holds an answer to an operation of the contract against it. */
    void check(Response answer, String method, String path) {
        String operation = method.toLowerCase(Locale.ROOT) + " " + path;
        JsonNode responses =
                contract.at("/paths/" + path.replace("/", "~1") + "/" + method.toLowerCase(Locale.ROOT) + "/responses");
        assertThat(responses.propertyNames()).as(operation).contains(Integer.toString(answer.statusCode()));
        JsonNode response = resolved(responses.get(Integer.toString(answer.statusCode())));
        operation += " " + answer.statusCode();
        headers(answer, response, operation);
        byte[] body = answer.asByteArray();
        if (!response.has("content")) {
            assertThat(body).as(operation).isEmpty();
            return;
        }
        MediaType sent = MediaType.parseMediaType(answer.contentType());
        String type = response.get("content").propertyNames().stream()
                .filter(known -> MediaType.parseMediaType(known).equalsTypeAndSubtype(sent))
                .findFirst()
                .orElseThrow(() -> new AssertionError("undocumented type " + sent));
        if (type.equals(HttpTest.JSON) || type.equals(HttpTest.CBOR) || type.equals(HttpTest.PROBLEM)) {
            JsonNode tree = HttpTest.tree(body, type);
            JsonNode schema = response.get("content").get(type).get("schema");
            assertValid(schema.get("$ref").asString(), tree, operation);
            seen(schema, tree);
        }
    }

    void assertValid(String reference, JsonNode body, String where) {
        Schema schema =
                schemas.computeIfAbsent(reference, known -> registry.getSchema(SchemaLocation.of(PLACE + known)));
        assertThat(schema.validate(body)).as(where + " " + body).isEmpty();
    }

    private void headers(Response answer, JsonNode response, String operation) {
        Map<String, JsonNode> known = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        for (String name : response.at("/headers").propertyNames()) {
            known.put(name, resolved(response.at("/headers").get(name)));
        }
        Set<String> sent = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        for (Header header : answer.headers()) {
            if (!OF_HTTP.contains(header.getName().toLowerCase(Locale.ROOT))) {
                sent.add(header.getName());
            }
        }
        assertThat(known.keySet()).as(operation + " tells every header").containsAll(sent);
        known.forEach((name, header) -> {
            if (header.at("/required").asBoolean()) {
                assertThat(sent).as(operation + " sends " + name).contains(name);
            }
            if (header.at("/schema/type").asString().equals("integer") && sent.contains(name)) {
                assertThat(Integer.parseInt(answer.header(name)))
                        .as(name)
                        .isBetween(
                                header.at("/schema/minimum").asInt(),
                                header.at("/schema/maximum").asInt());
            }
        });
    }

    JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? contract.at(node.get("$ref").asString().substring(1)) : node;
    }

    /** Counts the members of an answer by the schemas they belong to. */
    private void seen(JsonNode schema, JsonNode value) {
        if (value.isArray()) {
            value.forEach(item -> seen(schema.get("items"), item));
            return;
        }
        if (!schema.has("$ref") || !value.isObject()) {
            return;
        }
        String name = schema.get("$ref").asString().substring(SCHEMAS.length());
        objects.merge(name, 1, Integer::sum);
        Map<String, Integer> counted = members.computeIfAbsent(name, unknown -> new TreeMap<>());
        JsonNode properties = resolved(schema).get("properties");
        for (String member : value.propertyNames()) {
            counted.merge(member, 1, Integer::sum);
            seen(properties.get(member), value.get(member));
        }
    }

    /** Members that every object had which was seen, though the schema does not require them. */
    List<String> alwaysThereButNotRequired() {
        List<String> found = new ArrayList<>();
        objects.forEach((name, count) -> {
            Set<String> required = new TreeSet<>();
            contract.at("/components/schemas/" + name + "/required").forEach(member -> required.add(member.asString()));
            members.getOrDefault(name, Map.of()).forEach((member, times) -> {
                if (times.equals(count) && !required.contains(member)) {
                    found.add(name + "." + member);
                }
            });
        });
        return found;
    }

    /** How many objects of a schema were seen. */
    Map<String, Integer> objects() {
        return objects;
    }
}
