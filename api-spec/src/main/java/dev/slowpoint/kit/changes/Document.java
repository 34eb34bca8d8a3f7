package dev.slowpoint.kit.changes;

import java.util.HashSet;
import java.util.Set;
import tools.jackson.core.JsonPointer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * One OpenAPI 3.1 document whose references stay inside it.
 *
 * @param document the whole document
 */
record Document(JsonNode document) {

    /** Words beside a reference, or in a schema, that only explain. */
    static final Set<String> EXPLAINING =
            Set.of("description", "summary", "title", "examples", "example", "externalDocs", "$comment");

    /** @throws IllegalArgumentException if the document says it is no OpenAPI 3.1 */
    Document {
        if (!document.path("openapi").asString("").startsWith("3.1.")) {
            throw new IllegalArgumentException("Not an OpenAPI 3.1 document: openapi is " + document.path("openapi"));
        }
    }

    static boolean isReference(JsonNode node) {
        return node.has("$ref");
    }

    /** Where the node stands, once references are followed; {@code here} if it is none. */
    Pointer placeOf(JsonNode node, Pointer here) {
        Pointer place = here;
        JsonNode at = node;
        Set<String> followed = new HashSet<>();
        while (isReference(at)) {
            String reference = at.path("$ref").asString();
            if (!followed.add(reference)) {
                throw new IllegalArgumentException("A reference that leads to itself: " + reference);
            }
            at = target(reference);
            place = new Pointer(reference);
        }
        return place;
    }

    /**
     * The node with its references followed. What stands beside a reference joins what it refers to, and wins where it
     * explains.
     *
     * @throws IllegalArgumentException if a reference leads nowhere, or what stands beside it contradicts the target
     */
    JsonNode resolve(JsonNode node) {
        JsonNode at = node;
        ObjectNode beside = JsonNodeFactory.instance.objectNode();
        Set<String> followed = new HashSet<>();
        while (isReference(at)) {
            String reference = at.path("$ref").asString();
            if (!followed.add(reference)) {
                throw new IllegalArgumentException("A reference that leads to itself: " + reference);
            }
            at.properties().stream()
                    .filter(member -> !member.getKey().equals("$ref") && !beside.has(member.getKey()))
                    .forEach(member -> beside.set(member.getKey(), member.getValue()));
            at = target(reference);
        }
        if (beside.isEmpty()) {
            return at;
        }
        ObjectNode joined = (ObjectNode) at.deepCopy();
        beside.properties().forEach(member -> {
            String name = member.getKey();
            if (SchemaChanges.isBound(name)
                    && joined.has(name)
                    && !joined.path(name).equals(member.getValue())) {
                throw new IllegalArgumentException(
                        "Both a reference and its target say " + name + ": " + node.path("$ref"));
            }
            joined.set(name, member.getValue());
        });
        return joined;
    }

    /** All references that are met from the paths on. */
    Set<String> referredByOperations() {
        Set<String> met = new HashSet<>();
        collect(document.path("paths"), met);
        return met;
    }

    private void collect(JsonNode node, Set<String> met) {
        if (node.isObject() && node.path("$ref").isString()) {
            String reference = node.path("$ref").asString();
            if (met.add(reference)) {
                collect(target(reference), met);
            }
        }
        node.forEach(child -> collect(child, met));
    }

    private JsonNode target(String reference) {
        if (!reference.startsWith("#/")) {
            throw new IllegalArgumentException("A reference that leaves the document: " + reference);
        }
        JsonNode target = document.at(JsonPointer.compile(reference.substring(1)));
        if (target.isMissingNode()) {
            throw new IllegalArgumentException("A reference that leads nowhere: " + reference);
        }
        return target;
    }
}
