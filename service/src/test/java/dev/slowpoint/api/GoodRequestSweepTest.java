package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.safety.Purpose;
import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Requests that keep the contract, drawn from all that it allows, its corners more often than not: each gets a plan whose
 * numbers are in order, or a refusal with a code of the catalogue; never a failure, never a number that is none.
 */
class GoodRequestSweepTest extends HttpTest {

    private static final int REQUESTS = Integer.getInteger("sweep.requests", 250);
    private static final JsonMapper WRITER = new JsonMapper();
    private static final List<Food> FOODS =
            ParameterSets.released().current().knowledge().catalogue().foods();
    private static final List<String> GROUPS = List.of(
            "beef", "pork", "chicken", "turkey", "otherPoultry", "fish", "bivalve", "eggMix", "vegetable", "soy");

    private final Random random = new Random(20_261_126L);

    private static @Nullable ContractCheck contract;

    /** Holds each answer against the contract: its bounds are to be true wherever the contract lets a request go. */
    private ContractCheck contract() {
        ContractCheck kept = contract;
        if (kept == null) {
            kept = new ContractCheck(http().get("/openapi.json").asByteArray());
            contract = kept;
        }
        return kept;
    }

    @Test
    void every_request_that_keeps_the_contract_is_planned_or_refused_by_name() {
        int planned = 0;
        for (int i = 0; i < REQUESTS; i++) {
            String request = WRITER.writeValueAsString(request());
            Response response = http().contentType(JSON).body(request).post(PLANS);
            assertThat(response.statusCode()).as(request).isIn(200, 422);
            contract().check(response, "post", PLANS);
            JsonNode answer = READER.readTree(response.asByteArray());
            if (response.statusCode() == 200) {
                planned++;
                assertThat(response.asByteArray())
                        .as(request + response.asString())
                        .hasSizeLessThan(3000 + 2000 * answer.at("/then").size());
                assertThat(answer.at("/then"))
                        .as(request)
                        .hasSize(READER.readTree(request).at("/then").size());
                inOrder(answer, request);
            } else {
                for (JsonNode fault : answer.at("/errors")) {
                    assertThat(ProblemCode.find(fault.at("/code").asString()))
                            .as(request)
                            .isPresent();
                }
            }
        }
        assertThat(planned).isGreaterThan(REQUESTS / 3);
    }

    @Test
    void every_chill_that_keeps_the_contract_is_planned_or_refused_by_name() {
        int planned = 0;
        for (int i = 0; i < REQUESTS / 2; i++) {
            String request = WRITER.writeValueAsString(chill());
            Response response = http().contentType(JSON).body(request).post(CHILLS);
            assertThat(response.statusCode()).as(request).isIn(200, 422);
            contract().check(response, "post", CHILLS);
            JsonNode answer = READER.readTree(response.asByteArray());
            if (response.statusCode() == 200) {
                planned++;
                assertThat(response.asByteArray()).as(request).hasSizeLessThan(4000);
                rising(answer.at("/ends/earlyS"), answer.at("/ends/nominalS"), request);
                rising(answer.at("/ends/nominalS"), answer.at("/ends/lateS"), request);
                assertThat(answer.at("/coreLowC").asDouble())
                        .as(request)
                        .isLessThanOrEqualTo(answer.at("/coreHighC").asDouble());
            } else {
                for (JsonNode fault : answer.at("/errors")) {
                    assertThat(ProblemCode.find(fault.at("/code").asString()))
                            .as(request)
                            .isPresent();
                }
            }
        }
        assertThat(planned).isGreaterThan(REQUESTS / 6);
    }

