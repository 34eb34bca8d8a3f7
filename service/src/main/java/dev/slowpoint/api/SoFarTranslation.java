package dev.slowpoint.api;

import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.ReplanTask;
import dev.slowpoint.plan.SoFar;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.safety.Plausibility;
import dev.slowpoint.safety.Recording;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Turns what was told of a cook under way into a question for the planner. */
final class SoFarTranslation {

    private static final double MM_PER_M = 1000.0;
    private static final double G_PER_KG = 1000.0;

    /** Water that is liquid [C]; what lies outside is no reading of it. */
    private static final double COLDEST_WATER_C = -1.0;

    private static final double HOTTEST_WATER_C = 105.0;

    /** A sensor that is taken out of the water, or water that is swapped, changes at once [K]. */
    private static final double ANY_STEP_K = 200.0;

    private SoFarTranslation() {}

    /**
     * The question of a request.
     *
     * @throws dev.slowpoint.plan.Refusal when it names something that the parameter set does not know
     */
    static ReplanTask task(ReplanRequest request, Knowledge knowledge) {
        dev.slowpoint.api.SoFar sent = request.soFar();
        return new ReplanTask(
                TaskTranslation.task(request.asCookPlan(), knowledge),
                new SoFar(
                        sent.elapsedS(),
                        log(sent.bathLog(), knowledge),
                        sent.events().stream().map(SoFarTranslation::event).toList(),
                        sent.coreReadings().stream()
                                .map(r -> new SoFar.CoreReading(r.atS(), r.coreC(), optional(r.errorK())))
                                .toList(),
                        sent.thicknessMm() == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(sent.thicknessMm() / MM_PER_M)));
    }

    private static Optional<Recording> log(List<dev.slowpoint.api.SoFar.WaterReading> sent, Knowledge knowledge) {
        if (sent.isEmpty()) {
            return Optional.empty();
        }
        Plausibility plausible = new Plausibility(
                knowledge.replan().logGap(),
                COLDEST_WATER_C,
                HOTTEST_WATER_C,
                ANY_STEP_K,
                ANY_STEP_K,
                Double.POSITIVE_INFINITY,
                ANY_STEP_K);
        return Optional.of(Recording.of(
                sent.stream().mapToDouble(r -> r.atS()).toArray(),
                sent.stream().mapToDouble(r -> r.waterC()).toArray(),
                plausible));
    }

    private static Event event(dev.slowpoint.api.SoFar.Event sent) {
        return switch (sent.event()) {
            case HEATER_OFF ->
                new SoFar.HeaterOff(
                        sent.fromS() == null ? OptionalDouble.empty() : OptionalDouble.of(sent.fromS()),
                        needed(sent.untilS()),
                        optional(sent.foundC()));
            case SETPOINT_CHANGED -> new SoFar.SetpointChanged(needed(sent.fromS()), needed(sent.setpointC()));
            case FOOD_ADDED ->
                new SoFar.FoodAdded(
                        needed(sent.fromS()), needed(sent.addedG()) / G_PER_KG, optional(sent.temperatureC()));
            case FLOATED ->
                new SoFar.Floated(needed(sent.fromS()), needed(sent.untilS()), optional(sent.temperatureC()));
            case OUT_OF_BATH ->
                new SoFar.OutOfBath(
                        needed(sent.fromS()),
                        needed(sent.untilS()),
                        Objects.requireNonNull(sent.place()),
                        optional(sent.temperatureC()));
        };
    }

    private static double needed(@Nullable Number sent) {
        return Objects.requireNonNull(sent).doubleValue();
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
