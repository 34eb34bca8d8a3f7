package dev.slowpoint.api;

import dev.slowpoint.food.Composition;
import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.plan.ChillTask;
import dev.slowpoint.plan.CookTask;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.LogTask;
import dev.slowpoint.plan.Refusal;
import dev.slowpoint.plan.Step;
import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Purpose;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Turns a request into a question for the planner: names looked up, millimetres made metres, a size made of a mass, nothing else computed. */
final class TaskTranslation {

    private static final double MM_PER_M = 1000.0;
    private static final double G_PER_KG = 1000.0;
    private static final double L_PER_M3 = 1000.0;
    private static final double CM2_PER_M2 = 10_000.0;
    private static final double S_PER_DAY = 86_400.0;

    private TaskTranslation() {}

    /**
     * The question of a request.
     *
     * @throws Refusal when it names a food or a texture class that the parameter set does not know
     */
    static CookTask task(CookPlanRequest request, Knowledge knowledge) {
        Food food = food(request.food(), knowledge);
        PieceTranslation piece = new PieceTranslation(request.geometry(), food, knowledge.thermal());
        CookPlanRequest.Start start = request.start();
        Condition condition = request.food().condition() == Condition.COOKED ? Condition.COOKED : food.condition();
        CookPlanRequest.Target target = request.target();
        CookPlanRequest.Tolerances tolerances = request.tolerances();
        Purpose usual = condition == Condition.COOKED ? Purpose.REHEAT : Purpose.SERVE;
        return new CookTask(
                food,
                Objects.requireNonNullElseGet(request.food().form(), food::usualForm),
                condition,
                optional(request.food().fatPercent()),
                request.food().previouslyFrozen(),
                piece.body(),
                piece.arrangement(),
                field(start.temperatureC(), start.coreC(), start.surfaceC()),
                Optional.ofNullable(start.earlierCook())
                        .map(cook -> new CookTask.EarlierCook(cook.setpointC(), cook.heldS())),
                new CookTask.Bath(
                        optional(request.surroundings().bath().setpointC()),
                        request.surroundings().bath().stirring(),
                        vessel(request.surroundings().bath(), piece)),
                request.surroundings().altitudeM(),
                new CookTask.Target(
                        Objects.requireNonNullElse(target.purpose(), usual),
                        optional(target.coreC()),
                        optional(target.withinK()),
                        target.serveAfterS() == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(target.serveAfterS())),
                request.eater(),
                Optional.ofNullable(request.rule()),
                new CookTask.Tolerances(
                        across(tolerances.thicknessMm()),
                        optional(tolerances.startK()),
                        optional(tolerances.bathK()),
                        optional(tolerances.readingK())),
                new CookTask.Pack(
                        request.pack().rawGarlicOrHerbs(),
                        request.pack().salted(),
                        optional(request.pack().saltPercent()),
                        optional(request.pack().waterActivity()),
                        request.pack().soldOrSupplied(),
                        request.pack().sealedWhileChilled()),
                request.then().stream().map(TaskTranslation::step).toList());
    }

    /**
     * The question of a request for a chill.
     *
     * @throws Refusal when it names a food or a texture class that the parameter set does not know
     */
    static ChillTask task(ChillPlanRequest request, Knowledge knowledge) {
        Food food = food(request.food(), knowledge);
        PieceTranslation piece = new PieceTranslation(request.geometry(), food, knowledge.thermal());
        ChillPlanRequest.Start start = request.start();
        ChillPlanRequest.Store store = request.store();
        return new ChillTask(
                food,
                Objects.requireNonNullElseGet(request.food().form(), food::usualForm),
                piece.body(),
                piece.arrangement(),
                field(start.temperatureC(), start.coreC(), start.surfaceC()),
                chill(
                        request.chill().medium(),
                        request.chill().mediumC(),
                        request.chill().durationS()),
                store == null ? Optional.empty() : Optional.of(store(store.temperatureC(), store.days())),
                Optional.ofNullable(request.rule()),
                request.fitToKeep(),
                request.eater(),
                new CookTask.Tolerances(
                        across(request.tolerances().thicknessMm()),
                        optional(request.tolerances().startK()),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()));
    }

    /**
     * The question of a request about a log.
     *
     * @throws Refusal when it names a food or a texture class that the parameter set does not know, or a mass that does not fit
     */
    static LogTask task(LogReviewRequest request, Knowledge knowledge) {
        Food food = food(request.food(), knowledge);
        Condition condition = request.food().condition() == Condition.COOKED ? Condition.COOKED : food.condition();
        Geometry geometry = request.geometry();
        LogReviewRequest.Start start = request.start();
        Optional<LogTask.Piece> piece = Optional.empty();
        if (geometry != null && start != null) {
            PieceTranslation translated = new PieceTranslation(geometry, food, knowledge.thermal());
            piece = Optional.of(new LogTask.Piece(
                    translated.body(),
                    translated.arrangement(),
                    field(start.temperatureC(), start.coreC(), start.surfaceC()),
                    Objects.requireNonNullElse(request.stirring(), Stirring.STILL),
                    new CookTask.Tolerances(
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            OptionalDouble.empty())));
        }
        return new LogTask(
                food,
                Objects.requireNonNullElseGet(request.food().form(), food::usualForm),
                condition,
                optional(request.food().fatPercent()),
                Objects.requireNonNullElse(
                        request.purpose(), condition == Condition.COOKED ? Purpose.REHEAT : Purpose.SERVE),
                request.eater(),
                Optional.ofNullable(request.rule()),
                Optional.ofNullable(request.coolingRule()),
                Set.copyOf(request.aspects()),
                new LogTask.Sensor(
                        request.sensor().place(),
                        optional(request.sensor().errorK()),
                        optional(request.sensor().intervalS())),
                new LogTask.Log(request.timesS(), request.temperaturesC(), optional(request.longestGapS())),
                piece);
    }

