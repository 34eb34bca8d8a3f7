package dev.slowpoint.kit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/**
 * A golden vector: a request, what must be in its answer, and from where that is known.
 *
 * @param id its name, which never changes
 * @param title what must hold, in a sentence
 * @param kind where the expected values come from
 * @param source the publication, formula or method
 * @param parameterSet the parameter set for which alone it holds; empty where it holds for all
 * @param disagreement why the service is known to miss it; empty where it does not
 * @param request method, path, query, headers and body
 * @param expect status and values
 */
public record GoldenVector(
        String id,
        String title,
        Kind kind,
        String source,
        Optional<String> parameterSet,
        Optional<String> disagreement,
        JsonNode request,
        JsonNode expect) {

    /** Where expected values come from. */
    public enum Kind {
        PUBLISHED,
        ANALYTIC,
        CROSS_METHOD,
        REGRESSION
    }

    private static final String FOLDER = "/contract/vectors/";

    /** All that are packed, in the order of their index. */
    public static final List<GoldenVector> ALL = read();

    private static List<GoldenVector> read() {
        List<GoldenVector> all = new ArrayList<>();
        JsonNode index = resource("index.json");
        for (JsonNode entry : index.isArray() ? index : index.path("vectors")) {
            all.add(of(resource(entry.path("file").asString())));
        }
        return List.copyOf(all);
    }

    private static JsonNode resource(String name) {
        try (InputStream in = Objects.requireNonNull(GoldenVector.class.getResourceAsStream(FOLDER + name), name)) {
            return Wire.JSON.read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The vector of a file. */
    public static GoldenVector of(JsonNode file) {
        return new GoldenVector(
                file.path("id").asString(),
                file.path("title").asString(),
                Kind.valueOf(
                        file.path("kind").asString().toUpperCase(Locale.ROOT).replace('-', '_')),
                file.path("source").asString(),
                file.path("parameterSet").stringValueOpt(),
                file.path("disagreement").stringValueOpt(),
                file.path("request"),
                file.path("expect"));
    }

    public String method() {
        return request.path("method").asString();
    }

    public String path() {
        return request.path("path").asString();
    }

    /** The request of the vector, ready to be sent. */
    public Ask ask(Subject subject) {
        Ask ask = subject.ask(method(), path()).accept(Wire.JSON.mediaType());
        request.path("query")
                .properties()
                .forEach(member -> ask.query(member.getKey(), member.getValue().asString()));
        request.path("headers")
                .properties()
                .forEach(member -> ask.header(member.getKey(), member.getValue().asString()));
        if (request.has("body")) {
            ask.body(Wire.JSON, request.path("body"));
        } else if (request.has("text")) {
            ask.body(
                    request.path("headers").path("Content-Type").asString(),
                    request.path("text").asString());
        }
        return ask;
    }

    /** What the answer misses of what is expected; empty where it misses nothing. */
    public List<String> misses(Answer answer) {
        int status = expect.path("status").asInt();
        if (answer.status() != status) {
            return List.of("the status is " + answer.status() + ", not " + status);
        }
        return expect.path("values").isEmpty() ? List.of() : misses(answer.tree());
    }

    /** What the body of an answer misses of the values that are expected. */
    public List<String> misses(JsonNode tree) {
        List<String> misses = new ArrayList<>();
        for (JsonNode value : expect.path("values")) {
            String pointer = value.path("pointer").asString();
            miss(value, tree.at(pointer)).ifPresent(miss -> misses.add(pointer + " " + miss));
        }
        return misses;
    }

    private static Optional<String> miss(JsonNode expected, JsonNode actual) {
        if (expected.path("absent").asBoolean(false)) {
            return actual.isMissingNode() ? Optional.empty() : Optional.of("is there: " + actual);
        }
        if (actual.isMissingNode()) {
            return Optional.of("is not there");
        }
        if (expected.has("is")) {
            return same(expected.path("is"), actual)
                    ? Optional.empty()
                    : Optional.of("is " + actual + ", not " + expected.path("is"));
        }
        if (expected.has("count")) {
            return actual.size() == expected.path("count").asInt()
                    ? Optional.empty()
                    : Optional.of("has " + actual.size() + " items, not " + expected.path("count"));
        }
        if (expected.has("has")) {
            return anyLike(actual, expected.path("has"))
                    ? Optional.empty()
                    : Optional.of("has nothing like " + expected.path("has"));
        }
        if (expected.has("hasNot")) {
            return anyLike(actual, expected.path("hasNot"))
                    ? Optional.of("has " + expected.path("hasNot"))
                    : Optional.empty();
        }
        return missedNumber(expected, actual);
    }

    private static Optional<String> missedNumber(JsonNode expected, JsonNode actual) {
        if (!actual.isNumber()) {
            return Optional.of("is " + actual + ", not a number");
        }
        double is = actual.asDouble();
        if (expected.has("value")) {
            double value = expected.path("value").asDouble();
            double allowed = expected.path("absTol").asDouble(0)
                    + expected.path("relTol").asDouble(0) * Math.abs(value);
            if (!(Math.abs(is - value) <= allowed)) {
                return Optional.of(
                        "is " + is + ", " + Math.abs(is - value) + " from " + value + "; allowed " + allowed);
            }
        } else if (!expected.has("min") && !expected.has("max")) {
            throw new IllegalArgumentException("Expects nothing: " + expected);
        }
        if (expected.has("min") && !(is >= expected.path("min").asDouble())) {
            return Optional.of("is " + is + ", below " + expected.path("min"));
        }
        if (expected.has("max") && !(is <= expected.path("max").asDouble())) {
            return Optional.of("is " + is + ", above " + expected.path("max"));
        }
        return Optional.empty();
    }

    private static boolean anyLike(JsonNode list, JsonNode members) {
        return list.valueStream()
                .anyMatch(item -> members.properties().stream()
                        .allMatch(member -> same(member.getValue(), item.path(member.getKey()))));
    }

    private static boolean same(JsonNode one, JsonNode other) {
        return (one.isNumber() && other.isNumber())
                ? Double.compare(one.asDouble(), other.asDouble()) == 0
                : one.equals(other);
    }

    @Override
    public String toString() {
        return id;
    }
}
