package dev.slowpoint.plan;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.Refusal.Fault;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Rule;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;

/** What is refused before anything is computed: well-formed questions outside what the model or a rule can answer. */
final class Admission {

    /** Below it a bath is no cook: bacteria grow fast, and no food is eaten so (our own limit). */
    static final double COOLEST_BATH_C = 38.0;

    /** Raw food warmer than a hot kitchen has been somewhere it should not have been (our own limit). */
    private static final double WARMEST_RAW_C = 30.0;

    /** Stuffed pieces in all parts (FDA Food Code 2022, 3-401.11(A)(3)), and sprouts (FDA advice on sprouts): 165 F. */
    static final double COOKED_THROUGH_C = 74.0;

    private static final String ARRANGEMENT = "#/geometry/arrangement";

    private Admission() {}

    /** Refuses a task with everything that stands in its way. */
    static void check(CookTask task, Knowledge knowledge) {
        List<Fault> faults = faults(task, knowledge);
        if (!faults.isEmpty()) {
            throw new Refusal(faults);
        }
    }

    /** Everything that stands in the way of a task. */
    static List<Fault> faults(CookTask task, Knowledge knowledge) {
        List<Fault> faults = new ArrayList<>();
        form(task.food(), task.form(), faults);
        rule(task, knowledge, faults);
        start(task, faults);
        steps(task, faults);
        arrangement(task.arrangement(), task.body(), faults);
        if (!task.arrangement().free() && !task.then().isEmpty()) {
            faults.add(Fault.of(ARRANGEMENT, "CHAIN_NEEDS_FREE_PACK", "FAULT_CHAIN_NEEDS_FREE_PACK")
                    .withHint("HINT_PLAN_BATH_ALONE"));
        }
        task.bath().setpointC().ifPresent(setpointC -> faults.addAll(bath(task, setpointC)));
        if (task.target().purpose() == Purpose.REHEAT && task.raw()) {
            faults.add(Fault.of("#/target/purpose", "PURPOSE_NEEDS_COOKED", "FAULT_PURPOSE_NEEDS_COOKED")
                    .withValue("reheat")
                    .withHint("HINT_SAY_COOKED"));
        }
        return faults;
    }

    /** Refuses a chill task with everything that stands in its way. */
    static void check(ChillTask task, Knowledge knowledge) {
        List<Fault> faults = new ArrayList<>();
        form(task.food(), task.form(), faults);
        task.rule().ifPresent(id -> known(id, knowledge.safety().cooling().keySet(), faults));
        arrangement(task.arrangement(), task.body(), faults);
        task.arrangement()
                .faceInAirC()
                .ifPresent(airC ->
                        faults.add(Fault.of(ARRANGEMENT, "CHILL_NEEDS_COVERED_FACES", "FAULT_CHILL_NEEDS_COVERED_FACES")
                                .withHint("HINT_PUSH_UNDER_OR_AIR")));
        if (!faults.isEmpty()) {
            throw new Refusal(faults);
        }
    }

    /** Refuses a task about a log with everything that stands in its way. */
    static void check(LogTask task, Knowledge knowledge) {
        List<Fault> faults = new ArrayList<>();
        form(task.food(), task.form(), faults);
        task.rule()
                .ifPresent(id -> known(
                        id,
                        knowledge.safety().rules().rules().stream()
                                .map(Rule::id)
                                .toList(),
                        faults));
        task.coolingRule()
                .ifPresent(id ->
                        known("#/coolingRule", id, knowledge.safety().cooling().keySet(), faults));
        task.piece().ifPresent(piece -> arrangement(piece.arrangement(), piece.body(), faults));
        if (task.sensor().place() != LogTask.SensorPlace.CORE) {
            for (LogTask.Aspect aspect : task.aspects()) {
                if (aspect != LogTask.Aspect.COOKING) {
                    faults.add(Fault.of("#/aspects", "ASPECT_NEEDS_CORE", "FAULT_ASPECT_NEEDS_CORE")
                            .withHint("HINT_LOG_OF_CORE"));
                    break;
                }
            }
        }
        boolean reheated = task.aspects().contains(LogTask.Aspect.REHEATING) || task.purpose() == Purpose.REHEAT;
        if (reheated && task.raw()) {
            faults.add(Fault.of(
                            task.purpose() == Purpose.REHEAT ? "#/purpose" : "#/aspects",
                            "PURPOSE_NEEDS_COOKED",
                            "FAULT_PURPOSE_NEEDS_COOKED")
                    .withHint("HINT_SAY_COOKED"));
        }
        if (!faults.isEmpty()) {
            throw new Refusal(faults);
        }
    }

