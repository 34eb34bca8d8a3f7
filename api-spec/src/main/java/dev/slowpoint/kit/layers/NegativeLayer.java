package dev.slowpoint.kit.layers;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.Contract.Operation;
import dev.slowpoint.kit.Kit;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Whether every way to break the contract is refused, by name, at its place, in text and in binary alike. */
@ExtendWith(Kit.class)
@DisplayNameGeneration(Kit.Names.class)
public class NegativeLayer {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final String NOWHERE = "sauce";

    /** One portion with a fault does not hold up the others: its faults stand in its place of the answer. */
    private static final Pattern PORTION = Pattern.compile("#(/portions/\\d+)");

    /** Lists longer than this are not made longer: the body would be too large before the list is too long. */
    private static final int LONGEST_LIST = 100;

    /** Bytes of a request for a cook plan, as the contract says. */
    private static final int LONGEST_PLAN = 64 * 1024;

    private final Subject subject;

    NegativeLayer(Subject subject) {
        this.subject = subject;
    }

    /** Each operation that computes, in each notation. */
    static Stream<Arguments> questions() {
        return Examples.computing()
                .flatMap(operation -> Arrays.stream(Wire.values()).map(wire -> Arguments.of(operation, wire)));
    }

    private Answer send(Operation operation, Wire wire, byte[] body) {
        return subject.post(operation.path())
                .accept(wire.mediaType())
                .body(wire.mediaType(), body)
                .send();
    }

    /**
     * A request that is broken at one place.
     *
     * @param code of the fault; empty where more than one fits
     * @param pointer to the place, as a fragment
     */
    private record Broken(byte[] body, String code, String pointer) {}

    /** Breaks each place that is wanted, and wants each of these requests refused. */
    private void refuses(
            Operation operation, Wire wire, Predicate<Place> wanted, Function<Place, Stream<Broken>> breaking) {
        subject.offers(operation.id());
        List<Broken> all =
                Place.of(operation).stream().filter(wanted).flatMap(breaking).toList();
        Assumptions.assumeFalse(
                all.isEmpty(), () -> "The contract shows no such place in the requests of " + operation);
        assertThat(all.stream().flatMap(broken -> miss(operation, wire, broken).stream()))
                .as("what was not refused as it should be")
                .isEmpty();
    }

    /** Sends a broken request; what is wrong with the answer, if anything is. */
    private Optional<String> miss(Operation operation, Wire wire, Broken broken) {
        Answer answer = send(operation, wire, broken.body());
        String wanted = broken.pointer() + " " + broken.code();
        return faults(answer, broken.pointer())
                .map(faults -> faults.valueStream()
                                .anyMatch(fault ->
                                        fault.path("pointer").asString("").equals(broken.pointer())
                                                && (broken.code().isEmpty()
                                                        || fault.path("code")
                                                                .asString("")
                                                                .equals(broken.code())))
                        ? Optional.<String>empty()
                        : Optional.of(wanted + ": " + faults))
                .orElseGet(() -> Optional.of(wanted + ": " + answer.status() + " " + answer.mediaType()));
    }

