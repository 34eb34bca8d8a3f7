package dev.slowpoint.api;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The members of a record by the names they have where nothing can be nested, in a query or a table: the names along the way
 * joined by points, {@code geometry.thicknessMm}. The values of a list are separated by spaces or commas.
 */
final class FlatMembers {

    private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][-+]?\\d+)?");

    /** Longest number that is looked at. */
    private static final int LONGEST_NUMBER = 64;

    private static final Map<Class<?>, FlatMembers> KNOWN = new ConcurrentHashMap<>();

    private final Map<String, RecordShape.Part> parts = new LinkedHashMap<>();

    private FlatMembers(Class<? extends Record> type) {
        add("", RecordShape.of(type));
    }

    static FlatMembers of(Class<? extends Record> type) {
        return KNOWN.computeIfAbsent(type, known -> new FlatMembers(type));
    }

    private void add(String before, RecordShape shape) {
        for (RecordShape.Part part : shape.parts()) {
            String name = before + part.name();
            Optional<RecordShape> inner = part.record();
            if (inner.isPresent() && !part.list()) {
                add(name + ".", inner.get());
            } else {
                parts.put(name, part);
            }
        }
    }

    /** All names, in the order of the record. */
    List<String> names() {
        return List.copyOf(parts.keySet());
    }

    /** The members by their names. */
    Map<String, RecordShape.Part> parts() {
        return Collections.unmodifiableMap(parts);
    }

    /** Puts a value at its place in a tree, as it would stand in JSON; what has no such form is put as text and refused later. */
    void put(ObjectNode tree, String name, String text) {
        RecordShape.Part part = parts.get(name);
        if (part == null) {
            throw new IllegalArgumentException(name + " is no member");
        }
        String[] way = name.split("\\.", -1);
        ObjectNode node = tree;
        for (int i = 0; i < way.length - 1; i++) {
            node = node.get(way[i]) instanceof ObjectNode there ? there : node.putObject(way[i]);
        }
        String last = way[way.length - 1];
        if (part.list()) {
            ArrayNode list = node.putArray(last);
            Arrays.stream(text.strip().split("[ ,]+", -1)).forEach(item -> {
                if (part.number() && number(item)) {
                    list.add(new BigDecimal(item));
                } else {
                    list.add(item);
                }
            });
        } else if (part.number() && number(text)) {
            node.put(last, new BigDecimal(text));
        } else if (part.type() == Boolean.class && (text.equals("true") || text.equals("false"))) {
            node.put(last, text.equals("true"));
        } else {
            node.put(last, text);
        }
    }

    private static boolean number(String text) {
        return text.length() <= LONGEST_NUMBER && NUMBER.matcher(text).matches();
    }

    /**
     * Reads a record from a query, as a JSON request would be read. What it does not name is left to others.
     *
     * @throws RequestRefused with all faults, by the names in the query
     */
    static <T extends Record> T query(Map<String, String[]> query, Class<T> type) {
        FlatMembers known = of(type);
        ObjectNode members = tree();
        Faults twice = new Faults();
        for (String name : known.names()) {
            String[] sent = query.get(name);
            if (sent == null) {
                continue;
            }
            if (sent.length > 1) {
                twice.add(Fault.of(Pointer.query(name), ProblemCode.DUPLICATE_FIELD, "FAULT_DUPLICATE_FIELD", name));
            }
            known.put(members, name, sent[0]);
        }
        twice.throwIfAny();
        try {
            return RequestReader.read(JsonMapper.shared().writeValueAsBytes(members), Wire.JSON, type);
        } catch (RequestRefused refused) {
            throw new RequestRefused(
                    refused.faults().stream()
                            .map(fault -> fault.at(
                                    fault.pointer().replaceFirst("^#/?", "?").replace('/', '.')))
                            .toList(),
                    refused.count());
        }
    }

    /** An empty tree. */
    static ObjectNode tree() {
        return JsonMapper.shared().createObjectNode();
    }
}