    @Test
    void every_log_that_keeps_the_contract_is_reviewed_or_refused_by_name() {
        int reviewed = 0;
        for (int i = 0; i < REQUESTS / 2; i++) {
            String request = WRITER.writeValueAsString(log());
            String accept = pick(List.of(JSON, CBOR, "text/html"));
            Response response =
                    http().contentType(JSON).accept(accept).body(request).post(LOGS + "?include=curve");
            assertThat(response.statusCode()).as(request + response.asString()).isIn(200, 422);
            contract().check(response, "post", LOGS);
            if (response.statusCode() == 422) {
                READER.readTree(response.asByteArray())
                        .at("/errors")
                        .forEach(fault -> assertThat(
                                        ProblemCode.find(fault.at("/code").asString()))
                                .as(request)
                                .isPresent());
            } else if (accept.equals("text/html")) {
                assertThat(response.asString()).as(request).doesNotContain("NaN", "Infinity", "null");
                reviewed++;
            } else {
                JsonNode review = tree(response.asByteArray(), accept);
                boolean allMet = true;
                for (JsonNode limit : review.at("/limits")) {
                    allMet &= limit.at("/met").asString().equals("met")
                            || limit.at("/advisory").asBoolean();
                }
                boolean met = review.at("/verdict").asString().equals("met");
                assertThat(met && !allMet).as(request).isFalse();
                assertThat(review.at("/readings/used").asInt()
                                + review.at("/readings/excluded").asInt())
                        .as(request)
                        .isEqualTo(review.at("/readings/received").asInt());
                reviewed++;
            }
        }
        assertThat(reviewed).isGreaterThan(REQUESTS / 6);
    }

    private Map<String, Object> log() {
        Map<String, Object> request = new LinkedHashMap<>();
        Map<String, Object> food = new LinkedHashMap<>();
        food.put("id", pick(FOODS).id());
        food.put("condition", pick(List.of("raw", "raw", "cooked")));
        request.put("food", food);
        request.put("rule", pick(List.of("us-fsis-2021", "uk-fsa")));
        request.put("coolingRule", pick(List.of("FC-COOL", "S-OPT1")));
        request.put("purpose", pick(List.of("serve", "pasteurise", "keep", "tenderise")));
        request.put("eater", pick(List.of("general", "vulnerable")));
        if (random.nextInt(3) == 0) {
            request.put("aspects", List.of(pick(List.of("cooking", "hotHolding", "cooling", "reheating"))));
        }
        String place = pick(List.of("core", "core", "bath", "surface"));
        request.put("sensor", Map.of("place", place, "errorK", between(0.0, 5.0), "intervalS", between(0.1, 900.0)));
        int n = 2 + random.nextInt(300);
        List<Double> times = new ArrayList<>();
        List<Double> readings = new ArrayList<>();
        double at = between(0.0, 1000.0);
        double reading = between(-20.0, 70.0);
        for (int i = 0; i < n; i++) {
            times.add(at);
            readings.add(random.nextInt(40) == 0 ? pick(List.of(-127.0, 85.0, 400.0, -200.0)) : reading);
            at += random.nextInt(30) == 0 ? between(1.0, 3000.0) : between(0.1, 120.0);
            reading = Math.min(100.0, Math.max(-30.0, reading + between(-2.0, 2.2)));
        }
        request.put("timesS", times);
        request.put("temperaturesC", readings);
        if (place.equals("bath") && random.nextBoolean()) {
            request.put("geometry", geometry());
            request.put("start", Map.of("temperatureC", between(-40.0, 100.0)));
        }
        return request;
    }

