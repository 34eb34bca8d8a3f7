package dev.slowpoint.situations;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import tools.jackson.databind.json.JsonMapper;

/** Writes a request for a cook plan the way a cook would say it, and sends it. */
final class Asking {

    private static final JsonMapper JSON = new JsonMapper();

    private final Supplier<RequestSpecification> http;
    private final Map<String, Object> food = new LinkedHashMap<>();
    private final Map<String, Object> geometry = new LinkedHashMap<>();
    private final Map<String, Object> start = new LinkedHashMap<>();
    private final Map<String, Object> bath = new LinkedHashMap<>();
    private final Map<String, Object> surroundings = new LinkedHashMap<>();
    private final Map<String, Object> target = new LinkedHashMap<>();
    private final Map<String, Object> pack = new LinkedHashMap<>();
    private final Map<String, Object> request = new LinkedHashMap<>();
    private final List<Map<String, Object>> then = new ArrayList<>();

    Asking(Supplier<RequestSpecification> http, String foodId) {
        this.http = http;
        food.put("id", foodId);
    }

    Asking form(String form) {
        food.put("form", form);
        return this;
    }

    Asking cooked() {
        food.put("condition", "cooked");
        return this;
    }

    Asking slab(double thicknessMm) {
        geometry.put("shape", "slab");
        geometry.put("thicknessMm", thicknessMm);
        return this;
    }

    Asking cylinder(double diameterMm) {
        geometry.put("shape", "cylinder");
        geometry.put("diameterMm", diameterMm);
        return this;
    }

    Asking sphere(double diameterMm) {
        geometry.put("shape", "sphere");
        geometry.put("diameterMm", diameterMm);
        return this;
    }

    Asking brick(double thicknessMm, double widthMm, double lengthMm) {
        geometry.put("shape", "brick");
        geometry.put("thicknessMm", thicknessMm);
        geometry.put("widthMm", widthMm);
        geometry.put("lengthMm", lengthMm);
        return this;
    }

    /** A brick whose length follows from its mass. */
    Asking brickOf(double grams, double thicknessMm, double widthMm) {
        geometry.put("shape", "brick");
        geometry.put("thicknessMm", thicknessMm);
        geometry.put("widthMm", widthMm);
        return massG(grams);
    }

    Asking massG(double grams) {
        geometry.put("massG", grams);
        return this;
    }

    Asking arrangement(Map<String, Object> how) {
        geometry.put("arrangement", how);
        return this;
    }

    Asking vessel(Map<String, Object> water) {
        bath.putAll(water);
        return this;
    }

    Asking then(Map<String, Object> step) {
        then.add(step);
        return this;
    }

    Asking from(double temperatureC) {
        start.put("temperatureC", temperatureC);
        return this;
    }

    Asking cookedBefore(double setpointC, int heldS) {
        start.put("earlierCook", Map.of("setpointC", setpointC, "heldS", heldS));
        return this;
    }

    Asking bath(double setpointC) {
        bath.put("setpointC", setpointC);
        return this;
    }

    Asking altitude(double metres) {
        surroundings.put("altitudeM", metres);
        return this;
    }

    Asking purpose(String purpose) {
        target.put("purpose", purpose);
        return this;
    }

    Asking core(double coreC, double withinK) {
        target.put("coreC", coreC);
        target.put("withinK", withinK);
        return this;
    }

    Asking within(double withinK) {
        target.put("withinK", withinK);
        return this;
    }

    Asking servedAfterMinutes(int minutes) {
        target.put("serveAfterS", minutes * 60);
        return this;
    }

    Asking rule(String rule) {
        request.put("rule", rule);
        return this;
    }

    Asking eater(String eater) {
        request.put("eater", eater);
        return this;
    }

    Asking garlic() {
        pack.put("rawGarlicOrHerbs", true);
        return this;
    }

    Asking salted() {
        pack.put("salted", true);
        return this;
    }

    Asking pack(String member, Object value) {
        pack.put(member, value);
        return this;
    }

    /** The request as JSON. */
    String json() {
        Map<String, Object> all = new LinkedHashMap<>(request);
        all.put("food", food);
        all.put("geometry", geometry);
        all.put("start", start);
        surroundings.put("bath", bath);
        all.put("surroundings", surroundings);
        if (!target.isEmpty()) {
            all.put("target", target);
        }
        if (!pack.isEmpty()) {
            all.put("pack", pack);
        }
        if (!then.isEmpty()) {
            all.put("then", then);
        }
        return JSON.writeValueAsString(all);
    }

    /** Sends it. */
    Response send() {
        return http.get().contentType("application/json").body(json()).post("/v1/cook-plans");
    }

    /** Sends it and takes the plan. */
    Told plan() {
        Response response = send();
        if (response.statusCode() != 200) {
            throw new AssertionError(
                    "no plan for " + json() + " but " + response.statusCode() + ": " + response.asString());
        }
        return new Told(JSON.readTree(response.asByteArray()));
    }

    /** Sends it and takes the refusal. */
    Told refusal(int status) {
        Response response = send();
        if (response.statusCode() != status) {
            throw new AssertionError(
                    "expected " + status + " but got " + response.statusCode() + ": " + response.asString());
        }
        return new Told(JSON.readTree(response.asByteArray()));
    }
}
