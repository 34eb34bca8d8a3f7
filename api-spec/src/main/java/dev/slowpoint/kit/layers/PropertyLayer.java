package dev.slowpoint.kit.layers;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Contract;
import dev.slowpoint.kit.Contract.Example;
import dev.slowpoint.kit.Contract.Operation;
import dev.slowpoint.kit.Kit;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.opentest4j.TestAbortedException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Whether answers to neighbouring questions fit together, for generated pieces; no right value is needed for that. */
@ExtendWith(Kit.class)
@DisplayNameGeneration(Kit.Names.class)
public class PropertyLayer {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final List<String> MILESTONES = List.of("hotThrough", "safe", "tender", "goodUntil", "softFrom");

    /** By how much two answers to neighbouring questions may be the wrong way round: rounding and the solver's error. */
    private static final double SLACK = 0.003;

    private static final double SLACK_S = 2;

    private final Subject subject;

    PropertyLayer(Subject subject) {
        this.subject = subject;
    }

    /** Tries something for generated cooks, always the same ones for a seed. */
    private void each(String requirement, Consumer<Cook> check) {
        subject.offers("planCook");
        RandomGenerator random = random(requirement);
        for (int round = 0; round < subject.rounds(); round++) {
            Cook cook = Cook.any(random);
            try {
                check.accept(cook);
            } catch (AssertionError e) {
                throw new AssertionError(cook + ": " + e.getMessage(), e);
            }
        }
    }

    private RandomGenerator random(String requirement) {
        return new SplittableRandom(subject.seed() * 1009 + requirement.hashCode());
    }

    /** A time that is there in both answers must not be earlier in the second. */
    private static void assertNotEarlier(JsonNode first, JsonNode second, String... pointers) {
        for (String pointer : pointers) {
            if (!first.at(pointer).isMissingNode() && !second.at(pointer).isMissingNode()) {
                double before = first.at(pointer).asDouble();
                assertThat(second.at(pointer).asDouble())
                        .as(pointer + " after " + before)
                        .isGreaterThanOrEqualTo(before * (1 - SLACK) - SLACK_S);
            }
        }
    }

    /** What was reached before must not have become impossible where more is done, nor the reverse. */
    private static void assertNotMet(JsonNode answer) {
        assertThat(answer.at("/safety/verdict").asString("")).as("verdict").isNotIn("met", "");
    }

    @Test
    @Tag("R-100")
    void thicker() {
        each("R-100", cook -> {
            JsonNode thin = cook.plan(subject);
            JsonNode thick = cook.across(Math.rint(cook.acrossMm() * 1.3)).plan(subject);
            assertNotEarlier(thin, thick, "/times/hotThrough/nominalS", "/times/hotThrough/lateS", "/times/safe/lateS");
        });
    }

    @Test
    @Tag("R-101")
    void warmerBath() {
        each("R-101", cook -> {
            double core = cook.setpointC() - 1.5;
            ObjectNode cooler = cook.request();
            cooler.putObject("target").put("coreC", core);
            ObjectNode warmer = cook.setpoint(cook.setpointC() + 4).request();
            warmer.putObject("target").put("coreC", core);
            assertNotEarlier(
                    Cook.plan(subject, warmer),
                    Cook.plan(subject, cooler),
                    "/times/hotThrough/nominalS",
                    "/times/hotThrough/lateS");
        });
    }

    @Test
    @Tag("R-102")
    void warmerStart() {
        each(
                "R-102",
                cook -> assertNotEarlier(
                        cook.start(cook.startC() + 3).plan(subject),
                        cook.plan(subject),
                        "/times/hotThrough/nominalS",
                        "/times/hotThrough/lateS"));
    }

