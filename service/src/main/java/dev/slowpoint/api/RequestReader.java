package dev.slowpoint.api;

import dev.slowpoint.api.RecordShape.Part;
import dev.slowpoint.plan.Phrase;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;

/**
 * Reads the body of a request into its record, JSON and CBOR alike, as strictly as a thing on which health depends should
 * be read: nothing unknown is skipped, nothing is converted, and every fault is named with its place. It walks the tokens
 * along the {@link RecordShape}; a value that is at fault is noted and passed over, so that all faults are found.
 */
final class RequestReader {

    /** Looked at around the place where reading JSON stopped. */
    private static final Pattern DECIMAL_COMMA = Pattern.compile("\\d,\\d");

    private static final Pattern NUMBER_IN_TEXT = Pattern.compile("\\s*[-+]?\\d+([.,]\\d+)?([eE][-+]?\\d+)?\\s*");

    private final JsonParser parser;
    private final boolean binary;
    private final @Nullable ItemFaults items;
    private Faults faults = new Faults();

    private RequestReader(JsonParser parser, Wire wire, @Nullable ItemFaults items) {
        this.parser = parser;
        this.binary = wire == Wire.CBOR;
        this.items = items;
    }

    /**
     * Reads a body.
     *
     * @throws RequestRefused with all faults
     */
    static <T extends Record> T read(byte[] body, Wire wire, Class<T> type) {
        return read(body, wire, type, null);
    }

    /**
     * Reads a body in which the items of one list stand each for itself.
     *
     * @param items takes the items that are at fault; they are left out of the record
     * @throws RequestRefused with all faults outside that list
     */
    static <T extends Record> T read(byte[] body, Wire wire, Class<T> type, @Nullable ItemFaults items) {
        if (body.length == 0) {
            throw empty();
        }
        try (JsonParser parser = wire.parser(body)) {
            return type.cast(new RequestReader(parser, wire, items).whole(RecordShape.of(type), body, wire));
        } catch (CharacterCodingException e) {
            throw new RequestRefused(Fault.of(Pointer.BODY, ProblemCode.MALFORMED_BODY, "FAULT_NOT_UTF8"));
        }
    }

    /** What to throw when nothing was sent. */
    static RequestRefused empty() {
        return new RequestRefused(Fault.of(Pointer.BODY, ProblemCode.EMPTY_BODY, "FAULT_EMPTY_BODY"));
    }

    private Record whole(RecordShape shape, byte[] body, Wire wire) {
        Record request = null;
        try {
            JsonToken first = parser.nextToken();
            if (first == null) {
                throw empty();
            }
            request = (Record) record(shape, Phrase.of("WORD_THE_BODY"), Pointer.BODY);
            if (parser.nextToken() != null) {
                faults.add(Fault.of(Pointer.BODY, ProblemCode.TRAILING_CONTENT, "FAULT_TRAILING_CONTENT"));
            }
        } catch (StreamConstraintsException e) {
            boolean deep = parser.streamReadContext().getNestingDepth() >= Wire.DEEPEST;
            faults.addFirst(
                    deep
                            ? Fault.of(
                                    Pointer.BODY, ProblemCode.NESTING_TOO_DEEP, "FAULT_NESTING_TOO_DEEP", Wire.DEEPEST)
                            : Fault.of(Pointer.BODY, ProblemCode.LIMIT_EXCEEDED, "FAULT_LIMIT_EXCEEDED"));
        } catch (JacksonException e) {
            faults.addFirst(malformed(e.getLocation(), body, wire));
        }
        faults.throwIfAny();
        if (request == null) {
            throw new IllegalStateException("a request was neither read nor refused");
        }
        return request;
    }

