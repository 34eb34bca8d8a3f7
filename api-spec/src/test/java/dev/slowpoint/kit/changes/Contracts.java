package dev.slowpoint.kit.changes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Objects;
import java.util.stream.Stream;
import tools.jackson.core.JsonPointer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The contracts that the tests read, and edits of them by JSON pointer. */
final class Contracts {

    private static final JsonMapper JSON = new JsonMapper();

    private Contracts() {}

    /** The contract as it stands in this module. */
    static JsonNode present() {
        return ContractChanges.read(resource("contract/openapi.yaml"));
    }

    /** The newest released contract, by version. */
    static Path newestRelease() {
        try (Stream<Path> folders = Files.list(resource("contract/released"))) {
            return folders.filter(Files::isDirectory)
                    .max(Comparator.comparing(
                            folder -> ContractVersion.parse(folder.getFileName().toString())))
                    .orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path resource(String name) {
        URL url = Objects.requireNonNull(Contracts.class.getClassLoader().getResource(name), name);
        try {
            return Path.of(url.toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Sets a member to a value written in JSON; what stands above it must be there. */
    static void set(JsonNode contract, String pointer, String json) {
        JsonPointer place = JsonPointer.compile(pointer);
        JsonNode parent = parent(contract, place);
        if (parent instanceof ArrayNode list) {
            list.set(place.last().getMatchingIndex(), JSON.readTree(json));
        } else {
            ((ObjectNode) parent).set(place.last().getMatchingProperty(), JSON.readTree(json));
        }
    }

    /** Adds a value written in JSON to a list, which is made if it is not there. */
    static void append(JsonNode contract, String pointer, String json) {
        JsonPointer place = JsonPointer.compile(pointer);
        ObjectNode parent = (ObjectNode) parent(contract, place);
        parent.withArrayProperty(place.last().getMatchingProperty()).add(JSON.readTree(json));
    }

    /** Removes a member that is there. */
    static void remove(JsonNode contract, String pointer) {
        JsonPointer place = JsonPointer.compile(pointer);
        JsonNode parent = parent(contract, place);
        JsonNode gone = parent instanceof ArrayNode list
                ? list.remove(place.last().getMatchingIndex())
                : ((ObjectNode) parent).remove(place.last().getMatchingProperty());
        Objects.requireNonNull(gone, "Nothing to remove at " + pointer);
    }

    /** Removes an item of a list of words that is in it. */
    static void drop(JsonNode contract, String pointer, String word) {
        ArrayNode list = (ArrayNode) contract.at(pointer);
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i).asString().equals(word)) {
                list.remove(i);
                return;
            }
        }
        throw new IllegalStateException("No " + word + " at " + pointer);
    }

    /** Gives a member another name. */
    static void rename(JsonNode contract, String pointer, String name) {
        JsonPointer place = JsonPointer.compile(pointer);
        ObjectNode parent = (ObjectNode) parent(contract, place);
        JsonNode value = Objects.requireNonNull(parent.remove(place.last().getMatchingProperty()), pointer);
        parent.set(name, value);
    }

    private static JsonNode parent(JsonNode contract, JsonPointer place) {
        JsonNode parent = contract.at(Objects.requireNonNull(place.head()));
        if (!parent.isContainer()) {
            throw new IllegalStateException("Nothing at " + place.head());
        }
        return parent;
    }
}
