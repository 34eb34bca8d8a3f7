package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.safety.Purpose;
import io.restassured.response.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
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

    @Test
    void every_request_that_keeps_the_contract_is_planned_or_refused_by_name() {
        int planned = 0;
        for (int i = 0; i < REQUESTS; i++) {
            String request = WRITER.writeValueAsString(request());
            Response response = http().contentType(JSON).body(request).post(PLANS);
            assertThat(response.statusCode()).as(request).isIn(200, 422);
            JsonNode answer = READER.readTree(response.asByteArray());
            if (response.statusCode() == 200) {
                planned++;
                assertThat(response.asByteArray())
                        .as(request + response.asString())
                        .hasSizeLessThan(3000);
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
            assertThat(plan.at("/safety/verdict").asString()).as(request).isIn("met", "surfaceOnly");
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
        String shape = pick(List.of("slab", "cylinder", "sphere"));
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
        request.put(
                "geometry",
                Map.of("shape", shape, shape.equals("slab") ? "thicknessMm" : "diameterMm", between(3.0, 250.0)));
        request.put("start", start);
        request.put("surroundings", Map.of("bath", bath, "altitudeM", random.nextInt(5001)));
        request.put("target", target);
        request.put("eater", pick(List.of("general", "vulnerable")));
        request.put("rule", pick(List.of("us-fsis-2021", "uk-fsa")));
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