    private static void arrangement(Arrangement arrangement, Body body, List<Fault> faults) {
        if (arrangement.free()) {
            return;
        }
        if (!(body instanceof Slab || body instanceof Brick)) {
            faults.add(Fault.of(ARRANGEMENT, "ARRANGEMENT_NEEDS_FLAT", "FAULT_ARRANGEMENT_NEEDS_FLAT")
                    .withHint("HINT_AS_SLAB"));
        }
        if (arrangement.oneFaceBlocked() && arrangement.faceInAirC().isPresent()) {
            faults.add(Fault.of(ARRANGEMENT, "NO_FACE_IN_WATER", "FAULT_NO_FACE_IN_WATER")
                    .withHint("HINT_TURN_OR_PUSH"));
        }
    }

    private static void form(Food food, Form form, List<Fault> faults) {
        if (!food.forms().contains(form)) {
            faults.add(Fault.of(
                            "#/food/form", "FORM_NOT_ALLOWED", "FAULT_FORM_NOT_ALLOWED", Phrase.of("FOOD_" + food.id()))
                    .withValue(form.name().toLowerCase(Locale.ROOT))
                    .withHint(
                            "HINT_FORMS",
                            String.join(
                                    ", ",
                                    food.forms().stream()
                                            .map(f -> f.name().toLowerCase(Locale.ROOT))
                                            .sorted()
                                            .toList())));
        }
    }

    private static void rule(CookTask task, Knowledge knowledge, List<Fault> faults) {
        task.rule()
                .ifPresent(id -> known(
                        id,
                        knowledge.safety().rules().rules().stream()
                                .map(Rule::id)
                                .toList(),
                        faults));
    }

    private static void known(String id, Collection<String> known, List<Fault> faults) {
        known("#/rule", id, known, faults);
    }

    private static void known(String pointer, String id, Collection<String> known, List<Fault> faults) {
        if (!known.contains(id)) {
            faults.add(Fault.of(pointer, "UNKNOWN_RULE", "FAULT_NO_RULE")
                    .withValue(id)
                    .withHint("HINT_KNOWN", String.join(", ", known)));
        }
    }

    /** A bath without heater must have been a bath just before, and something must be known of it. */
    private static void steps(CookTask task, List<Fault> faults) {
        boolean inWater = true;
        double waterC = task.bath().setpointC().orElse(Double.POSITIVE_INFINITY);
        for (int i = 0; i < task.then().size(); i++) {
            String pointer = "#/then/" + i;
            Step step = task.then().get(i);
            if (step instanceof Step.Bath bath) {
                waterC = bath.setpointC();
                hotterThanWater(pointer, waterC, task.altitude(), faults);
            } else if (step instanceof Step.Reheat reheat) {
                waterC = reheat.setpointC();
                hotterThanWater(pointer, waterC, task.altitude(), faults);
            } else if (step instanceof Step.Unheated unheated) {
                unheated(pointer, unheated, inWater, waterC, faults);
                waterC = unheated.foundC().orElse(waterC);
            }
            inWater = step instanceof Step.Bath || step instanceof Step.Reheat || step instanceof Step.Unheated;
        }
    }

    private static void unheated(
            String pointer, Step.Unheated step, boolean inWater, double waterC, List<Fault> faults) {
        if (!inWater) {
            faults.add(Fault.of(pointer, "UNHEATED_WITHOUT_BATH", "FAULT_UNHEATED_WITHOUT_BATH")
                    .withHint("HINT_AFTER_BATH"));
        }
        if (step.duration().isEmpty() && step.foundC().isEmpty()) {
            faults.add(Fault.of(pointer, "UNHEATED_UNKNOWN", "FAULT_UNHEATED_UNKNOWN")
                    .withHint("HINT_GIVE_LENGTH"));
        }
        if (step.foundC().isPresent() && step.foundC().getAsDouble() >= waterC) {
            faults.add(Fault.of(
                            pointer + "/foundC",
                            "FOUND_NOT_BELOW_BATH",
                            "FAULT_FOUND_NOT_BELOW_BATH",
                            Figures.temperature(waterC))
                    .withValue(Double.toString(step.foundC().getAsDouble()))
                    .withMaximum(waterC, "Cel"));
        }
    }