    @Test
    void every_replan_that_keeps_the_contract_is_planned_or_refused_by_name() {
        int planned = 0;
        for (int i = 0; i < REQUESTS; i++) {
            String request = WRITER.writeValueAsString(replan());
            Response response = http().contentType(JSON).body(request).post(REPLANS);
            assertThat(response.statusCode()).as(request + response.asString()).isIn(200, 422);
            contract().check(response, "post", REPLANS);
            JsonNode answer = READER.readTree(response.asByteArray());
            if (response.statusCode() == 200) {
                planned++;
                assertThat(response.asByteArray()).as(request).hasSizeLessThan(5000);
                String decision = answer.at("/decision").asString();
                boolean lost = List.of("discard", "getDecision").contains(decision);
                assertThat(lost && answer.at("/safety/verdict").asString().equals("met"))
                        .as(request)
                        .isFalse();
                assertThat(answer.has("left"))
                        .as(request)
                        .isEqualTo(List.of("carryOn", "ready").contains(decision));
                assertThat(answer.at("/state/coreLowC").asDouble())
                        .as(request)
                        .isLessThanOrEqualTo(answer.at("/state/coreHighC").asDouble());
            } else {
                for (JsonNode fault : answer.at("/errors")) {
                    assertThat(ProblemCode.find(fault.at("/code").asString()))
                            .as(request)
                            .isPresent();
                }
            }
        }
        assertThat(planned).isGreaterThan(REQUESTS / 10);
    }

    @Test
    void every_window_that_keeps_the_contract_is_answered_or_refused_by_name() {
        int answered = 0;
        for (int i = 0; i < REQUESTS / 5; i++) {
            Map<String, Object> asked = request();
            asked.remove("then");
            asked.remove("target");
            asked.put("surroundings", Map.of("bath", Map.of("stirring", pick(List.of("pumped", "still")))));
            double lowestC = between(40.0, 80.0);
            asked.put("lowestSetpointC", lowestC);
            asked.put("highestSetpointC", lowestC + between(0.0, 15.0));
            asked.put("stepK", between(0.5, 5.0));
            if (random.nextBoolean()) {
                asked.put("availableS", 60 + random.nextInt(100_000));
            }
            String request = WRITER.writeValueAsString(asked);
            Response response = http().contentType(JSON).body(request).post(WINDOWS);
            assertThat(response.statusCode()).as(request + response.asString()).isIn(200, 422);
            contract().check(response, "post", WINDOWS);
            JsonNode answer = READER.readTree(response.asByteArray());
            if (response.statusCode() == 200) {
                answered++;
                assertThat(answer.has("recommended")).as(request).isNotEqualTo(answer.has("closed"));
                assertThat(answer.at("/region").isEmpty()).as(request).isEqualTo(answer.has("closed"));
                if (answer.has("recommended")) {
                    assertThat(answer.at("/recommended/inside").asBoolean())
                            .as(request)
                            .isTrue();
                    assertThat(answer.at("/recommended/spareTolerances").asDouble())
                            .as(request)
                            .isBetween(0.0, 10.0);
                }
            } else {
                for (JsonNode fault : answer.at("/errors")) {
                    assertThat(ProblemCode.find(fault.at("/code").asString()))
                            .as(request)
                            .isPresent();
                }
            }
        }
        assertThat(answered).isGreaterThan(REQUESTS / 20);
    }

    @Test
    void every_table_that_keeps_the_contract_is_answered_or_refused_by_name() {
        int tabulated = 0;
        for (int i = 0; i < REQUESTS / 25; i++) {
            Map<String, Object> body = table();
            String request = WRITER.writeValueAsString(body);
            String accept = pick(List.of(JSON, CBOR, "text/csv"));
            Response response =
                    http().contentType(JSON).accept(accept).body(request).post(TABLES);
            assertThat(response.statusCode()).as(request + response.asString()).isIn(200, 422);
            contract().check(response, "post", TABLES);
            if (response.statusCode() == 200) {
                tabulated++;
                assertThat(response.asByteArray().length).as(request).isLessThanOrEqualTo((Integer)
                        body.get("longestBytes"));
            } else {
                for (JsonNode fault : READER.readTree(response.asByteArray()).at("/errors")) {
                    assertThat(ProblemCode.find(fault.at("/code").asString()))
                            .as(request)
                            .isPresent();
                }
            }
        }
        assertThat(tabulated).isPositive();
    }

