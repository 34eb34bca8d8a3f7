package dev.slowpoint.kit.layers;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import tools.jackson.databind.JsonNode;

/** Ways through trees. */
final class Trees {

    private Trees() {}

    /** Calls for each node below and at one, with its JSON pointer. */
    static void visit(JsonNode node, String pointer, BiConsumer<String, JsonNode> visitor) {
        visitor.accept(pointer, node);
        if (node.isObject()) {
            node.properties().forEach(member -> visit(member.getValue(), child(pointer, member.getKey()), visitor));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                visit(node.get(i), pointer + "/" + i, visitor);
            }
        }
    }

    /** The pointer of a member. */
    static String child(String pointer, String name) {
        return pointer + "/" + name.replace("~", "~0").replace("/", "~1");
    }

    /** Where two trees differ; numbers are the same when their values are, whatever their notation. */
    static List<String> difference(JsonNode expected, JsonNode actual, String pointer) {
        List<String> found = new ArrayList<>();
        if (expected.isNumber() && actual.isNumber()) {
            if (Double.compare(expected.asDouble(), actual.asDouble()) != 0) {
                found.add(pointer + ": " + expected + " against " + actual);
            }
        } else if (expected.isObject() && actual.isObject()) {
            Set<String> names = new TreeSet<>(expected.propertyNames());
            names.addAll(actual.propertyNames());
            names.forEach(
                    name -> found.addAll(difference(expected.path(name), actual.path(name), child(pointer, name))));
        } else if (expected.isArray() && actual.isArray() && expected.size() == actual.size()) {
            for (int i = 0; i < expected.size(); i++) {
                found.addAll(difference(expected.get(i), actual.get(i), pointer + "/" + i));
            }
        } else if (!expected.equals(actual)) {
            found.add(pointer + ": " + brief(expected) + " against " + brief(actual));
        }
        return found;
    }

    private static String brief(JsonNode node) {
        String text = node.isMissingNode() ? "nothing" : node.toString();
        return text.length() > 80 ? text.substring(0, 80) + "..." : text;
    }
}
