package dev.slowpoint.contract;

import dev.slowpoint.contract.Relay.Received;
import dev.slowpoint.contract.Relay.Sent;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.zip.GZIPOutputStream;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.dataformat.cbor.CBORMapper;

/** Ways to spoil what a relay hands on. */
final class Spoiling {

    private static final ObjectMapper JSON = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();
    private static final ObjectMapper CBOR = CBORMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final AtomicLong QUESTIONS = new AtomicLong();

    private Spoiling() {}

    static UnaryOperator<Sent> pass() {
        return sent -> sent;
    }

    static BiFunction<Sent, Received, Received> keep() {
        return (sent, answer) -> answer;
    }

    private static ObjectMapper mapper(String type) {
        return type.startsWith("application/cbor") ? CBOR : JSON;
    }

    /** Spoils the tree of each request that has one. */
    static UnaryOperator<Sent> request(Consumer<ObjectNode> spoil) {
        return sent -> {
            ObjectMapper mapper = mapper(sent.header("Content-Type"));
            try {
                if (mapper.readTree(sent.body()) instanceof ObjectNode tree) {
                    spoil.accept(tree);
                    return sent.body(mapper.writeValueAsBytes(tree));
                }
            } catch (JacksonException unreadable) {
                return sent;
            }
            return sent;
        };
    }

    /** Spoils the tree of an answer with a status. */
    static Received edit(Received answer, int status, Consumer<ObjectNode> spoil) {
        String type = answer.header("Content-Type");
        if (answer.status() != status
                || !(type.contains("json") || type.contains("cbor"))
                || type.contains("ndjson")
                || !answer.header("Content-Encoding").isEmpty()) {
            return answer;
        }
        ObjectMapper mapper = mapper(type);
        if (mapper.readTree(answer.body()) instanceof ObjectNode tree) {
            spoil.accept(tree);
            return answer.body(mapper.writeValueAsBytes(tree));
        }
        return answer;
    }

    static BiFunction<Sent, Received, Received> answer(Consumer<ObjectNode> spoil) {
        return (sent, answer) -> edit(answer, 200, spoil);
    }

    static BiFunction<Sent, Received, Received> binary(Consumer<ObjectNode> spoil) {
        return (sent, answer) -> answer.header("Content-Type").contains("cbor") ? edit(answer, 200, spoil) : answer;
    }

    static BiFunction<Sent, Received, Received> problem(Consumer<ObjectNode> spoil) {
        return (sent, answer) -> edit(answer, 400, spoil);
    }

    /** Spoils the problems of a code. */
    static BiFunction<Sent, Received, Received> problem(String code, UnaryOperator<Received> spoil) {
        return (sent, answer) ->
                new String(answer.body(), StandardCharsets.UTF_8).contains(code) ? spoil.apply(answer) : answer;
    }

    /** Spoils each entry of a list. */
    static BiFunction<Sent, Received, Received> catalogue(Consumer<ObjectNode> spoil) {
        return (sent, answer) -> sent.method().equals("GET")
                ? edit(
                        answer,
                        200,
                        list -> list.forEach(entries -> {
                            if (entries instanceof ArrayNode all) {
                                all.forEach(entry -> {
                                    if (entry instanceof ObjectNode object) {
                                        spoil.accept(object);
                                    }
                                });
                            }
                        }))
                : answer;
    }

    /** Spoils what is answered to paths with a start. */
    static BiFunction<Sent, Received, Received> to(String path, UnaryOperator<Received> spoil) {
        return (sent, answer) -> sent.target().startsWith(path) ? spoil.apply(answer) : answer;
    }

    /** Spoils answers of a media type. */
    static BiFunction<Sent, Received, Received> typed(String type, UnaryOperator<Received> spoil) {
        return (sent, answer) -> answer.header("Content-Type").startsWith(type) ? spoil.apply(answer) : answer;
    }

    static UnaryOperator<Received> replace(String from, String to) {
        return answer -> answer.body(new String(answer.body(), StandardCharsets.UTF_8)
                .replace(from, to)
                .getBytes(StandardCharsets.UTF_8));
    }

    static void withoutVerdict(ObjectNode plan) {
        if (plan.get("safety") instanceof ObjectNode safety) {
            safety.remove("verdict");
        }
    }

    static void food(ObjectNode plan) {
        plan.putObject("food").put("id", "pork-loin");
    }

    static ArrayNode array(ObjectNode node, String name) {
        return node.get(name) instanceof ArrayNode array ? array : node.putArray(name);
    }

    static long next() {
        return QUESTIONS.incrementAndGet();
    }

