package dev.slowpoint.kit.changes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Compares schemas, on the side of requests or of answers. Pairs of named schemas are compared once for each side, so
 * that schemas may contain themselves. A keyword that it does not know breaks when it changes.
 */
final class SchemaChanges {

    private static final BigDecimal NO_LIMIT = new BigDecimal("1e400");
    private static final Set<String> RANGE = Set.of("minimum", "exclusiveMinimum", "maximum", "exclusiveMaximum");
    private static final Set<String> COUNTS =
            Set.of("minLength", "maxLength", "minItems", "maxItems", "minProperties", "maxProperties");
    private static final Set<String> OTHER_BOUNDS = Set.of("type", "enum", "const", "pattern", "format", "multipleOf");
    private static final Set<String> STRUCTURE = Set.of(
            "$ref", "properties", "required", "items", "additionalProperties", "default", "deprecated", "uniqueItems");

    private record Pair(String released, String current, Side side) {}

    private final Document released;
    private final Document current;
    private final Findings findings;
    private final Set<Pair> compared = new HashSet<>();

    SchemaChanges(Document released, Document current, Findings findings) {
        this.released = released;
        this.current = current;
        this.findings = findings;
    }

    /** Whether the keyword says which values pass, so that it cannot stand twice. */
    static boolean isBound(String keyword) {
        return RANGE.contains(keyword) || COUNTS.contains(keyword) || OTHER_BOUNDS.contains(keyword);
    }

    /** Compares two schemas of the same place; a missing one lets everything pass. */
    void compare(JsonNode before, JsonNode after, Pointer where, Side side) {
        compareNames(before, after, where);
        if (Document.isReference(before) && Document.isReference(after)) {
            compareBeside(before, after, where, side);
            Pointer placeBefore = released.placeOf(before, where);
            Pointer placeAfter = current.placeOf(after, where);
            if (compared.add(new Pair(placeBefore.text(), placeAfter.text(), side))) {
                compareInside(named(released, placeBefore), named(current, placeAfter), placeAfter, side);
            }
        } else {
            compareInside(resolved(released, before), resolved(current, after), where, side);
        }
    }

    /** The names of schemas are the names of types in generated clients. */
    private void compareNames(JsonNode before, JsonNode after, Pointer where) {
        String was = typeName(released, before, where);
        String is = typeName(current, after, where);
        if (!was.equals(is)) {
            findings.breaking("type-renamed", where, "the type " + was + " becomes " + is);
        }
    }

    private static String typeName(Document contract, JsonNode schema, Pointer where) {
        JsonNode whole = resolved(contract, schema);
        boolean typed = whole.has("properties") || whole.has("enum");
        if (!typed || !Document.isReference(schema)) {
            return "without a name";
        }
        String place = contract.placeOf(schema, where).text();
        return place.substring(place.lastIndexOf('/') + 1);
    }

    private static JsonNode named(Document contract, Pointer place) {
        ObjectNode reference = JsonNodeFactory.instance.objectNode();
        reference.put("$ref", place.text());
        return contract.resolve(reference);
    }

    private static JsonNode resolved(Document contract, JsonNode schema) {
        return schema.isMissingNode() ? JsonNodeFactory.instance.objectNode() : contract.resolve(schema);
    }

    /** Compares the keywords that stand beside one of two references, as they count there. */
    private void compareBeside(JsonNode before, JsonNode after, Pointer where, Side side) {
        Set<String> beside = new TreeSet<>();
        beside.addAll(before.propertyNames());
        beside.addAll(after.propertyNames());
        beside.remove("$ref");
        if (!Document.EXPLAINING.containsAll(beside)) {
            compareInside(only(beside, released.resolve(before)), only(beside, current.resolve(after)), where, side);
        }
    }

    private static JsonNode only(Set<String> names, JsonNode schema) {
        ObjectNode part = JsonNodeFactory.instance.objectNode();
        schema.properties().stream()
                .filter(member -> names.contains(member.getKey()))
                .forEach(member -> part.set(member.getKey(), member.getValue()));
        return part;
    }