    private Map<String, Object> table() {
        Map<String, Object> request = new LinkedHashMap<>();
        request.put("food", Map.of("id", pick(FOODS).id()));
        double thinnest = between(5.0, 40.0);
        double thickest = thinnest + between(0.0, 30.0);
        String shape = pick(List.of("slab", "brick", "cylinder", "sphere", "egg"));
        Map<String, Object> geometry = new LinkedHashMap<>();
        geometry.put("shape", shape);
        if (shape.equals("brick")) {
            geometry.put("widthMm", between(thickest, 200.0));
        }
        if (shape.equals("brick") || (shape.equals("cylinder") && random.nextBoolean())) {
            geometry.put("lengthMm", between(thickest, 300.0));
        }
        request.put("geometry", geometry);
        request.put("thickness", Map.of("fromMm", thinnest, "toMm", thickest));
        double coolest = between(45.0, 85.0);
        request.put("setpoint", Map.of("fromC", coolest, "toC", coolest + between(0.0, 5.0)));
        double coldest = random.nextInt(5) == 0 ? between(-30.0, 0.0) : between(1.0, 8.0);
        request.put("start", Map.of("fromC", coldest, "toC", coldest + between(0.0, 5.0)));
        request.put("eater", pick(List.of("general", "vulnerable")));
        request.put("withinPercent", between(3.0, 20.0));
        request.put("longestBytes", 2000 + random.nextInt(20_000));
        return request;
    }

    @Test
    void every_load_that_keeps_the_contract_is_planned_or_refused_by_name() {
        int planned = 0;
        for (int i = 0; i < REQUESTS / 2; i++) {
            String request = WRITER.writeValueAsString(load());
            Response response = http().contentType(JSON).body(request).post(LOADS + "?include=curve");
            assertThat(response.statusCode()).as(request + response.asString()).isIn(200, 422);
            contract().check(response, "post", LOADS);
            JsonNode answer = READER.readTree(response.asByteArray());
            if (response.statusCode() == 200) {
                planned++;
                boolean apart = answer.at("/schedule").asString().equals("apart");
                assertThat(answer.has("readyAtS")).as(request).isNotEqualTo(apart);
                assertThat(answer.at("/conflicts").isEmpty()).as(request).isNotEqualTo(apart);
                for (JsonNode item : answer.at("/items")) {
                    JsonNode out = item.at("/takeOut");
                    if (!apart) {
                        assertThat(item.at("/safety/verdict").asString())
                                .as(request)
                                .isNotEqualTo("notMet");
                        assertThat(out.at("/bestS").asInt())
                                .as(request)
                                .isLessThanOrEqualTo(answer.at("/readyAtS").asInt());
                    }
                    rising(out.at("/earliestS"), out.at("/bestS"), request);
                    rising(out.at("/bestS"), out.at("/latestS"), request);
                }
            } else {
                for (JsonNode fault : answer.at("/errors")) {
                    assertThat(ProblemCode.find(fault.at("/code").asString()))
                            .as(request)
                            .isPresent();
                }
            }
        }
        assertThat(planned).isGreaterThan(REQUESTS / 20);
    }

    private Map<String, Object> load() {
        boolean told = random.nextBoolean();
        List<Map<String, Object>> items = new ArrayList<>();
        for (int n = 2 + random.nextInt(random.nextInt(8) == 0 ? 11 : 2); items.size() < n; ) {
            Map<String, Object> item = request();
            item.keySet().retainAll(List.of("food", "geometry", "start", "tolerances", "pack"));
            if (told) {
                double size = between(5.0, 80.0);
                item.put("geometry", Map.of("shape", "slab", "thicknessMm", size, "massG", between(20.0, 3000.0)));
            }
            item.put("id", "item-" + items.size());
            item.put("count", random.nextInt(10) == 0 ? 500 : 1 + random.nextInt(5));
            if (random.nextInt(3) == 0) {
                item.put("target", Map.of("coreC", between(45.0, 85.0)));
            }
            items.add(item);
        }
        Map<String, Object> bath = new LinkedHashMap<>();
        if (random.nextBoolean()) {
            bath.put("setpointC", between(50.0, 90.0));
        }
        if (told) {
            vessel(bath);
            bath.remove("otherLoadG");
        }
        Map<String, Object> request = new LinkedHashMap<>();
        request.put("items", items);
        request.put("surroundings", Map.of("bath", bath));
        if (random.nextInt(3) == 0) {
            request.put("serveAfterS", 60 + random.nextInt(random.nextInt(4) == 0 ? 345_541 : 30_000));
        }
        return request;
    }