    private static Fault malformed(@Nullable TokenStreamLocation location, byte[] body, Wire wire) {
        if (wire == Wire.CBOR || location == null) {
            return location == null
                    ? Fault.of(Pointer.BODY, ProblemCode.MALFORMED_BODY, "FAULT_NO_CBOR")
                    : Fault.of(
                            Pointer.BODY,
                            ProblemCode.MALFORMED_BODY,
                            "FAULT_NO_CBOR_AT",
                            Long.toString(location.getByteOffset()));
        }
        Fault fault = Fault.of(
                Pointer.BODY,
                ProblemCode.MALFORMED_BODY,
                "FAULT_NO_JSON_AT",
                Integer.toString(location.getLineNr()),
                Integer.toString(location.getColumnNr()));
        String text = new String(body, StandardCharsets.UTF_8);
        int stopped = (int) Math.max(0, Math.min(location.getCharOffset(), text.length()));
        String around = text.substring(Math.max(0, stopped - 3), Math.min(text.length(), stopped + 2));
        if (DECIMAL_COMMA.matcher(around).find()) {
            return fault.hint("HINT_DECIMAL_COMMA");
        }
        return text.substring(stopped).isBlank() ? fault.hint("HINT_END_MISSING") : fault;
    }

    private @Nullable Object value(Part part, String at) {
        if (parser.currentToken() == JsonToken.VALUE_NULL) {
            faults.add(Fault.of(at, ProblemCode.NULL_VALUE, "FAULT_NULL_VALUE", part.called())
                    .hint("HINT_LEAVE_OUT"));
            return null;
        }
        if (part.list()) {
            return list(part, at);
        }
        if (part.record().isPresent()) {
            return record(part.record().get(), part.called(), at);
        }
        if (part.number()) {
            return number(part, at);
        }
        if (part.type() == Boolean.class) {
            return truth(part, at);
        }
        return part.type().isEnum() ? word(part, at) : text(part, at);
    }

    private @Nullable Object list(Part part, String at) {
        if (parser.currentToken() != JsonToken.START_ARRAY) {
            return wrongType(at, part.called(), Phrase.of("WORD_A_LIST"), null);
        }
        Items items = part.items().orElseThrow();
        Part item = part.item();
        if (part.numbers()) {
            return numbers(part, item, items, at);
        }
        List<Object> values = new ArrayList<>();
        int count = 0;
        boolean complete = true;
        ItemFaults alone = this.items != null && this.items.list().equals(at) ? this.items : null;
        for (JsonToken token = parser.nextToken();
                token != null && token != JsonToken.END_ARRAY;
                token = parser.nextToken()) {
            if (count++ < items.max()) {
                String place = Pointer.child(at, Integer.toString(count - 1));
                Object value = alone == null ? value(item, place) : alone(item, place, count - 1, alone);
                complete &= value != null || alone != null;
                if (value != null) {
                    values.add(value);
                }
            } else {
                // One fault for all that are too many, whatever they hold.
                parser.skipChildren();
            }
        }
        return counted(part, count, items, at) && complete ? List.copyOf(values) : null;
    }

    /** An item whose faults are its own. */
    private @Nullable Object alone(Part item, String place, int index, ItemFaults taken) {
        Faults others = faults;
        faults = new Faults();
        try {
            Object value = value(item, place);
            if (faults.any()) {
                taken.add(index, faults);
                return null;
            }
            return value;
        } finally {
            faults = others;
        }
    }

    /** A long column, read without an object for each number or a place for each that is right. */
    private double @Nullable [] numbers(Part part, Part item, Items items, String at) {
        double minimum = part.minimum().orElseThrow();
        double maximum = part.maximum().orElseThrow();
        double[] values = new double[64];
        int count = 0;
        boolean complete = true;
        for (JsonToken token = parser.nextToken();
                token != null && token != JsonToken.END_ARRAY;
                token = parser.nextToken()) {
            if (count++ >= items.max()) {
                parser.skipChildren();
                continue;
            }
            double value = token.isNumeric() ? decimal() : Double.NaN;
            if (!(value >= minimum && value <= maximum)) {
                complete &= value(item, Pointer.child(at, Integer.toString(count - 1))) != null;
            } else {
                if (count > values.length) {
                    values = Arrays.copyOf(values, Math.min(2 * values.length, items.max()));
                }
                values[count - 1] = value;
            }
        }
        return counted(part, count, items, at) && complete ? Arrays.copyOf(values, count) : null;
    }