    @Test
    @Tag("R-103")
    void vulnerableEaters() {
        each("R-103", cook -> {
            ObjectNode stricter = cook.request().put("eater", "vulnerable");
            JsonNode general = cook.plan(subject);
            JsonNode vulnerable = Cook.plan(subject, stricter);
            assertNotEarlier(general, vulnerable, "/times/safe/lateS", "/takeOut/earliestS");
            if (vulnerable.at("/safety/verdict").asString().equals("met")) {
                assertThat(general.at("/safety/verdict").asString()).isEqualTo("met");
            }
        });
    }

    @Test
    @Tag("R-104")
    void order() {
        each("R-104", cook -> {
            JsonNode plan = cook.plan(subject);
            for (String milestone : MILESTONES) {
                JsonNode times = plan.at("/times/" + milestone);
                rising(times, "earlyS", "nominalS", "lateS");
            }
            rising(plan.at("/takeOut"), "earliestS", "bestS", "latestS");
            if (plan.has("takeOut")
                    && plan.at("/safety/verdict").asString().equals("met")
                    && plan.at("/times").has("safe")) {
                assertThat(plan.at("/takeOut/earliestS").asLong())
                        .as("takeOut.earliestS, which is never before safe.lateS")
                        .isGreaterThanOrEqualTo(plan.at("/times/safe/lateS").asLong());
            }
            assertThat(plan.has("takeOut")).as("either takeOut or why not").isNotEqualTo(plan.has("noTakeOutReason"));
        });
    }

    private static void rising(JsonNode node, String... names) {
        double before = Double.NEGATIVE_INFINITY;
        for (String name : names) {
            if (node.has(name)) {
                assertThat(node.path(name).asDouble()).as(name + " in " + node).isGreaterThanOrEqualTo(before);
                before = node.path(name).asDouble();
            }
        }
    }

    @Test
    @Tag("R-105")
    void margins() {
        each("R-105", cook -> {
            JsonNode safety = cook.plan(subject).path("safety");
            if (safety.has("requiredLog10") && safety.has("achievedLog10") && safety.has("marginLog10")) {
                double margin = safety.path("achievedLog10").asDouble()
                        - safety.path("requiredLog10").asDouble()
                        - safety.path("growthLog10").asDouble(0);
                // Each of the three is rounded to a tenth of a log reduction at the coarsest.
                assertThat(Math.abs(safety.path("marginLog10").asDouble() - margin))
                        .as("marginLog10 of " + safety)
                        .isLessThanOrEqualTo(0.11);
            }
            if (safety.path("verdict").asString("").equals("met") && safety.has("marginLog10")) {
                assertThat(safety.path("marginLog10").asDouble())
                        .as("marginLog10 where the rule is met")
                        .isNotNegative();
            }
        });
    }

    @Test
    @Tag("R-106")
    void widerTolerances() {
        each("R-106", cook -> {
            ObjectNode narrow = cook.request();
            narrow.putObject("tolerances")
                    .put("thicknessMm", 0.5)
                    .put("startK", 0.5)
                    .put("bathK", 0.1);
            ObjectNode wide = cook.request();
            wide.putObject("tolerances").put("thicknessMm", 4).put("startK", 3).put("bathK", 0.8);
            JsonNode sure = Cook.plan(subject, narrow);
            JsonNode unsure = Cook.plan(subject, wide);
            assertNotEarlier(sure, unsure, "/times/hotThrough/lateS", "/times/safe/lateS", "/takeOut/earliestS");
            assertNotEarlier(unsure, sure, "/times/hotThrough/earlyS", "/times/goodUntil/earlyS");
        });
    }

    @Test
    @Tag("R-107")
    void orderOfMembers() {
        each("R-107", cook -> {
            Answer straight = subject.post("/v1/cook-plans")
                    .body(Wire.JSON, cook.request())
                    .send();
            Answer turned = subject.post("/v1/cook-plans")
                    .body(Wire.JSON, turned(cook.request()))
                    .send();
            assertThat(turned.bytes()).as("bytes of the answer").isEqualTo(straight.bytes());
        });
    }

