package dev.slowpoint.kit.layers;

import dev.slowpoint.kit.Answer;
import dev.slowpoint.kit.Subject;
import dev.slowpoint.kit.Wire;
import java.util.List;
import java.util.random.RandomGenerator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A cook of a generated piece, as a question may be put about it and about its neighbours.
 *
 * @param food id of a food that is sold in one piece
 * @param shape {@code slab}, {@code cylinder} or {@code sphere}
 * @param acrossMm thickness or diameter
 * @param startC temperature when it goes in
 * @param setpointC of the bath
 */
record Cook(String food, String shape, double acrossMm, double startC, double setpointC) {

    private static final List<String> FOODS =
            List.of("pork-loin", "chicken-breast", "chicken-thigh", "beef-sirloin", "carrot");
    private static final List<String> SHAPES = List.of("slab", "cylinder", "sphere");

    static Cook any(RandomGenerator random) {
        boolean frozen = random.nextInt(4) == 0;
        return new Cook(
                FOODS.get(random.nextInt(FOODS.size())),
                SHAPES.get(random.nextInt(SHAPES.size())),
                tenths(random.nextDouble(8, 70)),
                tenths(frozen ? random.nextDouble(-25, -15) : random.nextDouble(1, 8)),
                tenths(random.nextDouble(58, 80)));
    }

    private static double tenths(double number) {
        return Math.round(number * 10) / 10.0;
    }

    Cook across(double mm) {
        return new Cook(food, shape, mm, startC, setpointC);
    }

    Cook start(double celsius) {
        return new Cook(food, shape, acrossMm, celsius, setpointC);
    }

    Cook setpoint(double celsius) {
        return new Cook(food, shape, acrossMm, startC, celsius);
    }

    Cook of(String other) {
        return new Cook(other, shape, acrossMm, startC, setpointC);
    }

    ObjectNode request() {
        ObjectNode request = JsonNodeFactory.instance.objectNode();
        request.putObject("food").put("id", food);
        request.putObject("geometry")
                .put("shape", shape)
                .put(shape.equals("slab") ? "thicknessMm" : "diameterMm", acrossMm);
        request.putObject("start").put("temperatureC", startC);
        request.putObject("surroundings").putObject("bath").put("setpointC", setpointC);
        return request;
    }

    JsonNode plan(Subject subject) {
        return plan(subject, request());
    }

    static JsonNode plan(Subject subject, JsonNode request) {
        Answer answer =
                subject.post("/v1/cook-plans").body(Wire.JSON, request).send().expect(200);
        return answer.tree();
    }
}