    /** Changes every number of a tree. */
    static void numbers(JsonNode node, DoubleUnaryOperator change) {
        if (node instanceof ObjectNode object) {
            for (String name : List.copyOf(object.propertyNames())) {
                JsonNode member = object.get(name);
                if (member.isNumber()) {
                    object.put(name, change.applyAsDouble(member.asDouble()));
                } else {
                    numbers(member, change);
                }
            }
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i).isNumber()) {
                    array.set(
                            i,
                            NODES.numberNode(change.applyAsDouble(array.get(i).asDouble())));
                } else {
                    numbers(array.get(i), change);
                }
            }
        }
    }

    /** Changes the numbers of a name, wherever they stand. */
    static void at(JsonNode node, String name, DoubleUnaryOperator change) {
        visit(node, object -> {
            if (object.has(name) && object.get(name).isNumber()) {
                object.put(name, change.applyAsDouble(object.get(name).asDouble()));
            }
        });
    }

    /** Calls for each object of a tree. */
    private static void visit(JsonNode node, Consumer<ObjectNode> visitor) {
        if (node instanceof ObjectNode object) {
            visitor.accept(object);
        }
        node.forEach(child -> visit(child, visitor));
    }

    static void withoutNames(ObjectNode tree, Predicate<String> unwanted) {
        visit(
                tree,
                object -> List.copyOf(object.propertyNames()).stream()
                        .filter(unwanted)
                        .forEach(object::remove));
    }

    static void withoutNulls(ObjectNode tree) {
        visit(
                tree,
                object -> List.copyOf(object.propertyNames()).stream()
                        .filter(name -> object.get(name).isNull())
                        .forEach(object::remove));
    }

    static void withoutQuotes(ObjectNode tree) {
        visit(
                tree,
                object -> List.copyOf(object.propertyNames()).forEach(name -> {
                    if (object.get(name).isString()
                            && object.get(name).asString().matches("-?\\d+(\\.\\d+)?")) {
                        object.put(name, Double.parseDouble(object.get(name).asString()));
                    }
                }));
    }

    static void lowerCase(ObjectNode tree) {
        visit(
                tree,
                object -> List.copyOf(object.propertyNames()).forEach(name -> {
                    if (object.get(name).isString() && !name.equals("id")) {
                        object.put(name, object.get(name).asString().toLowerCase(Locale.ROOT));
                    }
                }));
    }

    static void withoutFlags(ObjectNode tree) {
        visit(
                tree,
                object -> List.copyOf(object.propertyNames()).forEach(name -> {
                    if (object.get(name).isBoolean()) {
                        object.put(name, 4);
                    }
                }));
    }

    static void fill(ObjectNode plan, String name) {
        if (!plan.has(name)) {
            plan.putObject(name).put("temperatureC", 4);
        }
    }

    static void cut(ObjectNode tree, int longest) {
        visit(
                tree,
                object -> List.copyOf(object.propertyNames()).forEach(name -> {
                    if (object.get(name).isString()
                            && object.get(name).asString().length() > longest) {
                        object.put(name, object.get(name).asString().substring(0, longest));
                    }
                }));
    }

    static void shortLists(ObjectNode tree) {
        visit(
                tree,
                object -> object.forEach(member -> {
                    if (member instanceof ArrayNode array) {
                        while (array.size() > 2) {
                            array.remove(array.size() - 1);
                        }
                    }
                }));
    }

    /** The first value of the body, whatever stands behind it. */
    static Sent firstValue(Sent sent) {
        return request(tree -> {}).apply(sent);
    }

    static Received alwaysFine(Sent sent, Received answer) {
        return sent.body().length == 0 && answer.status() == 400 ? answer.status(200) : answer;
    }

    static Sent finite(Sent sent) {
        String text = new String(sent.body(), StandardCharsets.UTF_8);
        return sent.header("Content-Type").contains("json")
                ? sent.body(text.replace("NaN", "40").getBytes(StandardCharsets.UTF_8))
                : sent;
    }

    static Sent fromLatin(Sent sent) {
        return sent.header("Content-Type").contains("json")
                ? sent.body(new String(sent.body(), StandardCharsets.ISO_8859_1)
                        .replaceAll("\"id\":\"[^\"]*\"", "\"id\":\"pork-loin\"")
                        .getBytes(StandardCharsets.UTF_8))
                : sent;
    }

    static Received turned(Received answer) {
        List<String> lines = new ArrayList<>(
                new String(answer.body(), StandardCharsets.UTF_8).lines().toList());
        Collections.reverse(lines);
        return answer.body(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }

    static Received otherCompressed(Sent sent, Received answer) {
        if (!answer.header("Content-Encoding").equals("gzip")) {
            return answer;
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
            out.write("{}".getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return answer.body(bytes.toByteArray());
    }
}