    private static JsonNode turned(JsonNode node) {
        if (!node.isObject()) {
            return node;
        }
        List<Map.Entry<String, JsonNode>> members = new ArrayList<>(node.properties());
        Collections.reverse(members);
        ObjectNode turned = NODES.objectNode();
        members.forEach(member -> turned.set(member.getKey(), turned(member.getValue())));
        return turned;
    }

    @Test
    @Tag("R-108")
    void tooCool() {
        each("R-108", cook -> {
            Cook cool = cook.of(cook.food().equals("carrot") ? "pork-loin" : cook.food())
                    .setpoint(45 + cook.acrossMm() / 20);
            Answer answer = subject.post("/v1/cook-plans")
                    .body(Wire.JSON, cool.request())
                    .send();
            if (answer.status() == 200) {
                assertNotMet(answer.tree());
            } else {
                answer.refused(422);
            }
        });
    }

    @Test
    @Tag("R-109")
    void outages() {
        subject.offers("planAnew");
        each("R-109", cook -> {
            long elapsed = Math.round(cook.acrossMm() * cook.acrossMm());
            ObjectNode undisturbed = cook.request();
            undisturbed.putObject("soFar").put("elapsedS", elapsed);
            ObjectNode outage = cook.request();
            outage.putObject("soFar")
                    .put("elapsedS", elapsed)
                    .putArray("events")
                    .addObject()
                    .put("event", "heaterOff")
                    .put("fromS", elapsed / 4)
                    .put("untilS", elapsed / 2);
            Answer without = subject.post("/v1/replans")
                    .body(Wire.JSON, undisturbed)
                    .send()
                    .expect(200);
            Answer with =
                    subject.post("/v1/replans").body(Wire.JSON, outage).send().expect(200);
            assertNotEarlier(
                    without.tree(),
                    with.tree(),
                    "/times/hotThrough/nominalS",
                    "/times/hotThrough/lateS",
                    "/times/safe/lateS",
                    "/takeOut/earliestS");
        });
    }

    @Test
    @Tag("R-110")
    void hotterLogs() {
        subject.offers("reviewLog");
        each("R-110", cook -> {
            JsonNode cooler = review(cook, 0);
            JsonNode hotter = review(cook, 1.5);
            for (int i = 0; i < cooler.path("limits").size(); i++) {
                JsonNode limit = cooler.path("limits").get(i);
                if (limit.path("what").asString("").equals("lethality")) {
                    double most = hotter.at("/limits")
                            .valueStream()
                            .filter(other -> other.path("id").equals(limit.path("id"))
                                    && other.path("organism").equals(limit.path("organism")))
                            .mapToDouble(other -> other.path("measuredLog10").asDouble())
                            .max()
                            .orElse(Double.NaN);
                    assertThat(most)
                            .as("log reductions of " + limit.path("organism"))
                            .isGreaterThanOrEqualTo(limit.path("measuredLog10").asDouble() - 0.01);
                }
            }
        });
    }

    private JsonNode review(Cook cook, double warmerK) {
        ObjectNode request = NODES.objectNode();
        request.putObject("food").put("id", "chicken-breast");
        request.putObject("sensor").put("place", "core");
        ArrayNode times = request.putArray("timesS");
        ArrayNode temperatures = request.putArray("temperaturesC");
        for (int minute = 0; minute <= 90; minute += 2) {
            times.add(minute * 60);
            double share = 1 - Math.exp(-minute / (cook.acrossMm() / 2));
            temperatures.add(Math.round((4 + (52 + cook.setpointC() / 10) * share + warmerK) * 100) / 100.0);
        }
        return subject.post("/v1/log-reviews")
                .body(Wire.JSON, request)
                .send()
                .expect(200)
                .tree();
    }