    private boolean counted(Part part, int count, Items items, String at) {
        if (count >= items.min() && count <= items.max()) {
            return true;
        }
        faults.add(Fault.of(
                        at,
                        ProblemCode.WRONG_NUMBER_OF_ITEMS,
                        "FAULT_WRONG_NUMBER_OF_ITEMS",
                        part.called(),
                        Integer.toString(count),
                        Integer.toString(items.min()),
                        Integer.toString(items.max()))
                .value(Integer.toString(count))
                .range((double) items.min(), (double) items.max(), null));
        return false;
    }

    /** The printed digits, not the bits: a 32-bit 60.1 of CBOR then means the same as 60.1 in JSON. */
    private double decimal() {
        return (binary ? Double.parseDouble(parser.getString()) : parser.getDoubleValue()) + 0.0;
    }

    private @Nullable Object record(RecordShape shape, Object name, String at) {
        if (parser.currentToken() != JsonToken.START_OBJECT) {
            return wrongType(at, name, Phrase.of("WORD_AN_OBJECT"), null);
        }
        Map<String, Object> values = new HashMap<>();
        Set<String> seen = new HashSet<>();
        boolean complete = true;
        while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
            String field = parser.currentName();
            String place = Pointer.child(at, field);
            parser.nextToken();
            Part part = shape.part(field).orElse(null);
            if (!seen.add(field)) {
                faults.add(
                        Fault.of(place, ProblemCode.DUPLICATE_FIELD, "FAULT_DUPLICATE_FIELD", Fault.shortened(field)));
                parser.skipChildren();
            } else if (part == null) {
                unknown(shape, field, place);
                parser.skipChildren();
            } else {
                Object value = value(part, place);
                complete &= value != null;
                if (value != null) {
                    values.put(field, value);
                }
            }
        }
        for (Part part : shape.parts()) {
            if (!seen.contains(part.name())) {
                complete &= absent(part, at, values);
            }
        }
        if (!complete) {
            return null;
        }
        Record built = shape.build(values);
        if (built instanceof Checked checked) {
            checked.check(at, faults);
        }
        return built;
    }

    /** Puts the default of a part that was not sent; false if it is missed. */
    private boolean absent(Part part, String at, Map<String, Object> values) {
        if (part.required()) {
            faults.add(Fault.of(
                    Pointer.child(at, part.name()), ProblemCode.MISSING_FIELD, "FAULT_MISSING_FIELD", part.name()));
            return false;
        }
        part.defaultValue().ifPresent(value -> values.put(part.name(), value));
        return true;
    }

    private void unknown(RecordShape shape, String field, String place) {
        List<String> known = shape.parts().stream().map(Part::name).toList();
        Fault fault = Fault.of(place, ProblemCode.UNKNOWN_FIELD, "FAULT_UNKNOWN_FIELD", Fault.shortened(field))
                .allowed(known);
        faults.add(Words.nearest(field, known)
                .map(word -> fault.hint("HINT_MAYBE", word))
                .orElse(fault));
    }

    private @Nullable Object number(Part part, String at) {
        JsonToken token = parser.currentToken();
        if (token != JsonToken.VALUE_NUMBER_FLOAT && token != JsonToken.VALUE_NUMBER_INT) {
            return wrongType(at, part.called(), Phrase.of("WORD_A_NUMBER"), hintOnNumber());
        }
        String digits = parser.getString();
        double value = Double.parseDouble(digits) + 0.0;
        if (!Double.isFinite(value)) {
            faults.add(Fault.of(at, ProblemCode.NOT_FINITE, "FAULT_NOT_FINITE", part.called())
                    .value(digits)
                    .hint("HINT_CHECK_SENSOR"));
            return null;
        }
        double minimum = part.minimum().orElseThrow();
        double maximum = part.maximum().orElseThrow();
        String unit = part.unit().orElse(null);
        if (value < minimum || value > maximum) {
            String measured = unit == null ? "" : " " + Suspicion.readable(unit);
            Fault fault = Fault.of(
                            at,
                            ProblemCode.OUT_OF_RANGE,
                            "FAULT_OUT_OF_RANGE",
                            part.called(),
                            Suspicion.shown(value),
                            Suspicion.shown(minimum),
                            Suspicion.shown(maximum) + measured)
                    .value(Suspicion.shown(value))
                    .range(minimum, maximum, unit);
            faults.add(
                    Suspicion.of(value, minimum, maximum, unit).map(fault::hint).orElse(fault));
            return null;
        }
        if (part.type() == Double.class) {
            return value;
        }
        if (value != Math.rint(value)) {
            faults.add(Fault.of(at, ProblemCode.NOT_WHOLE, "FAULT_NOT_WHOLE", part.called())
                    .value(digits));
            return null;
        }
        return (int) value;
    }

    private @Nullable Phrase hintOnNumber() {
        if (parser.currentToken() != JsonToken.VALUE_STRING) {
            return null;
        }
        String text = parser.getString();
        Matcher matcher = NUMBER_IN_TEXT.matcher(text);
        if (matcher.matches()) {
            return text.contains(",") ? Phrase.of("HINT_NO_QUOTES_NO_COMMA") : Phrase.of("HINT_NO_QUOTES");
        }
        return text.equalsIgnoreCase("nan") || text.toLowerCase(Locale.ROOT).contains("inf")
                ? Phrase.of("HINT_CHECK_SENSOR")
                : null;
    }

    private @Nullable Object truth(Part part, String at) {
        return switch (parser.currentToken()) {
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            default -> wrongType(at, part.called(), Phrase.of("WORD_TRUE_OR_FALSE"), null);
        };
    }

    private @Nullable Object word(Part part, String at) {
        List<String> known = List.copyOf(part.words().keySet());
        if (parser.currentToken() != JsonToken.VALUE_STRING) {
            return wrongType(at, part.called(), Phrase.of("WORD_ONE_OF", String.join(", ", known)), null);
        }
        String sent = parser.getString();
        Object constant = part.words().get(sent);
        if (constant == null) {
            Fault fault = Fault.of(
                            at, ProblemCode.UNKNOWN_WORD, "FAULT_UNKNOWN_WORD", part.called(), String.join(", ", known))
                    .value(sent)
                    .allowed(known);
            faults.add(Words.nearest(sent, known)
                    .map(word -> fault.hint("HINT_MAYBE", word))
                    .orElse(fault));
        }
        return constant;
    }

    private @Nullable Object text(Part part, String at) {
        if (parser.currentToken() != JsonToken.VALUE_STRING) {
            return wrongType(at, part.called(), Phrase.of("WORD_TEXT"), null);
        }
        String sent = parser.getString();
        if (sent.length() > part.schema().maxLength()
                || !part.pattern().matcher(sent).matches()) {
            faults.add(Fault.of(
                            at,
                            ProblemCode.WRONG_PATTERN,
                            "FAULT_WRONG_PATTERN",
                            part.called(),
                            part.schema().pattern(),
                            Integer.toString(part.schema().maxLength()))
                    .value(sent));
            return null;
        }
        return sent;
    }

    private @Nullable Object wrongType(String at, Object name, Phrase expected, @Nullable Phrase hint) {
        JsonToken token = parser.currentToken();
        Fault fault = Fault.of(at, ProblemCode.WRONG_TYPE, "FAULT_WRONG_TYPE", name, expected, called(token));
        if (token.isScalarValue() && token != JsonToken.VALUE_EMBEDDED_OBJECT) {
            fault = fault.value(parser.getString());
        }
        faults.add(hint == null ? fault : fault.hint(hint));
        parser.skipChildren();
        return null;
    }

    private static Phrase called(JsonToken token) {
        return switch (token) {
            case START_OBJECT -> Phrase.of("WORD_AN_OBJECT");
            case START_ARRAY -> Phrase.of("WORD_A_LIST");
            case VALUE_STRING -> Phrase.of("WORD_TEXT");
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> Phrase.of("WORD_A_NUMBER");
            case VALUE_TRUE, VALUE_FALSE -> Phrase.of("WORD_TRUE_OR_FALSE");
            case VALUE_NULL -> Phrase.of("WORD_NULL");
            default -> Phrase.of("WORD_SOMETHING_ELSE");
        };
    }
}
