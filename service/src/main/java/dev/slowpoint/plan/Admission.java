package dev.slowpoint.plan;

import dev.slowpoint.food.Form;
import dev.slowpoint.plan.Refusal.Fault;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Rule;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is refused before anything is computed: well-formed questions outside what the model or a rule can answer. */
final class Admission {

    /** Below it a bath is no cook: bacteria grow fast, and no food is eaten so (our own limit). */
    private static final double COOLEST_BATH_C = 38.0;

    /** Raw food warmer than a hot kitchen has been somewhere it should not have been (our own limit). */
    private static final double WARMEST_RAW_C = 30.0;

    private Admission() {}

    /** Refuses a task with everything that stands in its way. */
    static void check(CookTask task, Knowledge knowledge) {
        List<Fault> faults = new ArrayList<>();
        form(task, faults);
        rule(task, knowledge, faults);
        start(task, faults);
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

    private static void form(CookTask task, List<Fault> faults) {
        Form form = task.form();
        if (!task.food().forms().contains(form)) {
            faults.add(Fault.of(
                            "#/food/form", "FORM_NOT_ALLOWED", task.food().name() + " is not planned for in this form.")
                    .withValue(form.name().toLowerCase(Locale.ROOT))
                    .withHint("It may be "
                            + String.join(
                                    ", ",
                                    task.food().forms().stream()
                                            .map(f -> f.name().toLowerCase(Locale.ROOT))
                                            .sorted()
                                            .toList())
                            + "."));
        }
    }

    private static void rule(CookTask task, Knowledge knowledge, List<Fault> faults) {
        task.rule().ifPresent(id -> {
            List<String> known =
                    knowledge.safety().rules().rules().stream().map(Rule::id).toList();
            if (!known.contains(id)) {
                faults.add(Fault.of("#/rule", "UNKNOWN_RULE", "There is no rule of this id.")
                        .withValue(id)
                        .withHint("Known are " + String.join(", ", known) + "."));
            }
        });
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
}