    private static StartField field(@Nullable Double evenC, @Nullable Double coreC, @Nullable Double surfaceC) {
        return evenC != null
                ? StartField.uniform(evenC)
                : new StartField(Objects.requireNonNull(coreC), Objects.requireNonNull(surfaceC));
    }

    private static OptionalDouble across(@Nullable Double thicknessMm) {
        return thicknessMm == null ? OptionalDouble.empty() : OptionalDouble.of(thicknessMm / MM_PER_M);
    }

    private static Food food(FoodChoice choice, Knowledge knowledge) {
        String id = choice.id();
        if (id != null) {
            return knowledge.catalogue().find(id).orElseThrow(() -> unknownFood(id, knowledge));
        }
        FoodChoice.CompositionPercent percent = Objects.requireNonNull(choice.composition());
        Optional<String> textureClass = Optional.ofNullable(choice.textureClass());
        textureClass.ifPresent(name -> {
            if (knowledge.texture().find(name).isEmpty()) {
                throw new Refusal(Refusal.Fault.of(
                                "#/food/textureClass",
                                ProblemCode.UNKNOWN_TEXTURE_CLASS.name(),
                                "FAULT_NO_TEXTURE_CLASS")
                        .withValue(name)
                        .withHint(
                                "HINT_KNOWN",
                                String.join(
                                        ", ",
                                        knowledge.texture().classes().stream()
                                                .map(c -> c.id())
                                                .toList())));
            }
        });
        return Food.described(
                Composition.normalised(
                        percent.waterPercent(),
                        percent.proteinPercent(),
                        percent.fatPercent(),
                        percent.carbohydratePercent(),
                        percent.fibrePercent(),
                        percent.ashPercent()),
                Objects.requireNonNull(choice.group()),
                choice.condition(),
                textureClass,
                knowledge.thermal().freezing());
    }

    private static Refusal unknownFood(String id, Knowledge knowledge) {
        List<String> known =
                knowledge.catalogue().foods().stream().map(Food::id).toList();
        Refusal.Fault fault = Refusal.Fault.of("#/food/id", ProblemCode.UNKNOWN_FOOD.name(), "FAULT_NO_FOOD")
                .withValue(id);
        return new Refusal(Words.nearest(id, known)
                .map(near -> fault.withHint("HINT_FOOD_MAYBE", near))
                .orElseGet(() -> fault.withHint("HINT_FOODS")));
    }

    /** Where its water and heater are told. */
    private static Optional<CookTask.Vessel> vessel(CookPlanRequest.Bath bath, PieceTranslation piece) {
        Double volume = bath.volumeL();
        if (volume == null) {
            return Optional.empty();
        }
        double together = piece.mass() * piece.arrangement().pileOf();
        return Optional.of(new CookTask.Vessel(
                volume / L_PER_M3,
                Objects.requireNonNull(bath.heaterW()),
                optional(bath.startC()),
                together + Objects.requireNonNullElse(bath.otherLoadG(), 0.0) / G_PER_KG,
                Objects.requireNonNullElse(bath.covered(), false),
                bath.openAreaCm2() == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(bath.openAreaCm2() / CM2_PER_M2),
                optional(bath.lossWPerK()),
                optional(bath.roomC())));
    }

    private static Step step(FollowingStep sent) {
        return switch (sent.step()) {
            case BATH -> new Step.Bath(needed(sent.setpointC()), needed(sent.durationS()));
            case UNHEATED -> new Step.Unheated(seconds(sent.durationS()), optional(sent.foundC()));
            case SEAR ->
                new Step.Sear(
                        Objects.requireNonNull(sent.method()),
                        needed(sent.secondsPerSide()),
                        Objects.requireNonNullElse(sent.bothSidesAtOnce(), false),
                        optional(sent.heatC()));
            case REST -> new Step.Rest(needed(sent.durationS()));
            case CHILL -> chill(Objects.requireNonNull(sent.medium()), sent.mediumC(), sent.durationS());
            case STORE -> store(needed(sent.temperatureC()), needed(sent.days()));
            case REHEAT -> new Step.Reheat(needed(sent.setpointC()), seconds(sent.durationS()));
        };
    }

    private static Step.Chill chill(Step.ChillMedium medium, @Nullable Double mediumC, @Nullable Integer durationS) {
        return new Step.Chill(medium, optional(mediumC), seconds(durationS));
    }

    private static Step.Store store(double temperatureC, double days) {
        return new Step.Store(temperatureC, days * S_PER_DAY);
    }

    private static double needed(@Nullable Number sent) {
        return Objects.requireNonNull(sent).doubleValue();
    }

    private static OptionalDouble seconds(@Nullable Integer sent) {
        return sent == null ? OptionalDouble.empty() : OptionalDouble.of(sent);
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
