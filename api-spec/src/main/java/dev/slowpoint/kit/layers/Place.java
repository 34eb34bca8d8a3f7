package dev.slowpoint.kit.layers;

import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.Contract.Example;
import dev.slowpoint.kit.Contract.Operation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JsonPointer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A place in a request that the contract shows.
 *
 * @param example the request
 * @param pointer to the place, as a JSON pointer
 * @param schema of what stands there
 * @param node what stands there
 */
record Place(Example example, String pointer, JsonNode schema, JsonNode node) {

    private static final Contract CONTRACT = Contract.PUBLISHED;

    /** All places in the requests of an operation; of places that have the same schema, the first. */
    static List<Place> of(Operation operation) {
        Map<String, Place> places = new LinkedHashMap<>();
        JsonNode schema = CONTRACT.requestSchema(operation);
        CONTRACT.examples(operation).forEach(example -> walk(example, "", "", schema, example.request(), places));
        return new ArrayList<>(places.values());
    }

    private static void walk(
            Example example, String pointer, String way, JsonNode schema, JsonNode node, Map<String, Place> places) {
        places.putIfAbsent(way, new Place(example, pointer, schema, node));
        if (node.isObject()) {
            node.properties()
                    .forEach(member -> walk(
                            example,
                            Trees.child(pointer, member.getKey()),
                            way + "/" + member.getKey(),
                            CONTRACT.resolved(schema.at("/properties").path(member.getKey())),
                            member.getValue(),
                            places));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                walk(
                        example,
                        pointer + "/" + i,
                        way + "/*",
                        CONTRACT.resolved(schema.at("/items")),
                        node.get(i),
                        places);
            }
        }
    }

    /** The type that the schema says. */
    String type() {
        return schema.path("type").asString("");
    }

    boolean number() {
        return type().equals("number") || type().equals("integer");
    }

    /** As a problem points at it: a fragment (RFC 6901, section 6). */
    String fragment() {
        return "#" + pointer;
    }

    /** The request with something else at this place. */
    JsonNode with(JsonNode other) {
        if (pointer.isEmpty()) {
            return other;
        }
        JsonNode request = example.request().deepCopy();
        JsonPointer whole = JsonPointer.compile(pointer);
        JsonNode parent = request.at(whole.head());
        if (parent instanceof ObjectNode object) {
            object.set(whole.last().getMatchingProperty(), other);
        } else {
            ((ArrayNode) parent).set(whole.last().getMatchingIndex(), other);
        }
        return request;
    }

    /** The request with one more member in the object at this place. */
    JsonNode withMember(String name, JsonNode value) {
        ObjectNode changed = (ObjectNode) node.deepCopy();
        changed.set(name, value);
        return with(changed);
    }

    /** The request without a member of the object at this place. */
    JsonNode without(String name) {
        ObjectNode changed = (ObjectNode) node.deepCopy();
        changed.remove(name);
        return with(changed);
    }
}
