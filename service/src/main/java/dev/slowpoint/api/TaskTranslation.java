package dev.slowpoint.api;

import dev.slowpoint.food.Composition;
import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.plan.Arrangement;
import dev.slowpoint.plan.CookTask;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.Refusal;
import dev.slowpoint.safety.Purpose;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Turns a request into a question for the planner: names looked up, millimetres made metres, nothing computed. */
final class TaskTranslation {

    private static final double MM_PER_M = 1000.0;

    private TaskTranslation() {}

    /**
     * The question of a request.
     *
     * @throws Refusal when it names a food or a texture class that the parameter set does not know
     */
    static CookTask task(CookPlanRequest request, Knowledge knowledge) {
        Food food = food(request.food(), knowledge);
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
                body(request.geometry()),
                Arrangement.FREE,
                start.temperatureC() != null
                        ? StartField.uniform(start.temperatureC())
                        : new StartField(
                                Objects.requireNonNull(start.coreC()), Objects.requireNonNull(start.surfaceC())),
                Optional.ofNullable(start.earlierCook())
                        .map(cook -> new CookTask.EarlierCook(cook.setpointC(), cook.heldS())),
                new CookTask.Bath(
                        optional(request.surroundings().bath().setpointC()),
                        request.surroundings().bath().stirring(),
                        Optional.empty()),
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
                        tolerances.thicknessMm() == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(tolerances.thicknessMm() / MM_PER_M),
                        optional(tolerances.startK()),
                        optional(tolerances.bathK()),
                        optional(tolerances.readingK())),
                new CookTask.Pack(
                        request.pack().rawGarlicOrHerbs(), request.pack().salted()),
                List.of());
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
                                "There is no texture class of this name.")
                        .withValue(name)
                        .withHint("Known are "
                                + String.join(
                                        ", ",
                                        knowledge.texture().classes().stream()
                                                .map(c -> c.id())
                                                .toList())
                                + "."));
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
        Refusal.Fault fault = Refusal.Fault.of(
                        "#/food/id", ProblemCode.UNKNOWN_FOOD.name(), "There is no food of this id.")
                .withValue(id);
        return new Refusal(Words.nearest(id, known)
                .map(near -> fault.withHint("Did you mean " + near + "? All foods stand at /v1/foods."))
                .orElseGet(() -> fault.withHint("All foods stand at /v1/foods.")));
    }

    private static Body body(CookPlanRequest.Geometry geometry) {
        return switch (geometry.shape()) {
            case SLAB -> new Slab(metres(geometry.thicknessMm()));
            case CYLINDER -> new LongCylinder(metres(geometry.diameterMm()));
            case SPHERE -> new Sphere(metres(geometry.diameterMm()));
        };
    }

    private static double metres(@Nullable Double millimetres) {
        return Objects.requireNonNull(millimetres) / MM_PER_M;
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