    private void compareInside(JsonNode before, JsonNode after, Pointer where, Side side) {
        if (compareTypes(before, after, where, side)) {
            return;
        }
        compareFormat(before, after, where, side);
        compareUnit(before, after, where, side);
        compareWords(before, after, where, side);
        compareRange(before, after, where, side);
        compareCounts(before, after, where, side);
        comparePattern(before, after, where, side);
        compareMultiple(before, after, where, side);
        compareUniqueness(before, after, where, side);
        compareDefault(before, after, where, side);
        compareMembers(before, after, where, side);
        compareFurtherMembers(before, after, where, side);
        if (before.has("items") || after.has("items")) {
            compare(before.path("items"), after.path("items"), where.to("items"), side);
        }
        if (!before.path("deprecated").asBoolean(false)
                && after.path("deprecated").asBoolean(false)) {
            findings.compatible(side.rule("deprecated"), where, "it is going to be removed");
        }
        compareTheRest(before, after, where);
    }

    /** Whether the types have nothing in common, so that nothing else is left to compare. */
    private boolean compareTypes(JsonNode before, JsonNode after, Pointer where, Side side) {
        SortedSet<String> was = words(before.path("type"));
        SortedSet<String> is = words(after.path("type"));
        if (was.equals(is)) {
            return false;
        }
        String text = "the type " + told(was, "any") + " becomes " + told(is, "any");
        boolean looser = is.isEmpty() || (!was.isEmpty() && is.containsAll(was));
        boolean tighter = was.isEmpty() || (!is.isEmpty() && was.containsAll(is));
        if (looser) {
            side.looser(findings, "type-changed", where, text);
        } else if (tighter) {
            side.tighter(findings, "type-changed", where, text);
        } else {
            findings.breaking(side.rule("type-changed"), where, text);
        }
        return !was.isEmpty() && !is.isEmpty() && Collections.disjoint(was, is);
    }

    /** The format decides the type in generated clients, so that any change breaks, even where the values agree. */
    private void compareFormat(JsonNode before, JsonNode after, Pointer where, Side side) {
        compareFixed(before, after, "format", side.rule("format-changed"), where);
    }

    private void compareUnit(JsonNode before, JsonNode after, Pointer where, Side side) {
        if (!before.has("x-unit") && after.has("x-unit")) {
            findings.compatible(side.rule("unit-told"), where, "the unit is now told: " + after.path("x-unit"));
        } else {
            compareFixed(before, after, "x-unit", side.rule("unit-changed"), where);
        }
    }

    private void compareFixed(JsonNode before, JsonNode after, String keyword, String rule, Pointer where) {
        if (!before.path(keyword).equals(after.path(keyword))) {
            findings.breaking(rule, where, told(keyword, before.path(keyword), after.path(keyword)));
        }
    }

    private void compareWords(JsonNode before, JsonNode after, Pointer where, Side side) {
        SortedSet<String> was = closedWords(before);
        SortedSet<String> is = closedWords(after);
        if (was.isEmpty() && !is.isEmpty()) {
            side.tighter(findings, "enum-reduced", where, "only these words are left: " + is);
        } else if (!was.isEmpty() && is.isEmpty()) {
            side.looser(findings, "enum-extended", where, "any word may stand here, no longer only " + was);
        } else {
            SortedSet<String> gone = without(was, is);
            if (!gone.isEmpty()) {
                side.tighter(findings, "enum-reduced", where, "words are gone: " + gone);
            }
            SortedSet<String> added = without(is, was);
            if (!added.isEmpty()) {
                side.looser(findings, "enum-extended", where, "words are new: " + added);
            }
        }
    }

    private static SortedSet<String> closedWords(JsonNode schema) {
        SortedSet<String> words = new TreeSet<>();
        schema.path("enum").forEach(word -> words.add(word.toString()));
        if (schema.has("const")) {
            words.add(schema.path("const").toString());
        }
        return words;
    }

    private void compareRange(JsonNode before, JsonNode after, Pointer where, Side side) {
        int lower = Edge.lower(after).compareTo(Edge.lower(before));
        if (lower != 0) {
            String text = "at least " + Edge.lower(before) + " becomes at least " + Edge.lower(after);
            bound(lower > 0, text, where, side);
        }
        int upper = Edge.upper(after).compareTo(Edge.upper(before));
        if (upper != 0) {
            String text = "at most " + Edge.upper(before) + " becomes at most " + Edge.upper(after);
            bound(upper < 0, text, where, side);
        }
    }

    private void compareCounts(JsonNode before, JsonNode after, Pointer where, Side side) {
        for (String keyword : List.of("minLength", "minItems", "minProperties")) {
            int order = limit(after, keyword, BigDecimal.ZERO).compareTo(limit(before, keyword, BigDecimal.ZERO));
            if (order != 0) {
                bound(order > 0, told(keyword, before.path(keyword), after.path(keyword)), where, side);
            }
        }
        for (String keyword : List.of("maxLength", "maxItems", "maxProperties")) {
            int order = limit(after, keyword, NO_LIMIT).compareTo(limit(before, keyword, NO_LIMIT));
            if (order != 0) {
                bound(order < 0, told(keyword, before.path(keyword), after.path(keyword)), where, side);
            }
        }
    }