    static void hotterThanWater(String pointer, double setpointC, double altitude, List<Fault> faults) {
        double boilingC = BoilingPoint.atC(altitude);
        if (setpointC > boilingC) {
            faults.add(Fault.of(
                            pointer + "/setpointC",
                            "ABOVE_BOILING_POINT",
                            "FAULT_ABOVE_BOILING_POINT",
                            Figures.temperature(boilingC),
                            Math.rint(altitude))
                    .withValue(Double.toString(setpointC))
                    .withMaximum(Math.floor(boilingC * 10.0) / 10.0, "Cel"));
        }
        if (setpointC < COOLEST_BATH_C) {
            faults.add(Fault.of(pointer + "/setpointC", "BATH_TOO_COOL", "FAULT_BATH_TOO_COOL")
                    .withValue(Double.toString(setpointC))
                    .withMinimum(COOLEST_BATH_C, "Cel"));
        }
    }

    private static void start(CookTask task, List<Fault> faults) {
        double warmestC = Math.max(task.start().coreC(), task.start().surfaceC());
        if (task.raw() && warmestC > WARMEST_RAW_C) {
            faults.add(Fault.of("#/start", "START_TOO_WARM", "FAULT_START_TOO_WARM", Figures.temperature(warmestC))
                    .withValue(Double.toString(warmestC))
                    .withMaximum(WARMEST_RAW_C, "Cel")
                    .withHint("HINT_CHECK_PROBE_OR_COOKED"));
        }
    }

    /** What stands in the way of a bath of a setpoint. */
    static List<Fault> bath(CookTask task, double setpointC) {
        List<Fault> faults = new ArrayList<>();
        String pointer = "#/surroundings/bath/setpointC";
        double boilingC = BoilingPoint.atC(task.altitude());
        if (setpointC > boilingC) {
            faults.add(Fault.of(
                            pointer,
                            "ABOVE_BOILING_POINT",
                            "FAULT_ABOVE_BOILING_POINT",
                            Figures.temperature(boilingC),
                            Math.rint(task.altitude()))
                    .withValue(Double.toString(setpointC))
                    .withMaximum(Math.floor(boilingC * 10.0) / 10.0, "Cel"));
        }
        if (setpointC < COOLEST_BATH_C) {
            faults.add(Fault.of(pointer, "BATH_TOO_COOL", "FAULT_BATH_TOO_COOL")
                    .withValue(Double.toString(setpointC))
                    .withMinimum(COOLEST_BATH_C, "Cel"));
        }
        if (task.raw() && setpointC < COOKED_THROUGH_C) {
            cookedThrough(task, setpointC, pointer, faults);
        }
        double warmestC = Math.max(task.start().coreC(), task.start().surfaceC());
        if (warmestC >= setpointC) {
            faults.add(Fault.of(
                            "#/start",
                            "START_NOT_BELOW_BATH",
                            "FAULT_START_NOT_BELOW_BATH",
                            Figures.temperature(warmestC),
                            Figures.temperature(setpointC))
                    .withValue(Double.toString(warmestC))
                    .withMaximum(setpointC, "Cel"));
        }
        task.target().coreC().ifPresent(coreC -> {
            if (coreC > setpointC) {
                faults.add(Fault.of(
                                "#/target/coreC",
                                "CORE_ABOVE_BATH",
                                "FAULT_CORE_ABOVE_BATH",
                                Figures.temperature(coreC),
                                Figures.temperature(setpointC))
                        .withValue(Double.toString(coreC))
                        .withMaximum(setpointC, "Cel"));
            }
        });
        return faults;
    }

    /** What no published time makes safe in a cooler bath, however long. */
    private static void cookedThrough(CookTask task, double setpointC, String pointer, List<Fault> faults) {
        if (task.form() == Form.STUFFED) {
            faults.add(Fault.of(pointer, "STUFFED_TOO_COOL", "FAULT_STUFFED_TOO_COOL")
                    .withValue(Double.toString(setpointC))
                    .withMinimum(COOKED_THROUGH_C, "Cel")
                    .withHint("HINT_STUFFING_APART"));
        }
        if (task.food().group().plant() && task.food().hazards().contains("salmonella")) {
            faults.add(Fault.of(pointer, "SPROUTS_TOO_COOL", "FAULT_SPROUTS_TOO_COOL")
                    .withValue(Double.toString(setpointC))
                    .withMinimum(COOKED_THROUGH_C, "Cel")
                    .withHint("HINT_SPROUTS"));
        }
    }
}
