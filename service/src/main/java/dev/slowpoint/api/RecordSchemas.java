package dev.slowpoint.api;

import dev.slowpoint.api.RecordShape.Part;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.Schema;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tools.jackson.databind.json.JsonMapper;

/**
 * The schemas of the contract, made from the shapes along which requests are read, so that the contract cannot promise
 * what the reader does not keep. There are no unions and no nulls.
 */
final class RecordSchemas {

    /** What the text of a member says that tells what an unknown word stands for. */
    private static final String UNKNOWN = "unknown word";

    private static final String OPEN = " More words may come.";
    private static final String PASSED_OVER = " Pass over an unknown word: nothing is decided by it.";
    private static final String REFERENCE = "#/components/schemas/";

    private final Map<String, Schema<?>> schemas = new TreeMap<>();
    private final Map<String, Class<?>> owners = new TreeMap<>();

    /** All schemas that were asked for, and those that they need, by name. */
    Map<String, Schema<?>> all() {
        return schemas;
    }

    /** Adds a record that is read; what it does not name is refused. */
    Schema<?> request(Class<? extends Record> type) {
        return record(RecordShape.of(type), true);
    }

    /** Adds a record that is answered; it may grow. */
    Schema<?> answer(Class<? extends Record> type) {
        return record(RecordShape.of(type), false);
    }

    /** A member of a record that is read from the query. */
    Schema<?> parameter(Part part) {
        return part(part, true);
    }

    private Schema<?> record(RecordShape shape, boolean closed) {
        io.swagger.v3.oas.annotations.media.Schema described =
                shape.type().getAnnotation(io.swagger.v3.oas.annotations.media.Schema.class);
        if (described == null) {
            throw new IllegalStateException(shape.type() + " is not described. Maybe @Schema?");
        }
        String name = described.name().isEmpty() ? shape.type().getSimpleName() : described.name();
        if (isNew(name, shape.type())) {
            Schema<?> schema = new JsonSchema().typesItem("object").description(described.description());
            schemas.put(name, schema);
            for (Part part : shape.parts()) {
                schema.addProperty(part.name(), part(part, closed));
                // A default fills a part of a request; in an answer it is always there.
                if (part.required() || (!closed && !part.optional())) {
                    schema.addRequiredItem(part.name());
                }
            }
            if (closed) {
                schema.setAdditionalProperties(false);
            }
        }
        return new JsonSchema().$ref(REFERENCE + name);
    }

    /** In place and not as a component: generated clients in C do not compile with references to enumerations. */
    private static Schema<Object> words(Class<?> enumeration) {
        Schema<Object> schema = new JsonSchema();
        schema.typesItem("string");
        schema.setEnum(List.copyOf(Words.constants(enumeration).keySet()));
        return schema;
    }

    private boolean isNew(String name, Class<?> owner) {
        Class<?> known = owners.putIfAbsent(name, owner);
        if (known != null && known != owner) {
            throw new IllegalStateException(
                    known + " and " + owner + " would share the name " + name + ". Maybe @Schema(name)?");
        }
        return known == null;
    }

    private Schema<?> part(Part part, boolean closed) {
        Schema<?> element = element(part, closed);
        Schema<?> schema = element;
        if (part.list()) {
            Items items = part.items()
                    .orElseThrow(() -> new IllegalStateException(
                            part.name() + " has no bound on its number of items. Maybe @Items?"));
            schema = new JsonSchema().typesItem("array").items(element).maxItems(items.max());
            if (closed || items.min() > 0) {
                schema.minItems(items.min());
            }
        }
        String description = part.schema().description();
        boolean open = part.schema().examples().length > 0;
        schema.setDescription(
                !open ? description : description + (description.contains(UNKNOWN) ? OPEN : OPEN + PASSED_OVER));
        return schema;
    }

    private Schema<?> element(Part part, boolean closed) {
        if (part.record().isPresent()) {
            return record(part.record().get(), closed);
        }
        if (part.type().isEnum()) {
            Schema<Object> schema = words(part.type());
            part.defaultValue()
                    .ifPresent(value -> schema.setDefault(part.schema().defaultValue()));
            String example = part.schema().example();
            schema.setExamples(List.of(example.isEmpty() ? schema.getEnum().get(0) : example));
            return schema;
        }
        Schema<Object> schema = new JsonSchema();
        if (part.number()) {
            number(part, schema);
        } else if (part.type() == Boolean.class) {
            schema.typesItem("boolean");
        } else {
            schema.typesItem("string");
            if (!part.schema().pattern().isEmpty()) {
                schema.setPattern("^" + part.schema().pattern() + "$");
                schema.setMaxLength(part.schema().maxLength());
            }
        }
        part.defaultValue().ifPresent(schema::setDefault);
        String[] words = part.schema().examples();
        if (words.length > 0) {
            schema.setExamples(List.of((Object[]) words));
        } else if (!part.schema().example().isEmpty()) {
            schema.setExamples(List.of(example(part)));
        }
        return schema;
    }

    private static Object example(Part part) {
        String example = part.schema().example();
        return part.number() || part.type() == Boolean.class
                ? JsonMapper.shared().readValue(example, Object.class)
                : example;
    }

    private static void number(Part part, Schema<?> schema) {
        boolean whole = part.type() == Integer.class;
        schema.typesItem(whole ? "integer" : "number").format(whole ? "int32" : "double");
        if (part.minimum().isEmpty() || part.maximum().isEmpty()) {
            throw new IllegalStateException(part.name() + " has no bounds. Maybe minimum and maximum in @Schema?");
        }
        schema.setMinimum(new BigDecimal(part.schema().minimum()));
        schema.setMaximum(new BigDecimal(part.schema().maximum()));
        part.unit().ifPresent(unit -> schema.addExtension("x-unit", unit));
    }
}