    private void bound(boolean tighter, String text, Pointer where, Side side) {
        if (tighter) {
            side.tighter(findings, "bound-tightened", where, text);
        } else {
            side.looser(findings, "bound-loosened", where, text);
        }
    }

    /** Whether one pattern lets more pass than another is not computed: another pattern breaks. */
    private void comparePattern(JsonNode before, JsonNode after, Pointer where, Side side) {
        JsonNode was = before.path("pattern");
        JsonNode is = after.path("pattern");
        String text = told("pattern", was, is);
        if (was.isMissingNode() && !is.isMissingNode()) {
            side.tighter(findings, "bound-tightened", where, text);
        } else if (!was.isMissingNode() && is.isMissingNode()) {
            side.looser(findings, "bound-loosened", where, text);
        } else if (!was.equals(is)) {
            findings.breaking(side.rule("pattern-changed"), where, text);
        }
    }

    private void compareMultiple(JsonNode before, JsonNode after, Pointer where, Side side) {
        BigDecimal was = limit(before, "multipleOf", BigDecimal.ZERO);
        BigDecimal is = limit(after, "multipleOf", BigDecimal.ZERO);
        if (was.compareTo(is) == 0) {
            return;
        }
        String text = told("multipleOf", before.path("multipleOf"), after.path("multipleOf"));
        if (isMultiple(is, was)) {
            side.tighter(findings, "bound-tightened", where, text);
        } else if (isMultiple(was, is)) {
            side.looser(findings, "bound-loosened", where, text);
        } else {
            findings.breaking(side.rule("multiple-changed"), where, text);
        }
    }

    /** Whether every multiple of the one is a multiple of the other; every number is one of zero, which is no step. */
    private static boolean isMultiple(BigDecimal number, BigDecimal step) {
        return step.signum() == 0
                || (number.signum() != 0 && number.remainder(step).signum() == 0);
    }

    private void compareUniqueness(JsonNode before, JsonNode after, Pointer where, Side side) {
        boolean was = before.path("uniqueItems").asBoolean(false);
        boolean is = after.path("uniqueItems").asBoolean(false);
        if (was != is) {
            bound(is, is ? "equal items are no longer allowed" : "equal items are now allowed", where, side);
        }
    }

    /** A message without the member means something else, once the default changes. */
    private void compareDefault(JsonNode before, JsonNode after, Pointer where, Side side) {
        if (!before.has("default") && after.has("default")) {
            findings.compatible(side.rule("default-told"), where, "the default is now told: " + after.path("default"));
        } else if (!equal(before.path("default"), after.path("default"))) {
            findings.breaking(
                    side.rule("default-changed"),
                    where,
                    told("default", before.path("default"), after.path("default")));
        }
    }

    private void compareMembers(JsonNode before, JsonNode after, Pointer where, Side side) {
        JsonNode was = before.path("properties");
        JsonNode is = after.path("properties");
        Set<String> needed = words(before.path("required"));
        Set<String> nowNeeded = words(after.path("required"));
        for (String name : was.propertyNames()) {
            Pointer member = where.to("properties", name);
            if (!is.has(name)) {
                findings.breaking(side.rule("property-removed"), member, name + " is gone");
            } else {
                compare(was.path(name), is.path(name), member, side);
            }
        }
        for (String name : is.propertyNames()) {
            if (!was.has(name)) {
                Pointer member = where.to("properties", name);
                if (side == Side.ANSWER && !allows(before.path("additionalProperties"))) {
                    findings.breaking(
                            side.rule("property-added"), member, name + " is new, where no other members were allowed");
                } else {
                    findings.compatible(side.rule("property-added"), member, name + " is new");
                }
            }
        }
        for (String name : without(nowNeeded, needed)) {
            if (side == Side.REQUEST || was.has(name)) {
                side.tighter(findings, "property-required", where.to("properties", name), name + " must now be there");
            }
        }
        for (String name : without(needed, nowNeeded)) {
            if (is.has(name)) {
                side.looser(findings, "property-optional", where.to("properties", name), name + " may now be absent");
            }
        }
    }