    private Map<String, Object> replan() {
        Map<String, Object> request = request();
        request.remove("then");
        Map<String, Object> bath = new LinkedHashMap<>();
        double setpointC = between(50.0, 90.0);
        bath.put("setpointC", setpointC);
        bath.put("stirring", pick(List.of("pumped", "still")));
        if (request.get("geometry") instanceof Map<?, ?> geometry
                && random.nextInt(4) == 0
                && (geometry.containsKey("massG") || geometry.containsKey("lengthMm"))) {
            vessel(bath);
        }
        request.put("surroundings", Map.of("bath", bath));
        request.put("target", Map.of());
        int now = random.nextInt(3) == 0 ? random.nextInt(345_601) : random.nextInt(20_000);
        Map<String, Object> soFar = new LinkedHashMap<>();
        soFar.put("elapsedS", now);
        if (random.nextInt(3) == 0) {
            List<Map<String, Object>> log = new ArrayList<>();
            int at = random.nextInt(1000);
            while (at <= now && log.size() < 300) {
                log.add(Map.of("atS", at, "waterC", random.nextInt(12) == 0 ? -127.0 : between(40.0, setpointC)));
                at += 1 + random.nextInt(random.nextInt(20) == 0 ? 5000 : 400);
            }
            soFar.put("bathLog", log);
        }
        if (random.nextBoolean()) {
            soFar.put("events", events(now, setpointC));
        }
        if (random.nextInt(3) == 0) {
            List<Map<String, Object>> readings = new ArrayList<>();
            for (int at = random.nextInt(now + 1); at <= now && readings.size() < 4; at += 1 + random.nextInt(3000)) {
                readings.add(Map.of("atS", at, "coreC", between(5.0, setpointC)));
            }
            soFar.put("coreReadings", readings);
        }
        if (random.nextInt(6) == 0) {
            soFar.put("thicknessMm", between(3.0, 250.0));
        }
        request.put("soFar", soFar);
        return request;
    }

    private List<Map<String, Object>> events(int now, double setpointC) {
        List<Map<String, Object>> events = new ArrayList<>();
        int from = random.nextInt(now + 1);
        for (int n = 1 + random.nextInt(3); n > 0 && from <= now; n--) {
            int until = from + random.nextInt(now - from + 1);
            Map<String, Object> event = new LinkedHashMap<>();
            String kind = pick(List.of("heaterOff", "setpointChanged", "foodAdded", "floated", "outOfBath"));
            event.put("event", kind);
            if (!kind.equals("heaterOff") || random.nextBoolean()) {
                event.put("fromS", from);
            }
            switch (kind) {
                case "heaterOff" -> {
                    event.put("untilS", until);
                    if (!event.containsKey("fromS") || random.nextBoolean()) {
                        event.put("foundC", between(0.0, setpointC));
                    }
                }
                case "setpointChanged" -> {
                    event.put("setpointC", between(40.0, 90.0));
                    until = from;
                }
                case "foodAdded" -> {
                    event.put("addedG", between(1.0, 100_000.0));
                    until = from;
                }
                case "floated" -> event.put("untilS", until);
                default -> {
                    event.put("untilS", until);
                    event.put("place", pick(List.of("room", "fridge")));
                }
            }
            events.add(event);
            from = until + 1 + random.nextInt(5000);
        }
        return events;
    }