    /** The faults that an answer tells: of the request, or of the portion that the place is in. */
    private static Optional<JsonNode> faults(Answer answer, String pointer) {
        if (answer.status() == 400 && answer.mediaType().equals(Answer.PROBLEM)) {
            return Optional.of(answer.at("/errors"));
        }
        Matcher portion = PORTION.matcher(pointer);
        return answer.status() == 200 && portion.lookingAt()
                ? Optional.of(answer.at(portion.group(1) + "/problems"))
                : Optional.empty();
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-040")
    void unknownMembers(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                place -> place.node().isObject(),
                place -> Stream.of(new Broken(
                        wire.write(place.withMember(NOWHERE, NODES.numberNode(1))),
                        "UNKNOWN_FIELD",
                        place.fragment() + "/" + NOWHERE)));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-041")
    void nulls(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                NegativeLayer::inside,
                place -> Stream.of(
                        new Broken(wire.write(place.with(NODES.nullNode())), "NULL_VALUE", place.fragment())));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-042")
    void numbersInQuotes(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                Place::number,
                place -> Stream.of(new Broken(
                        wire.write(place.with(NODES.stringNode(place.node().asString()))),
                        "WRONG_TYPE",
                        place.fragment())));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-043")
    void membersTwice(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                place -> place.node().isObject() && !place.node().isEmpty(),
                place -> Stream.of(new Broken(
                        Doubled.write(wire, place.example().request(), place.pointer()),
                        "DUPLICATE_FIELD",
                        place.fragment() + "/"
                                + place.node().propertyNames().iterator().next())));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-044")
    void somethingBehind(Operation operation, Wire wire) {
        subject.offers(operation.id());
        byte[] whole = wire.write(Examples.shortest(operation).request());
        byte[] more = Arrays.copyOf(whole, whole.length + 1);
        more[whole.length] = (byte) (wire == Wire.JSON ? '7' : 0x07);
        send(operation, wire, more).refused(400);
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-045")
    void cutShort(Operation operation, Wire wire) {
        subject.offers(operation.id());
        byte[] whole = wire.write(Examples.shortest(operation).request());
        for (int parts = 1; parts < 8; parts++) {
            send(operation, wire, Arrays.copyOf(whole, whole.length * parts / 8))
                    .refused(400);
        }
        send(operation, wire, Arrays.copyOf(whole, whole.length - 1)).refused(400);
        send(operation, wire, new byte[0]).refused(400);
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-046")
    void missingMembers(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                place -> place.node().isObject(),
                place -> place.schema()
                        .path("required")
                        .valueStream()
                        .map(JsonNode::asString)
                        .map(name -> new Broken(
                                wire.write(place.without(name)), "MISSING_FIELD", place.fragment() + "/" + name)));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-047")
    void numbersOutOfRange(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                Place::number,
                place -> Stream.of("minimum", "maximum")
                        .filter(place.schema()::has)
                        .map(bound -> new Broken(
                                wire.write(place.with(beyond(place, bound))), "OUT_OF_RANGE", place.fragment())));
    }

    private static JsonNode beyond(Place place, String bound) {
        double limit = place.schema().path(bound).asDouble();
        double step = Math.max(1, Math.abs(limit) * 0.01) * (bound.equals("minimum") ? -1 : 1);
        return place.type().equals("integer")
                ? NODES.numberNode((long) (limit + step))
                : NODES.numberNode(limit + step);
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-048")
    void unknownWords(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                place -> place.schema().has("enum"),
                place -> Stream.of(place.node().asString().toUpperCase(Locale.ROOT), "no-such-word", "")
                        .map(word -> new Broken(
                                wire.write(place.with(NODES.stringNode(word))), "UNKNOWN_WORD", place.fragment())));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-049")
    void otherTypes(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                NegativeLayer::inside,
                place -> others(place).stream()
                        .map(other -> new Broken(wire.write(place.with(other)), "WRONG_TYPE", place.fragment())));
    }

    private static boolean inside(Place place) {
        return !place.pointer().isEmpty();
    }

    /** What does not belong at a place; an ordinal is none of the words of an enumeration. */
    private static List<JsonNode> others(Place place) {
        return switch (place.type()) {
            case "object" -> List.of(NODES.arrayNode(), NODES.stringNode("a"), NODES.numberNode(1));
            case "array" -> List.of(NODES.objectNode(), NODES.stringNode("a"), NODES.numberNode(1));
            case "string" -> List.of(NODES.numberNode(0), NODES.booleanNode(true), NODES.arrayNode());
            case "boolean" -> List.of(NODES.numberNode(1), NODES.stringNode("true"));
            default -> List.of(NODES.booleanNode(true), NODES.objectNode(), NODES.arrayNode());
        };
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-050")
    void notFinite(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                Place::number,
                place -> Stream.of("NaN", "Infinity", "1e400")
                        .map(number -> new Broken(endless(wire, place, number), "NOT_FINITE", place.fragment())));
    }

    private static byte[] endless(Wire wire, Place place, String number) {
        return wire == Wire.JSON
                ? place.with(NODES.stringNode("@@"))
                        .toString()
                        .replace("\"@@\"", number)
                        .getBytes(StandardCharsets.UTF_8)
                : wire.write(place.with(NODES.numberNode(Double.parseDouble(number))));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-051")
    void longTexts(Operation operation, Wire wire) {
        // Which fault it is depends on whether the text has a pattern too.
        refuses(
                operation,
                wire,
                place -> place.schema().has("maxLength"),
                place -> Stream.of(new Broken(
                        wire.write(place.with(NODES.stringNode(
                                "a".repeat(place.schema().path("maxLength").asInt() + 1)))),
                        "",
                        place.fragment())));
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-052")
    void longLists(Operation operation, Wire wire) {
        refuses(
                operation,
                wire,
                place -> place.node().isArray()
                        && !place.node().isEmpty()
                        && place.schema().path("maxItems").asInt(Integer.MAX_VALUE) <= LONGEST_LIST,
                place -> Stream.of(
                        new Broken(wire.write(place.with(longer(place))), "WRONG_NUMBER_OF_ITEMS", place.fragment())));
    }

    private static JsonNode longer(Place place) {
        ArrayNode longer = NODES.arrayNode();
        for (int i = place.schema().path("maxItems").asInt(); i >= 0; i--) {
            longer.add(place.node().get(0));
        }
        return longer;
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-053")
    void deepNesting(Operation operation, Wire wire) {
        subject.offers(operation.id());
        for (int deep : List.of(100, 5000)) {
            JsonNode nested = NODES.numberNode(1);
            byte[] body;
            if (wire == Wire.JSON) {
                body = ("[".repeat(deep) + nested + "]".repeat(deep)).getBytes(StandardCharsets.UTF_8);
            } else {
                body = new byte[deep + 1];
                // RFC 8949: 0x81 begins a list of one item, 0x01 is the number one.
                Arrays.fill(body, (byte) 0x81);
                body[deep] = 0x01;
            }
            send(operation, wire, body).refused(400);
        }
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-054")
    void allAtOnce(Operation operation, Wire wire) {
        subject.offers(operation.id());
        ObjectNode request = (ObjectNode) Examples.shortest(operation).request().deepCopy();
        List<String> expected = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            request.put(NOWHERE + i, i);
            expected.add("#/" + NOWHERE + i);
        }
        String required =
                Contract.PUBLISHED.requestSchema(operation).at("/required/0").asString();
        request.remove(required);
        expected.add("#/" + required);
        Answer answer = send(operation, wire, wire.write(request)).refused(400);
        assertThat(answer.at("/errors")
                        .valueStream()
                        .map(error -> error.path("pointer").asString()))
                .as("places of all faults")
                .containsAll(expected);
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-055")
    void shapeOfProblems(Operation operation, Wire wire) {
        subject.offers(operation.id());
        ObjectNode request = (ObjectNode) Examples.shortest(operation).request().deepCopy();
        request.put(NOWHERE, 1);
        JsonNode problem =
                send(operation, wire, wire.write(request)).refused(400).tree();
        String code = problem.path("code").asString("");
        assertThat(problem.path("status").asInt()).as("status").isEqualTo(400);
        assertThat(problem.path("type").asString(""))
                .as("type")
                .isEqualTo("/problems/" + code.toLowerCase(Locale.ROOT).replace('_', '-'));
        assertThat(problem.path("title").asString("")).as("title").isNotBlank();
        assertThat(problem.path("detail").asString("")).as("detail").isNotBlank();
        assertThat(problem.path("retryable").asBoolean(true)).as("retryable").isFalse();
        assertThat(problem.at("/errors/0/code").asString(""))
                .as("code of the first fault")
                .isEqualTo(code);
        assertThat(problem.at("/errors/0/detail").asString(""))
                .as("detail of the first fault")
                .isNotBlank();
    }

    @ParameterizedTest
    @MethodSource("questions")
    @Tag("R-056")
    void nothingInside(Operation operation, Wire wire) {
        subject.offers(operation.id());
        for (byte[] body : List.of(
                wire.write(NODES.objectNode()),
                wire.write(NODES.arrayNode()),
                new byte[] {(byte) 0xff, (byte) 0xfe, 0},
                "<script>alert(1)</script>".getBytes(StandardCharsets.UTF_8))) {
            String text = send(operation, wire, body).refused(400).text();
            assertThat(text).as("a problem").doesNotContain("Exception", "\tat ", "java.", "org.", "tools.jackson");
        }
    }

    @Test
    @Tag("R-057")
    void notUtf8() {
        subject.offers("planCook");
        String body = Examples.cookPlan().request().toString();
        byte[] bytes = body.getBytes(StandardCharsets.ISO_8859_1);
        int food = body.indexOf("\"id\":\"") + 6;
        bytes[food] = (byte) 0xe9;
        send(Contract.PUBLISHED.operation("planCook"), Wire.JSON, bytes).refused(400);
    }

    @ParameterizedTest
    @CsvSource({
        "food, UNKNOWN_FOOD, #/food/id",
        "rule, UNKNOWN_RULE, #/rule",
        "parameterSet, UNKNOWN_PARAMETER_SET, #/parameterSet"
    })
    @Tag("R-058")
    void unknownNames(String member, String code, String pointer) {
        subject.offers("planCook");
        ObjectNode request = (ObjectNode) Examples.cookPlan().request().deepCopy();
        if (member.equals("food")) {
            request.set("food", NODES.objectNode().put("id", "no-such-thing"));
        } else {
            request.put(member, "no-such-thing");
        }
        JsonNode problem = subject.post("/v1/cook-plans")
                .body(Wire.JSON, request)
                .send()
                .refused(422)
                .tree();
        assertThat(problem.at("/errors/0/code").asString("")).isEqualTo(code);
        assertThat(problem.at("/errors/0/pointer").asString("")).isEqualTo(pointer);
    }

    static Stream<Operation> operations() {
        return Contract.PUBLISHED.operations().stream();
    }

    @ParameterizedTest
    @MethodSource("operations")
    @Tag("R-059")
    void unknownParameters(Operation operation) {
        subject.offers(operation.id());
        Answer answer = operation.reads()
                ? subject.post(operation.path())
                        .query(NOWHERE, "1")
                        .body(Wire.JSON, Examples.shortest(operation).request())
                        .send()
                : subject.get(Catalogues.paths(subject, operation).get(0))
                        .query(NOWHERE, "1")
                        .accept(Wire.JSON.mediaType())
                        .send();
        answer.refused(400);
        assertThat(answer.at("/errors/0/pointer").asString("")).contains(NOWHERE);
    }

    @ParameterizedTest
    @CsvSource({"setpointC, 135", "setpointC, 333.15"})
    @Tag("R-060")
    void hints(String member, double value) {
        subject.offers("planCook");
        ObjectNode request = (ObjectNode) Examples.cookPlan().request().deepCopy();
        ((ObjectNode) request.at("/surroundings/bath")).put(member, value);
        Answer answer =
                subject.post("/v1/cook-plans").body(Wire.JSON, request).send().refused(400);
        assertThat(answer.at("/errors/0/hint").asString("")).as("hint").isNotBlank();
    }

    @Test
    @Tag("R-061")
    void tooLarge() {
        subject.offers("planCook");
        String plan = Examples.cookPlan().request().toString();
        Operation operation = Contract.PUBLISHED.operation("planCook");
        String longest = plan + " ".repeat(LONGEST_PLAN - plan.length());
        send(operation, Wire.JSON, longest.getBytes(StandardCharsets.UTF_8)).expect(200);
        send(operation, Wire.JSON, (longest + " ").getBytes(StandardCharsets.UTF_8))
                .refused(413);
    }
}