    private void compareFurtherMembers(JsonNode before, JsonNode after, Pointer where, Side side) {
        JsonNode was = before.path("additionalProperties");
        JsonNode is = after.path("additionalProperties");
        boolean open = allows(was);
        boolean nowOpen = allows(is);
        if (open && !nowOpen) {
            side.tighter(findings, "unknown-members-refused", where, "other members are no longer allowed");
        } else if (!open && nowOpen) {
            side.looser(findings, "unknown-members-allowed", where, "other members are now allowed");
        } else if (was.isObject() || is.isObject()) {
            compare(
                    was.isObject() ? was : JsonNodeFactory.instance.objectNode(),
                    is.isObject() ? is : JsonNodeFactory.instance.objectNode(),
                    where.to("additionalProperties"),
                    side);
        }
    }

    private static boolean allows(JsonNode additional) {
        return !(additional.isBoolean() && !additional.booleanValue());
    }

    private void compareTheRest(JsonNode before, JsonNode after, Pointer where) {
        Set<String> keywords = new TreeSet<>();
        keywords.addAll(before.propertyNames());
        keywords.addAll(after.propertyNames());
        keywords.removeIf(keyword -> isBound(keyword)
                || STRUCTURE.contains(keyword)
                || Document.EXPLAINING.contains(keyword)
                || keyword.startsWith("x-"));
        for (String keyword : keywords) {
            compareFixed(before, after, keyword, "keyword-not-judged", where.to(keyword));
        }
    }

    /** Words of one or several, without their order. */
    private static SortedSet<String> words(JsonNode node) {
        SortedSet<String> words = new TreeSet<>();
        if (node.isArray()) {
            node.forEach(word -> words.add(word.asString()));
        } else if (!node.isMissingNode()) {
            words.add(node.asString());
        }
        return words;
    }

    private static SortedSet<String> without(Set<String> some, Set<String> others) {
        SortedSet<String> left = new TreeSet<>(some);
        left.removeAll(others);
        return left;
    }

    private static BigDecimal limit(JsonNode schema, String keyword, BigDecimal otherwise) {
        JsonNode limit = schema.path(keyword);
        if (limit.isMissingNode()) {
            return otherwise;
        }
        if (!limit.isNumber()) {
            throw new IllegalArgumentException(keyword + " is no number but " + limit);
        }
        return limit.decimalValue();
    }

    private static boolean equal(JsonNode one, JsonNode other) {
        if (one.isNumber() && other.isNumber()) {
            return one.decimalValue().compareTo(other.decimalValue()) == 0;
        }
        return one.equals(other);
    }

    private static String told(Set<String> words, String otherwise) {
        return words.isEmpty() ? otherwise : String.join(" or ", words);
    }

    private static String told(String keyword, JsonNode before, JsonNode after) {
        List<String> parts = new ArrayList<>(List.of(keyword));
        parts.add(before.isMissingNode() ? "is new:" : before.toString());
        parts.add(after.isMissingNode() ? "is gone" : before.isMissingNode() ? after.toString() : "becomes " + after);
        return String.join(" ", parts);
    }

    /**
     * One end of a range.
     *
     * @param at the number, or null where there is no end
     * @param step whether the end itself lies just above {@code at} (1), at it (0) or just below it (-1)
     * @param open where no end lies in the order of numbers: below all (-1) or above all (1)
     */
    private record Edge(@Nullable BigDecimal at, int step, int open) implements Comparable<Edge> {

        static Edge lower(JsonNode schema) {
            return of(schema, "minimum", "exclusiveMinimum", 1);
        }

        static Edge upper(JsonNode schema) {
            return of(schema, "maximum", "exclusiveMaximum", -1);
        }

        private static Edge of(JsonNode schema, String inclusive, String exclusive, int inwards) {
            Edge none = new Edge(null, 0, -inwards);
            Edge included =
                    schema.has(inclusive) ? new Edge(limit(schema, inclusive, BigDecimal.ZERO), 0, -inwards) : none;
            Edge excluded = schema.has(exclusive)
                    ? new Edge(limit(schema, exclusive, BigDecimal.ZERO), inwards, -inwards)
                    : none;
            return included.compareTo(excluded) * inwards >= 0 ? included : excluded;
        }

        @Override
        public int compareTo(Edge other) {
            if (at == null || other.at == null) {
                return Integer.compare(at == null ? open : 0, other.at == null ? other.open : 0);
            }
            int order = at.compareTo(other.at);
            return order != 0 ? order : Integer.compare(step, other.step);
        }

        @Override
        public String toString() {
            return at == null ? "anything" : at.toPlainString() + (step == 0 ? "" : " exclusively");
        }
    }
}
