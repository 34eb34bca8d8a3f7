package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import io.swagger.v3.oas.annotations.media.Schema;
import java.lang.reflect.Constructor;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a record of the wire says about itself. The reader of requests and the published contract both follow it, so that
 * neither can promise what the other does not keep: a component that is not {@link Nullable} and has no default is
 * required; bounds, default, pattern and text come from {@link Schema}, the unit from {@link Unit}.
 */
final class RecordShape {

    private static final Map<Class<?>, RecordShape> KNOWN = new ConcurrentHashMap<>();

    private final Class<? extends Record> type;
    private final List<Part> parts;
    private final Map<String, Part> partsByName;
    private final Constructor<? extends Record> constructor;

    private RecordShape(Class<? extends Record> type) {
        this.type = type;
        RecordComponent[] components = type.getRecordComponents();
        this.parts = Arrays.stream(components).map(Part::of).toList();
        this.partsByName = parts.stream().collect(Collectors.toUnmodifiableMap(Part::name, part -> part));
        try {
            this.constructor = type.getDeclaredConstructor(
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
            constructor.setAccessible(true);
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(type + " has no canonical constructor", e);
        }
    }

    /** The shape of a record. */
    static RecordShape of(Class<? extends Record> type) {
        RecordShape known = KNOWN.get(type);
        if (known == null) {
            // Two threads may build the same shape; both are equal. A shape may ask for another while it is built.
            known = new RecordShape(type);
            KNOWN.put(type, known);
        }
        return known;
    }

    /** The record itself. */
    Class<? extends Record> type() {
        return type;
    }

    /** Its members in order. */
    List<Part> parts() {
        return parts;
    }

    /** The member of that name. */
    Optional<Part> part(String name) {
        return Optional.ofNullable(partsByName.get(name));
    }

    /** Builds the record; a member without a value must be one that may be absent. */
    Record build(Map<String, Object> values) {
        Object[] arguments = new Object[parts.size()];
        for (int i = 0; i < arguments.length; i++) {
            arguments[i] = values.get(parts.get(i).name());
        }
        try {
            return constructor.newInstance(arguments);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("cannot build " + type.getSimpleName() + " from " + values, e);
        }
    }

    /** The record without any member sent; each of them must have a default or be one that may be absent. */
    private Record empty() {
        Map<String, Object> values = new HashMap<>();
        for (Part part : parts) {
            part.defaultValue().ifPresent(value -> values.put(part.name(), value));
        }
        return build(values);
    }

    /**
     * One member.
     *
     * @param name on the wire and in the record; of the list if it is one element of it
     * @param element whether it is one element of a list
     * @param type of its value; of one element if it is a list
     * @param list whether it is a list
     * @param numbers whether that list is an array of plain numbers, as long columns are
     * @param optional whether it may be absent from the record
     * @param schema description, bounds, default and example
     * @param items how many a list may hold, where it says so
     * @param minimum least value of a number
     * @param maximum greatest value of a number
     * @param unit UCUM code
     * @param words the constants of an enumeration by their words, in order
     * @param pattern that a text must match
     * @param defaultValue stands in when it is absent from a message
     */
    record Part(
            String name,
            boolean element,
            Class<?> type,
            boolean list,
            boolean numbers,
            boolean optional,
            Schema schema,
            Optional<Items> items,
            OptionalDouble minimum,
            OptionalDouble maximum,
            Optional<String> unit,
            Map<String, Object> words,
            Pattern pattern,
            Optional<Object> defaultValue) {

        private static Part of(RecordComponent component) {
            Schema schema = component.getAccessor().getAnnotation(Schema.class);
            if (schema == null) {
                throw new IllegalStateException(component + " of "
                        + component.getDeclaringRecord().getSimpleName() + " is not described. Maybe @Schema?");
            }
            Unit unit = component.getAccessor().getAnnotation(Unit.class);
            boolean numbers = component.getType() == double[].class;
            boolean list = component.getType() == List.class;
            Class<?> type = boxed(
                    numbers
                            ? double.class
                            : list
                                    ? (Class<?>)
                                            ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0]
                                    : component.getType());
            return new Part(
                    component.getName(),
                    false,
                    type,
                    list || numbers,
                    numbers,
                    component.getAnnotatedType().isAnnotationPresent(Nullable.class),
                    schema,
                    Optional.ofNullable(component.getAccessor().getAnnotation(Items.class)),
                    bound(schema.minimum()),
                    bound(schema.maximum()),
                    Optional.ofNullable(unit).map(Unit::value),
                    type.isEnum() ? Words.constants(type) : Map.of(),
                    Pattern.compile(schema.pattern().isEmpty() ? ".*" : schema.pattern()),
                    schema.defaultValue().isEmpty()
                            ? Optional.empty()
                            : Optional.of(list ? List.of() : read(schema.defaultValue(), type)));
        }

        /** One element of the list, as a member of its own. */
        Part item() {
            return new Part(
                    name,
                    true,
                    type,
                    false,
                    false,
                    false,
                    schema,
                    Optional.empty(),
                    minimum,
                    maximum,
                    unit,
                    words,
                    pattern,
                    Optional.empty());
        }

        /** What it is called in sentences: its name, or a phrase. */
        Object called() {
            return element ? Phrase.of("WORD_ITEM", name) : name;
        }

        private static OptionalDouble bound(String text) {
            return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
        }

        private static Class<?> boxed(Class<?> type) {
            if (type == double.class) {
                return Double.class;
            }
            if (type == int.class) {
                return Integer.class;
            }
            return type == boolean.class ? Boolean.class : type;
        }

        private static Object read(String text, Class<?> type) {
            if (type.isRecord()) {
                return RecordShape.of(type.asSubclass(Record.class)).empty();
            }
            if (type == Double.class) {
                return Double.valueOf(text);
            }
            if (type == Integer.class) {
                return Integer.valueOf(text);
            }
            if (type == Boolean.class) {
                return Boolean.valueOf(text);
            }
            Object constant = Words.constants(type).get(text);
            if (constant == null) {
                throw new IllegalStateException(text + " is no default of " + type);
            }
            return constant;
        }

        /** Whether a message without it is at fault. */
        boolean required() {
            return !optional && defaultValue.isEmpty();
        }

        /** Whether it is a number, whole or not. */
        boolean number() {
            return type == Double.class || type == Integer.class;
        }

        /** The shape of its value, if that is a record. */
        Optional<RecordShape> record() {
            return type.isRecord() ? Optional.of(RecordShape.of(type.asSubclass(Record.class))) : Optional.empty();
        }
    }
}