    @Test
    @Tag("R-111")
    void orderOfPortions() {
        subject.offers("planPortions");
        RandomGenerator random = random("R-111");
        List<Cook> cooks = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            cooks.add(Cook.any(random));
        }
        Map<String, JsonNode> straight = sheet(cooks, false);
        Map<String, JsonNode> turned = sheet(cooks, true);
        assertThat(straight).hasSize(cooks.size());
        straight.forEach((id, band) -> assertThat(Trees.difference(band, turned.getOrDefault(id, NODES.nullNode()), ""))
                .as(id)
                .isEmpty());
    }

    @Test
    @Tag("R-112")
    void otherPortions() {
        subject.offers("planPortions");
        RandomGenerator random = random("R-112");
        List<Cook> cooks = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            cooks.add(Cook.any(random));
        }
        Map<String, JsonNode> all = sheet(cooks, false);
        Map<String, JsonNode> few = sheet(cooks.subList(0, 3), false);
        few.forEach((id, band) -> assertThat(Trees.difference(band, all.getOrDefault(id, NODES.nullNode()), ""))
                .as(id)
                .isEmpty());
    }

    /** The band of each portion by the id of that, without the number of the band. */
    private Map<String, JsonNode> sheet(List<Cook> cooks, boolean turned) {
        ObjectNode request = NODES.objectNode();
        request.putObject("sheet").putArray("cards").add("fridge");
        List<ObjectNode> portions = new ArrayList<>();
        for (int i = 0; i < cooks.size(); i++) {
            Cook cook = cooks.get(i);
            ObjectNode portion = cook.start(4).request();
            portion.remove("surroundings");
            portion.put("id", "p" + i);
            portions.add(portion);
        }
        if (turned) {
            Collections.reverse(portions);
        }
        request.putArray("portions").addAll(portions);
        JsonNode answer = subject.post("/v1/portion-sheets")
                .body(Wire.JSON, request)
                .send()
                .expect(200)
                .tree();
        Map<String, JsonNode> bands = new TreeMap<>();
        for (JsonNode portion : answer.path("portions")) {
            JsonNode band = answer.path("bands")
                    .valueStream()
                    .filter(candidate -> candidate.path("band").equals(portion.path("band")))
                    .findFirst()
                    .map(JsonNode::deepCopy)
                    .orElse(portion.path("problem"));
            if (band instanceof ObjectNode object) {
                object.remove("band");
            }
            bands.put(portion.path("id").asString(), band);
        }
        return bands;
    }

    @Test
    @Tag("R-113")
    void windowsAndPlans() {
        subject.offers("planWindow");
        subject.offers("planCook");
        for (Example example : Contract.PUBLISHED.examples(Contract.PUBLISHED.operation("planWindow"))) {
            JsonNode window = subject.post("/v1/process-windows")
                    .body(Wire.JSON, example.request())
                    .send()
                    .expect(200)
                    .tree();
            if (window.has("recommended")) {
                confirm(example, window);
                return;
            }
        }
        throw new TestAbortedException("No point is recommended for any example");
    }

    private void confirm(Example example, JsonNode window) {
        ObjectNode request = (ObjectNode) example.request().deepCopy();
        Contract.PUBLISHED
                .requestSchema(Contract.PUBLISHED.operation("planWindow"))
                .at("/properties")
                .propertyNames()
                .forEach(name -> {
                    if (!Contract.PUBLISHED
                            .requestSchema(Contract.PUBLISHED.operation("planCook"))
                            .at("/properties")
                            .has(name)) {
                        request.remove(name);
                    }
                });
        ((ObjectNode) request.at("/surroundings/bath")).set("setpointC", window.at("/recommended/setpointC"));
        // The moment is the window's to find, not that at which the example wants to eat.
        if (request.get("target") instanceof ObjectNode target) {
            target.remove("serveAfterS");
        }
        JsonNode plan = Cook.plan(subject, request);
        long moment = window.at("/recommended/atS").asLong();
        assertThat(plan.at("/safety/verdict")).isEqualTo(window.at("/recommended/verdict"));
        assertThat(moment)
                .as("the recommended moment, in the window of the plan for that setpoint")
                .isBetween(
                        plan.at("/takeOut/earliestS").asLong(Long.MAX_VALUE),
                        plan.at("/takeOut/latestS").asLong(Long.MAX_VALUE));
    }

    @Test
    @Tag("R-114")
    void tablesAndPlans() {
        subject.offers("planTable");
        subject.offers("planCook");
        ObjectNode request = NODES.objectNode();
        request.putObject("food").put("id", "chicken-breast");
        request.putObject("geometry").put("shape", "slab");
        request.putObject("thickness").put("fromMm", 20).put("toMm", 30);
        request.putObject("setpoint").put("fromC", 61).put("toC", 63);
        request.putObject("start").put("fromC", 2).put("toC", 5);
        request.putArray("quantities").add("hotThrough").add("safe");
        request.put("withinPercent", 10).put("longestBytes", 4096);
        JsonNode table = subject.post("/v1/lookup-tables")
                .body(Wire.JSON, request)
                .send()
                .expect(200)
                .tree();
        JsonNode thicknesses = table.path("thicknessMm");
        JsonNode setpoints = table.path("setpointC");
        JsonNode starts = table.path("startC");
        RandomGenerator random = random("R-114");
        for (int round = 0; round < subject.rounds(); round++) {
            int t = random.nextInt(thicknesses.size());
            int b = random.nextInt(setpoints.size());
            int s = random.nextInt(starts.size());
            int place = (t * setpoints.size() + b) * starts.size() + s;
            JsonNode plan = new Cook(
                            "chicken-breast",
                            "slab",
                            thicknesses.get(t).asDouble(),
                            starts.get(s).asDouble(),
                            setpoints.get(b).asDouble())
                    .plan(subject);
            for (JsonNode column : table.path("columns")) {
                String quantity = column.path("quantity").asString();
                assertThat(column.path("timesS").get(place).asLong())
                        .as(quantity + " at a node of the table, never before that of the plan")
                        .isGreaterThanOrEqualTo(
                                plan.at("/times/" + quantity + "/lateS").asLong());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("dev.slowpoint.kit.layers.Examples#computing")
    @Tag("R-115")
    void anyQuestion(Operation operation) {
        subject.offers(operation.id());
        RandomGenerator random = random("R-115" + operation.id());
        List<Place> places = Place.of(operation).stream()
                .filter(place -> place.number()
                        && place.schema().has("minimum")
                        && place.schema().has("maximum"))
                .filter(place -> !dear(place))
                .toList();
        for (int round = 0; round < subject.rounds(); round++) {
            Place place = places.get(random.nextInt(places.size()));
            double from = place.schema().path("minimum").asDouble();
            double to = place.schema().path("maximum").asDouble();
            double share = random.nextInt(4) == 0 ? random.nextInt(2) : random.nextDouble();
            double number = from + (to - from) * share * share;
            JsonNode request = place.with(
                    place.type().equals("integer")
                            ? NODES.numberNode(Math.round(number))
                            : NODES.numberNode(Math.round(number * 100) / 100.0));
            Wire wire = random.nextBoolean() ? Wire.JSON : Wire.CBOR;
            Answer answer = subject.post(operation.path()).body(wire, request).send();
            assertThat(answer.status())
                    .as(place.fragment() + " of " + place.example().name() + " as " + request.at(place.pointer()))
                    .isIn(200, 400, 422);
            assertThat(Contract.PUBLISHED.faults(operation, answer))
                    .as("what breaks the contract, with " + request.at(place.pointer()) + " at " + place.fragment())
                    .isEmpty();
        }
    }

    /** Numbers that make a question many times dearer, which is a matter of load and not of form. */
    private static boolean dear(Place place) {
        return List.of("fromMm", "toMm", "fromC", "toC", "withinPercent", "longestBytes", "stepK").stream()
                .anyMatch(name -> place.pointer().endsWith("/" + name));
    }
}
