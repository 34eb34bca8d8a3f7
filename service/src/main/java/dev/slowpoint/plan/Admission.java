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
        List<Fault> faults = new ArrayList<>();
        form(task.food(), task.form(), faults);
        rule(task, knowledge, faults);
        start(task, faults);
        steps(task, faults);
        arrangement(task.arrangement(), task.body(), faults);
        if (!task.arrangement().free() && !task.then().isEmpty()) {
            faults.add(Fault.of(
                            ARRANGEMENT,
                            "CHAIN_NEEDS_FREE_PACK",
                            "What follows the bath is computed only for a pack that lies free in the water.")
                    .withHint("Plan the bath alone, or leave the arrangement out."));
        }
        task.bath().setpointC().ifPresent(setpointC -> bath(task, setpointC, faults));
        if (task.target().purpose() == Purpose.REHEAT && task.raw()) {
            faults.add(Fault.of(
                            "#/target/purpose",
                            "PURPOSE_NEEDS_COOKED",
                            "Only food that was cooked before can be reheated.")
                    .withValue("reheat")
                    .withHint("Say food.condition cooked, or another purpose."));
        }
        if (!faults.isEmpty()) {
            throw new Refusal(faults);
        }
    }

    /** Refuses a chill task with everything that stands in its way. */
    static void check(ChillTask task, Knowledge knowledge) {
        List<Fault> faults = new ArrayList<>();
        form(task.food(), task.form(), faults);
        task.rule().ifPresent(id -> known(id, knowledge.safety().cooling().keySet(), faults));
        arrangement(task.arrangement(), task.body(), faults);
        task.arrangement()
                .faceInAirC()
                .ifPresent(airC -> faults.add(Fault.of(
                                ARRANGEMENT,
                                "CHILL_NEEDS_COVERED_FACES",
                                "A chill is computed only for a pack whose faces both lie in the medium.")
                        .withHint("Push the pack under, or chill it in air.")));
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
                    faults.add(Fault.of(
                                    "#/aspects",
                                    "ASPECT_NEEDS_CORE",
                                    "Waiting hot, cooling and reheating are judged at the core alone.")
                            .withHint("Send a log of the core, or leave this out."));
                    break;
                }
            }
        }
        boolean reheated = task.aspects().contains(LogTask.Aspect.REHEATING) || task.purpose() == Purpose.REHEAT;
        if (reheated && task.raw()) {
            faults.add(Fault.of(
                            task.purpose() == Purpose.REHEAT ? "#/purpose" : "#/aspects",
                            "PURPOSE_NEEDS_COOKED",
                            "Only food that was cooked before can be reheated.")
                    .withHint("Say food.condition cooked, or another purpose."));
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
            faults.add(Fault.of(
                            ARRANGEMENT,
                            "ARRANGEMENT_NEEDS_FLAT",
                            "Only a slab or a brick can lie on another, on a tray, or with one face out of the water.")
                    .withHint("Describe the piece as a slab of its thickness, which is the slow side."));
        }
        if (arrangement.oneFaceBlocked() && arrangement.faceInAirC().isPresent()) {
            faults.add(Fault.of(
                            ARRANGEMENT,
                            "NO_FACE_IN_WATER",
                            "With one face blocked and the other in air no heat gets in.")
                    .withHint("Turn the pack over, or push it under."));
        }
    }

    private static void form(Food food, Form form, List<Fault> faults) {
        if (!food.forms().contains(form)) {
            faults.add(Fault.of("#/food/form", "FORM_NOT_ALLOWED", food.name() + " is not planned for in this form.")
                    .withValue(form.name().toLowerCase(Locale.ROOT))
                    .withHint("It may be "
                            + String.join(
                                    ", ",
                                    food.forms().stream()
                                            .map(f -> f.name().toLowerCase(Locale.ROOT))
                                            .sorted()
                                            .toList())
                            + "."));
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
            faults.add(Fault.of(pointer, "UNKNOWN_RULE", "There is no rule of this id.")
                    .withValue(id)
                    .withHint("Known are " + String.join(", ", known) + "."));
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
            faults.add(Fault.of(
                            pointer,
                            "UNHEATED_WITHOUT_BATH",
                            "The piece is in no bath whose heater could have been off.")
                    .withHint("Put this step right after a bath."));
        }
        if (step.duration().isEmpty() && step.foundC().isEmpty()) {
            faults.add(Fault.of(
                            pointer,
                            "UNHEATED_UNKNOWN",
                            "Neither how long the heater was off nor what was found is known.")
                    .withHint("Give the length, or the temperature of the water that was found."));
        }
        if (step.foundC().isPresent() && step.foundC().getAsDouble() >= waterC) {
            faults.add(Fault.of(
                            pointer + "/foundC",
                            "FOUND_NOT_BELOW_BATH",
                            "Water without heater does not stay at " + waterC + " C or above.")
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
                            String.format(Locale.ROOT, "Water boils at %.1f C at %.0f m.", boilingC, altitude))
                    .withValue(Double.toString(setpointC))
                    .withMaximum(Math.floor(boilingC * 10.0) / 10.0, "Cel"));
        }
        if (setpointC < COOLEST_BATH_C) {
            faults.add(Fault.of(
                            pointer + "/setpointC",
                            "BATH_TOO_COOL",
                            "A bath this cool does not cook, it breeds bacteria.")
                    .withValue(Double.toString(setpointC))
                    .withMinimum(COOLEST_BATH_C, "Cel"));
        }
    }

    private static void start(CookTask task, List<Fault> faults) {
        double warmestC = Math.max(task.start().coreC(), task.start().surfaceC());
        if (task.raw() && warmestC > WARMEST_RAW_C) {
            faults.add(Fault.of(
                            "#/start",
                            "START_TOO_WARM",
                            "Raw food at " + warmestC + " C has been warm for too long, or the probe is wrong.")
                    .withValue(Double.toString(warmestC))
                    .withMaximum(WARMEST_RAW_C, "Cel")
                    .withHint("Check the probe; say food.condition cooked if it was cooked before."));
        }
    }

    private static void bath(CookTask task, double setpointC, List<Fault> faults) {
        String pointer = "#/surroundings/bath/setpointC";
        double boilingC = BoilingPoint.atC(task.altitude());
        if (setpointC > boilingC) {
            faults.add(Fault.of(
                            pointer,
                            "ABOVE_BOILING_POINT",
                            String.format(Locale.ROOT, "Water boils at %.1f C at %.0f m.", boilingC, task.altitude()))
                    .withValue(Double.toString(setpointC))
                    .withMaximum(Math.floor(boilingC * 10.0) / 10.0, "Cel"));
        }
        if (setpointC < COOLEST_BATH_C) {
            faults.add(Fault.of(pointer, "BATH_TOO_COOL", "A bath this cool does not cook, it breeds bacteria.")
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
                            "The food starts at " + warmestC + " C, not colder than the bath of " + setpointC + " C.")
                    .withValue(Double.toString(warmestC))
                    .withMaximum(setpointC, "Cel"));
        }
        task.target().coreC().ifPresent(coreC -> {
            if (coreC > setpointC) {
                faults.add(Fault.of(
                                "#/target/coreC",
                                "CORE_ABOVE_BATH",
                                "A core of " + coreC + " C is never reached in a bath of " + setpointC + " C.")
                        .withValue(Double.toString(coreC))
                        .withMaximum(setpointC, "Cel"));
            }
        });
    }

    /** What no published time makes safe in a cooler bath, however long. */
    private static void cookedThrough(CookTask task, double setpointC, String pointer, List<Fault> faults) {
        if (task.form() == Form.STUFFED) {
            faults.add(Fault.of(
                            pointer,
                            "STUFFED_TOO_COOL",
                            "No published time makes a stuffed piece safe below 74 C: the stuffing lies in the middle, heats"
                                    + " last, and is another food than the one computed.")
                    .withValue(Double.toString(setpointC))
                    .withMinimum(COOKED_THROUGH_C, "Cel")
                    .withHint("Cook the stuffing apart and plan the piece without it, or take a bath above 74 C."));
        }
        if (task.food().group().plant() && task.food().hazards().contains("salmonella")) {
            faults.add(Fault.of(
                            pointer,
                            "SPROUTS_TOO_COOL",
                            "Sprouts can carry Salmonella and E. coli inside, and no published time makes them safe below"
                                    + " 74 C.")
                    .withValue(Double.toString(setpointC))
                    .withMinimum(COOKED_THROUGH_C, "Cel")
                    .withHint("Take a bath above 74 C, or boil or fry them."));
        }
    }
}