    private Map<String, Object> chill() {
        Map<String, Object> request = new LinkedHashMap<>();
        request.put("food", Map.of("id", pick(FOODS).id()));
        request.put("geometry", geometry());
        request.put(
                "start",
                random.nextInt(4) == 0
                        ? Map.of("surfaceC", between(0.0, 100.0), "coreC", between(0.0, 100.0))
                        : Map.of("temperatureC", between(0.0, 100.0)));
        Map<String, Object> chill = new LinkedHashMap<>();
        chill.put("medium", pick(List.of("iceWater", "coldWater", "blastAir", "fridge")));
        if (random.nextInt(3) == 0) {
            chill.put("mediumC", between(-40.0, 25.0));
        }
        if (random.nextInt(3) == 0) {
            chill.put("durationS", 1 + random.nextInt(1_209_600));
        }
        request.put("chill", chill);
        if (random.nextBoolean()) {
            request.put("store", Map.of("temperatureC", between(-40.0, 25.0), "days", between(0.01, 60.0)));
        }
        request.put("fitToKeep", random.nextBoolean());
        request.put("rule", pick(List.of("FC-COOL", "S-OPT1")));
        request.put("eater", pick(List.of("general", "vulnerable")));
        return request;
    }

    private Map<String, Object> geometry() {
        Map<String, Object> geometry = new LinkedHashMap<>();
        String shape = pick(List.of("slab", "brick", "cylinder", "sphere", "egg"));
        geometry.put("shape", shape);
        boolean weighed = random.nextBoolean();
        double size = between(3.0, 250.0);
        double width = between(size, 400.0);
        double length = between(size, 400.0);
        switch (shape) {
            case "slab" -> {
                geometry.put("thicknessMm", size);
                if (weighed) {
                    geometry.put("massG", mass(size * width * length));
                }
            }
            case "brick" -> {
                geometry.put("thicknessMm", size);
                geometry.put("widthMm", width);
                geometry.put(weighed ? "massG" : "lengthMm", weighed ? mass(size * width * length) : length);
            }
            case "cylinder" -> {
                geometry.put("diameterMm", size);
                if (random.nextInt(3) > 0) {
                    geometry.put(weighed ? "massG" : "lengthMm", weighed ? mass(0.785 * size * size * length) : length);
                }
            }
            case "sphere" ->
                geometry.put(weighed ? "massG" : "diameterMm", weighed ? mass(0.52 * size * size * size) : size);
            default -> {
                if (weighed) {
                    geometry.put("massG", mass(0.7 * size * size * size));
                } else {
                    geometry.put("diameterMm", size);
                    if (random.nextBoolean()) {
                        geometry.put("lengthMm", length);
                    }
                }
            }
        }
        if (random.nextInt(5) == 0) {
            Map<String, Object> arrangement = new LinkedHashMap<>();
            arrangement.put("pileOf", 1 + random.nextInt(10));
            arrangement.put("pouchesTouching", random.nextBoolean());
            arrangement.put("trappedAirMm", between(0.0, 5.0));
            if (random.nextInt(3) == 0) {
                arrangement.put("submerged", "oneFaceInAir");
                arrangement.put("airC", between(-10.0, 100.0));
            }
            geometry.put("arrangement", arrangement);
        }
        return geometry;
    }

    /** Mass [g] of a volume [mm3] of food, now and then another. */
    private double mass(double volume) {
        return random.nextInt(6) == 0 ? between(1.0, 30_000.0) : Math.min(Math.max(1.06e-3 * volume, 1.0), 30_000.0);
    }

    private void vessel(Map<String, Object> bath) {
        bath.put("volumeL", between(1.0, 2000.0));
        bath.put("heaterW", between(50.0, 50_000.0));
        if (random.nextBoolean()) {
            bath.put("startC", between(0.0, 100.0));
        }
        if (random.nextBoolean()) {
            bath.put("covered", random.nextBoolean());
            bath.put("openAreaCm2", between(0.0, 50_000.0));
            bath.put("lossWPerK", between(0.0, 500.0));
            bath.put("roomC", between(-10.0, 50.0));
            bath.put("otherLoadG", between(0.0, 1_000_000.0));
        }
    }

    private List<Map<String, Object>> steps() {
        List<Map<String, Object>> steps = new ArrayList<>();
        for (int n = random.nextInt(5); n > 0; n--) {
            steps.add(step());
        }
        return steps;
    }

    private Map<String, Object> step() {
        Map<String, Object> step = new LinkedHashMap<>();
        String kind = pick(List.of("bath", "unheated", "sear", "rest", "chill", "store", "reheat"));
        step.put("step", kind);
        switch (kind) {
            case "bath" -> {
                step.put("setpointC", between(38.0, 100.0));
                step.put("durationS", 1 + random.nextInt(400_000));
            }
            case "unheated" -> {
                if (random.nextBoolean()) {
                    step.put("foundC", between(0.0, 60.0));
                } else {
                    step.put("durationS", 1 + random.nextInt(100_000));
                }
            }
            case "sear" -> {
                String method = pick(List.of("pan", "coals", "torch", "hotOil"));
                step.put("method", method);
                step.put("secondsPerSide", 1 + random.nextInt(1800));
                if (random.nextBoolean()) {
                    step.put("bothSidesAtOnce", random.nextBoolean());
                }
                if (random.nextBoolean() && (method.equals("pan") || method.equals("hotOil"))) {
                    step.put("heatC", between(100.0, 400.0));
                }
            }
            case "rest" -> step.put("durationS", 1 + random.nextInt(100_000));
            case "chill" -> {
                step.put("medium", pick(List.of("iceWater", "coldWater", "blastAir", "fridge")));
                if (random.nextBoolean()) {
                    step.put("durationS", 1 + random.nextInt(100_000));
                }
            }
            case "store" -> {
                step.put("temperatureC", between(-40.0, 25.0));
                step.put("days", between(0.01, 60.0));
            }
            default -> {
                step.put("setpointC", between(38.0, 100.0));
                if (random.nextBoolean()) {
                    step.put("durationS", 1 + random.nextInt(100_000));
                }
            }
        }
        return step;
    }

    private static void inOrder(JsonNode plan, String request) {
        for (String milestone : List.of("hotThrough", "safe", "tender")) {
            JsonNode time = plan.at("/times/" + milestone);
            rising(time.at("/earlyS"), time.at("/nominalS"), request);
            rising(time.at("/nominalS"), time.at("/lateS"), request);
        }
        rising(plan.at("/takeOut/earliestS"), plan.at("/takeOut/bestS"), request);
        rising(plan.at("/takeOut/bestS"), plan.at("/takeOut/latestS"), request);
        assertThat(plan.has("takeOut")).as(request).isNotEqualTo(plan.has("noTakeOutReason"));
        if (plan.has("takeOut")
                && !plan.at("/safety/verdict").asString().equals("notApplicable")
                && !plan.has("atServe")) {
            // A later step may let grow what the bath did not kill; then nothing is met, and that is said aloud.
            boolean spoiled =
                    plan.has("then") && plan.at("/warnings").toString().contains("\"danger\"");
            assertThat(plan.at("/safety/verdict").asString())
                    .as(request)
                    .isIn(spoiled ? List.of("met", "surfaceOnly", "notMet") : List.of("met", "surfaceOnly"));
        }
    }

    private static void rising(JsonNode first, JsonNode second, String request) {
        if (first.isNumber() && second.isNumber()) {
            assertThat(first.asInt()).as(request).isLessThanOrEqualTo(second.asInt());
        }
    }

    private Map<String, Object> request() {
        Map<String, Object> food = new LinkedHashMap<>();
        if (random.nextInt(4) == 0) {
            food.put("composition", composition());
            food.put("group", pick(GROUPS));
            if (random.nextBoolean()) {
                food.put("textureClass", pick(List.of("pork_loin", "beef_tough", "salmon", "carrot", "egg_yolk")));
            }
        } else {
            food.put("id", pick(FOODS).id());
        }
        if (random.nextInt(3) == 0) {
            food.put("form", pick(List.of(Form.values())).name().toLowerCase(Locale.ROOT));
        }
        if (random.nextInt(4) == 0) {
            food.put("condition", "cooked");
        }
        Map<String, Object> start = new LinkedHashMap<>();
        if (random.nextInt(4) == 0) {
            start.put("surfaceC", between(-40.0, 40.0));
            start.put("coreC", between(-40.0, 40.0));
        } else {
            start.put("temperatureC", between(-40.0, 30.0));
        }
        if (random.nextInt(5) == 0) {
            start.put("earlierCook", Map.of("setpointC", between(50.0, 90.0), "heldS", 60 + random.nextInt(200_000)));
        }
        Map<String, Object> bath = new LinkedHashMap<>();
        if (random.nextInt(8) > 0) {
            bath.put("setpointC", between(38.0, 100.0));
        }
        bath.put("stirring", pick(List.of("pumped", "still")));
        Map<String, Object> target = new LinkedHashMap<>();
        if (random.nextBoolean()) {
            target.put("purpose", pick(List.of(Purpose.values())).name().toLowerCase(Locale.ROOT));
        }
        if (random.nextInt(4) == 0) {
            target.put("coreC", between(38.0, 90.0));
        }
        if (random.nextInt(4) == 0) {
            target.put("withinK", between(0.05, 5.0));
        }
        if (random.nextInt(4) == 0) {
            target.put("serveAfterS", 60 + random.nextInt(345_541));
        }
        Map<String, Object> request = new LinkedHashMap<>();
        request.put("food", food);
        Map<String, Object> geometry = geometry();
        request.put("geometry", geometry);
        if (random.nextInt(4) == 0 && (geometry.containsKey("massG") || geometry.containsKey("lengthMm"))) {
            vessel(bath);
        }
        if (random.nextInt(3) == 0) {
            request.put("then", steps());
        }
        request.put("start", start);
        request.put("surroundings", Map.of("bath", bath, "altitudeM", random.nextInt(5001)));
        request.put("target", target);
        request.put("eater", pick(List.of("general", "vulnerable")));
        request.put(
                "rule",
                pick(List.of(
                        "us-fsis-2021",
                        "us-food-code-2022",
                        "uk-fsa",
                        "eu-food-hygiene",
                        "ca-cfia",
                        "au-fsanz",
                        "au-nsw-2012",
                        "au-vic",
                        "nz-mpi")));
        return request;
    }

    private Map<String, Object> composition() {
        double[] parts = new double[6];
        double sum = 0.0;
        for (int i = 0; i < 6; i++) {
            parts[i] = random.nextInt(3) == 0 ? 0.0 : random.nextDouble() * (i == 0 ? 4.0 : 1.0);
            sum += parts[i];
        }
        if (sum == 0.0) {
            parts[random.nextInt(6)] = 1.0;
            sum = 1.0;
        }
        Map<String, Object> percent = new LinkedHashMap<>();
        String[] names = {
            "waterPercent", "proteinPercent", "fatPercent", "carbohydratePercent", "fibrePercent", "ashPercent"
        };
        for (int i = 0; i < 6; i++) {
            percent.put(names[i], Math.min(100.0, 100.0 * parts[i] / sum));
        }
        return percent;
    }

    /** A number of a range, one in four times one of its ends. */
    private double between(double low, double high) {
        return switch (random.nextInt(8)) {
            case 0 -> low;
            case 1 -> high;
            default -> Math.rint(100.0 * random.nextDouble(low, high)) / 100.0;
        };
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
